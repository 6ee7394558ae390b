package evenblade.face.desktop;

import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** What an entry is and when, with a way to take it back. */
final class EntryHeading extends JPanel {
    EntryHeading(Navigator bench, OpenJob job, Event event) {
        super(new MigLayout("insets 0, hidemode 3", "[][shrinkprio 50][grow,fill,shrinkprio 200][]"));
        boolean struck = job.record().struckOut().contains(event.id());
        add(new javax.swing.JLabel(new KindMark(event.kind(), (int) (1.4 * Look.em()))));
        String what = Words.kind(event.kind());
        JLabel name = Look.heading((struck ? "Taken back: " : "")
                + event.label().map(label -> what + ": " + label).orElse(what));
        name.setToolTipText(name.getText());
        add(name, "wmin 50");
        JLabel when = Look.quiet(Words.time(event.at()) + " · entry " + event.id() + invented(job));
        when.setToolTipText(when.getText());
        add(when, "wmin 0");
        JButton back = new JButton(struck ? "Put back" : "Take back");
        back.setName("take back");
        back.setMargin(new java.awt.Insets(2, 10, 2, 10));
        back.setToolTipText("Writes a further entry; nothing is erased.");
        back.addActionListener(e -> strike(bench, job, event));
        add(back);
    }

    private static String invented(OpenJob job) {
        return job.record().invented() ? " · invented for practice" : "";
    }

    /** Takes an entry back, or puts one back that was taken back: by a further entry. */
    static void strike(Navigator bench, OpenJob job, Event event) {
        Path folder = job.folder();
        String id = job.record().struckOut().contains(event.id())
                ? strikeOf(job, event).map(Event::id).orElse(event.id())
                : event.id();
        bench.begin(
                "Writing into the job",
                progress -> WriteEntry.strike(folder, id, ""),
                written -> bench.entered(List.of(written)),
                bench::say);
    }

    private static Optional<Event> strikeOf(OpenJob job, Event event) {
        return job.newestFirst().stream()
                .filter(each -> each.kind() == Kind.STRUCK_OUT
                        && !job.record().struckOut().contains(each.id())
                        && each.detail().equals(new evenblade.keep.job.Detail.StruckOut(event.id())))
                .findFirst();
    }
}
