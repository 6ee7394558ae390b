package evenblade.face.desktop;

import evenblade.face.app.SummariseRuns.Summary;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.tell.chart.Ink;
import evenblade.tell.document.FigureFormat;
import java.awt.Component;
import java.awt.Font;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.ListCellRenderer;
import net.miginfocom.swing.MigLayout;

/** One entry of the timeline: its sign, what and when, and its first words. */
final class TimelineCell extends JPanel implements ListCellRenderer<Event> {
    private final transient Set<String> struckOut;
    private final transient Map<String, Summary> summaries;
    private final JLabel sign = new JLabel();
    private final JLabel first = new JLabel();
    private final JLabel second = new JLabel();
    private final JLabel time = new JLabel();
    private final Font plain;
    private final Font bold;
    private final Font small;

    TimelineCell(Set<String> struckOut, Map<String, Summary> summaries) {
        super(new MigLayout("insets 6 10 6 10, gapy 1, novisualpadding", "[][grow,fill,0::]", "[][][]"));
        this.struckOut = struckOut;
        this.summaries = summaries;
        plain = first.getFont();
        bold = plain.deriveFont(Font.BOLD);
        small = plain.deriveFont(plain.getSize2D() - 2);
        add(sign, "spany 3, top, gaptop 2");
        add(first, "wrap, wmin 0");
        add(second, "wrap, wmin 0");
        add(time, "wmin 0");
        setOpaque(true);
    }

    @Override
    public Component getListCellRendererComponent(
            JList<? extends Event> list, Event event, int index, boolean selected, boolean focused) {
        boolean struck = struckOut.contains(event.id());
        sign.setIcon(new KindMark(event.kind(), (int) (1.4 * plain.getSize())));
        String kind = Words.kind(event.kind());
        first.setText((struck ? "Taken back: " : "")
                + event.label().map(l -> kind + ": " + l).orElse(kind));
        second.setText(Optional.ofNullable(summaries.get(event.id()))
                .map(TimelineCell::says)
                .orElseGet(() -> says(event)));
        time.setText(Words.time(event.at()) + " · " + event.id());
        first.setFont(bold);
        second.setFont(plain);
        time.setFont(small);
        setBackground(selected ? list.getSelectionBackground() : list.getBackground());
        first.setForeground(selected ? list.getSelectionForeground() : Look.ink(struck ? Ink.QUIET_TEXT : Ink.TEXT));
        second.setForeground(first.getForeground());
        time.setForeground(selected ? list.getSelectionForeground() : Look.ink(Ink.QUIET_TEXT));
        setBorder(
                focused
                        ? BorderFactory.createLineBorder(Look.ink(Ink.CRANK), 2)
                        : BorderFactory.createMatteBorder(0, 0, 1, 0, Look.ink(Ink.GRID)));
        getAccessibleContext().setAccessibleName(first.getText() + ", " + second.getText() + ", " + time.getText());
        return this;
    }

    private static String says(Summary run) {
        return FigureFormat.rpm(run.engineRpm()) + " rpm · 1× "
                + run.once()
                        .map(level ->
                                FigureFormat.level(level) + " " + run.unit().display())
                        .orElse("not detected");
    }

    private static String says(Event event) {
        if (!event.text().isBlank()) {
            return event.text();
        }
        if (event.detail() instanceof Detail.Run run) {
            return run.file().originalName();
        }
        if (event.detail() instanceof Detail.Tracking marks) {
            return marks.readings();
        }
        if (event.detail() instanceof Detail.Pitch pitch) {
            return pitch.readings();
        }
        if (event.detail() instanceof Detail.RunOut runOut) {
            return runOut.total() + " at a radius of " + runOut.dialRadius();
        }
        if (event.detail() instanceof Detail.Attachment attachment) {
            return attachment.file().originalName();
        }
        return event.detail() instanceof Detail.StruckOut struck ? "entry " + struck.event() : " ";
    }
}
