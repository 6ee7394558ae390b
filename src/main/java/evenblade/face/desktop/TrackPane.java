package evenblade.face.desktop;

import evenblade.base.units.LengthUnit;
import evenblade.face.app.DrawTracking;
import evenblade.face.app.JudgeTracking;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.StaticSide;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.TrackingDocument;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import net.miginfocom.swing.MigLayout;

/** What the static checks of a job say together: the verdict, what to try next, what to keep. */
final class TrackPane extends JPanel {
    private final transient Navigator bench;
    private final transient OpenJob job;
    private final Page words = new Page("track words");
    private final JButton mark = new JButton();
    private final PicturePane tips;
    private final PicturePane deviations;
    private final Complaint complaint = new Complaint();

    TrackPane(Navigator bench, OpenJob job) {
        super(new MigLayout("insets 8 18 10 18, hidemode 3", "[46%!,fill]16[grow,fill]", "[][][grow,fill][]"));
        this.bench = bench;
        this.job = job;
        setName("track");
        tips = new PicturePane(bench);
        deviations = new PicturePane(bench);
        add(Look.heading("Track: blade or hub"), "span 2, wrap");
        add(complaint, "span 2, wrap");
        add(words, "pushy, grow, wmin 200, hmin 100");
        JTabbedPane tabs = new JTabbedPane();
        tabs.setName("track tabs");
        tabs.addTab("Tips", tips);
        tabs.addTab("Blade or hub", deviations);
        add(tabs, "pushy, grow, wmin 280, hmin 200, wrap");
        mark.setName("mark next");
        mark.setVisible(false);
        add(mark, "grow 0");
        LengthUnit unit = bench.settings().lengthUnit();
        bench.begin(
                "Judging the track",
                progress -> {
                    StaticSide view = JudgeTracking.judge(job.folder());
                    return new Answer(view, DrawTracking.tips(view, unit), DrawTracking.deviations(view, unit));
                },
                this::show,
                complaint::show);
    }

    private record Answer(StaticSide view, Picture tips, Optional<Picture> deviations) {}

    private void show(Answer answer) {
        tips.show(Optional.of(answer.tips()), "");
        deviations.show(answer.deviations(), "What goes with a blade shows once the blades were moved.");
        StaticSide view = answer.view();
        words.show(TrackingDocument.of(view, Words.phrases(bench.settings())));
        Layout next = view.now().nextLayout().layout();
        mark.setText("Enter marks for " + next.text());
        mark.addActionListener(e -> bench.show(new MarksForm(bench, job).on(next)));
        mark.setVisible(true);
    }
}
