package evenblade.tell.report;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.report.ReportContent.TimelineEntry;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** What was done and when, struck-out entries too. */
final class Timeline {
    private Timeline() {}

    static List<TimelineEntry> of(JobRecord record) {
        Set<String> struck = record.struckOut();
        return record.events().stream()
                .map(event -> entry(event, struck.contains(event.id())))
                .toList();
    }

    private static TimelineEntry entry(Event event, boolean struckOut) {
        List<String> lines = new ArrayList<>();
        if (!event.text().isBlank()) {
            event.text().lines().filter(line -> !line.isBlank()).forEach(lines::add);
        }
        lines.addAll(detail(event.detail()));
        String what = word(event.kind()) + event.label().map(l -> ": " + l).orElse("");
        boolean change = event.changesMachine();
        return new TimelineEntry(event.id(), FigureFormat.minute(event.at()), what, lines, struckOut, change);
    }

    private static String word(Kind kind) {
        return switch (kind) {
            case RUN -> "Ground run";
            case AMENDMENT -> "Put right";
            case INSTALLATION -> "Installation";
            case CORRECTION -> "Changed";
            case TRACKING -> "Tracking checked";
            case PITCH -> "Pitch checked";
            case RUN_OUT -> "Flange face run-out checked";
            case BALANCE -> "Balance weight";
            case NOTE -> "Note";
            case ATTACHMENT -> "Photo or paper";
            case STRUCK_OUT -> "Entry crossed out";
        };
    }

    private static List<String> detail(Detail detail) {
        if (detail instanceof Detail.Run run) {
            return List.of("Recording " + run.file().originalName());
        }
        if (detail instanceof Detail.Attachment attachment) {
            return List.of(
                    attachment.file().originalName() + ", " + attachment.type().display());
        }
        if (detail instanceof Detail.Tracking tracking) {
            return List.of("Blades on positions " + tracking.layout().text() + "; marks " + tracking.readings());
        }
        if (detail instanceof Detail.Pitch pitch) {
            return List.of("Blades on positions " + pitch.layout().text() + "; angles " + pitch.readings());
        }
        if (detail instanceof Detail.RunOut runOut) {
            return List.of("full dial reading " + runOut.total() + " at a dial radius of " + runOut.dialRadius());
        }
        if (detail instanceof Detail.StruckOut strike) {
            return List.of("Takes entry " + strike.event() + " out of account.");
        }
        return List.of();
    }
}
