package evenblade.face.desktop;

import evenblade.face.app.DrawTrend;
import evenblade.face.app.ShowTrend;
import evenblade.judge.comparison.Trend;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.Block.Tone;
import evenblade.tell.document.Document;
import evenblade.tell.document.TrendDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import net.miginfocom.swing.MigLayout;

/** How the shaking went over all runs of a job, with what was changed between them. */
final class TrendPane extends JPanel {
    private final JComboBox<String> channel = new JComboBox<>();
    private final PicturePane picture;
    private final TablesPane tables = new TablesPane("trend tables");
    private final Page words = new Page("trend words");
    private final Complaint complaint = new Complaint();
    private transient Optional<Answer> answer = Optional.empty();

    TrendPane(Navigator bench, OpenJob job) {
        super(new MigLayout("insets 8 18 10 18, wrap 1, hidemode 3", "[grow,fill]", ""));
        setName("trend");
        picture = new PicturePane(bench);
        picture.show(Optional.empty(), "working…");
        JPanel row = new JPanel(new MigLayout("insets 0", "[]push[][]"));
        row.add(Look.heading("Over all runs"));
        channel.setName("trend channel");
        channel.addActionListener(e -> choose());
        row.add(Look.label("Channel", channel));
        row.add(channel);
        add(row);
        add(complaint);
        JTabbedPane tabs = new JTabbedPane();
        tabs.setName("trend tabs");
        tabs.addTab("Picture", picture);
        tabs.addTab("Tables", tables);
        tabs.addTab("In words", words);
        add(tabs, "pushy, grow, wmin 100, hmin 100");
        bench.begin(
                "Following all runs",
                progress -> {
                    progress.at(0, "measuring the runs");
                    ShowTrend.Answer trend = ShowTrend.follow(job.folder(), OptionalDouble.empty());
                    List<Optional<Picture>> pictures = new ArrayList<>();
                    trend.channels().forEach(each -> pictures.add(DrawTrend.draw(each)));
                    return new Answer(trend, pictures);
                },
                this::show,
                complaint::show);
    }

    private record Answer(ShowTrend.Answer trend, List<Optional<Picture>> pictures) {}

    private void show(Answer found) {
        answer = Optional.of(found);
        found.trend().channels().forEach(each -> channel.addItem(each.channel()));
        if (found.trend().channels().isEmpty()) {
            picture.show(Optional.empty(), "No run with a dwell at a confirmed speed yet: nothing to follow.");
        }
        choose();
    }

    private void choose() {
        int chosen = channel.getSelectedIndex();
        if (answer.isEmpty() || chosen < 0) {
            return;
        }
        Answer found = answer.get();
        picture.show(found.pictures().get(chosen), "Two runs at one speed are needed.");
        Trend trend = found.trend().channels().get(chosen);
        Document.Builder text = Document.begin().addAll(TrendDocument.of(trend, Words.PHRASES));
        text.warnings(Tone.CAUTION, Words.PHRASES, found.trend().warnings());
        tables.show(text.done());
        words.show(text.done());
    }
}
