package evenblade.face.desktop;

import evenblade.base.fact.Warning;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import java.util.ArrayList;
import java.util.List;

/** What a reader of a run's figures has to know about them, and what was noted about the run. */
final class ToKnow {
    private ToKnow() {}

    static Lines lines(List<Warning> warnings, Event run) {
        Lines lines = new Lines();
        if (warnings.isEmpty()) {
            lines.say("Nothing was assumed and nothing had to be repaired.");
        }
        warnings.forEach(warning -> lines.say("!  " + Words.warning(warning)));
        lines.strong("The run");
        noted(run).forEach(lines::say);
        lines.say("Measured, not judged: whether it flies is for the licensed person to say.");
        lines.done();
        return lines;
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
