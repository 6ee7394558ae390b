package evenblade.desktop;

import evenblade.job.Conditions;
import evenblade.job.Detail;
import evenblade.job.Event;
import evenblade.problem.Warning;
import java.util.ArrayList;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;

/** What a reader of a run's figures has to know about them, and what was noted about the run. */
final class ToKnow extends JScrollPane {
    ToKnow(List<Warning> warnings, Event run) {
        JPanel lines = new JPanel(new MigLayout("insets 10, wrap 1, gapy 8", "[grow,fill]"));
        if (warnings.isEmpty()) {
            lines.add(new Paragraph("Nothing was assumed and nothing had to be repaired."), "wmin 50");
        }
        warnings.forEach(warning -> lines.add(new Paragraph("!  " + warning.message()), "wmin 50"));
        lines.add(Look.strong("The run"), "gaptop 12");
        noted(run).forEach(line -> lines.add(new Paragraph(line), "wmin 50"));
        lines.add(
                new Paragraph("Measured, not judged: whether it flies is for the licensed person to say."), "wmin 50");
        setViewportView(lines);
        setBorder(BorderFactory.createEmptyBorder());
        getVerticalScrollBar().setUnitIncrement(Look.em());
    }

    /** What an entry has to say beyond its words. */
    static List<String> noted(Event event) {
        List<String> lines = new ArrayList<>();
        if (event.detail() instanceof Detail.Run run) {
            lines.add("File: " + run.file().originalName() + ", kept as "
                    + run.file().path());
            lines.add("SHA-256: " + run.file().stamp().sha256());
            run.settings().engineRpm().ifPresent(rpm -> lines.add("Entered engine rpm: " + rpm));
            run.settings().propellerRpm().ifPresent(rpm -> lines.add("Entered propeller rpm: " + rpm));
            run.settings().markChannel().ifPresent(mark -> lines.add("Mark on channel " + mark));
            run.settings().fullScale().ifPresent(scale -> lines.add("Full scale: " + scale));
            for (Conditions.Condition each : Conditions.Condition.values()) {
                run.conditions().get(each).ifPresent(said -> lines.add(ImportForm.words(each) + ": " + said));
            }
        }
        return lines;
    }
}
