package evenblade.face.cli;

import evenblade.face.app.ShowJob.JobView;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Detail.StoredFile;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.RunSettings;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.InstallationDocument;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** A job as lines of text. */
final class JobText {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm xxx", Locale.ROOT);
    private static final String INDENT = "      ";

    private JobText() {}

    static List<String> lines(JobView view) {
        JobRecord record = view.record();
        List<String> lines = new ArrayList<>(LineWrapper.lines("", "", record.name()));
        if (record.invented()) {
            lines.add("INVENTED FOR PRACTICE: nothing in this job was measured.");
        }
        lines.addAll(LineWrapper.lines("", "", InstallationDocument.inOneLine(record.installation())));
        lines.add("");
        Set<String> struck = record.struckOut();
        for (Event event : record.events()) {
            lines.addAll(entry(event, struck.contains(event.id())));
        }
        if (record.events().isEmpty()) {
            lines.add(view.takes().isEmpty() ? "No entries yet." : "No entries yet, but takes that aren't in the job.");
        }
        lines.addAll(WarningText.marked(view.warnings()));
        if (!view.takes().isEmpty()) {
            lines.addAll(LineWrapper.lines(
                    "", "", "'job rescue' brings takes that aren't in the job into it, all in one step."));
        }
        return lines;
    }

    /** What was just written. */
    static List<String> written(Event event) {
        return entry(event, false);
    }

    private static List<String> entry(Event event, boolean struckOut) {
        String first = String.format(
                Locale.ROOT,
                "%-5s %s  %s",
                event.id(),
                MINUTE.format(event.at()),
                event.kind().word());
        String label = event.label().map(l -> " '" + l + "'").orElse("");
        String says = event.text().isBlank() ? "" : ": " + event.text();
        List<String> lines =
                new ArrayList<>(LineWrapper.lines(first + (struckOut ? " (CROSSED OUT)" : "") + label, INDENT, says));
        for (String more : detail(event.detail())) {
            lines.addAll(LineWrapper.lines(INDENT, INDENT, more));
        }
        return lines;
    }

    private static List<String> detail(Detail detail) {
        List<String> lines = new ArrayList<>();
        if (detail instanceof Detail.Run run) {
            lines.add(file(run.file()));
            settings(run.settings(), lines);
            conditions(run.conditions(), lines);
            run.told().forEach(told -> lines.add(told.text() + " [" + told.code() + "]"));
        } else if (detail instanceof Detail.Attachment attachment) {
            lines.add(file(attachment.file()) + ", " + attachment.type().display());
        } else if (detail instanceof Detail.Amendment amendment) {
            lines.add("puts " + amendment.event() + " right");
            settings(amendment.settings(), lines);
            conditions(amendment.conditions(), lines);
            amendment.told().forEach(told -> lines.add(told.text() + " [" + told.code() + "]"));
        } else if (detail instanceof Detail.NewInstallation) {
            lines.add("another installation, for all runs of this job");
        } else if (detail instanceof Detail.StruckOut strike) {
            lines.add("crosses out " + strike.event());
        } else if (detail instanceof Detail.Tracking tracking) {
            lines.add(tracking.layout().text() + "; marks " + tracking.readings()
                    + tracking.sigma().map(s -> "; reading error " + s).orElse(""));
        } else if (detail instanceof Detail.Pitch pitch) {
            lines.add(pitch.layout().text() + "; angles " + pitch.readings()
                    + "; zero " + pitch.zero().orElse("0 deg") + " on the "
                    + pitch.reference().word()
                    + pitch.station().map(s -> "; at " + s).orElse(""));
        } else if (detail instanceof Detail.RunOut runOut) {
            lines.add("full dial reading " + runOut.total() + " at a radius of " + runOut.dialRadius()
                    + runOut.high().map(h -> "; highest at " + h).orElse(""));
        }
        return lines;
    }

    private static String file(StoredFile file) {
        return file.path() + ", " + FigureFormat.fixed(file.stamp().bytes() / 1e3, 1) + " kB, SHA-256 "
                + file.stamp().sha256().substring(0, 12) + "…";
    }

    private static void settings(RunSettings settings, List<String> lines) {
        List<String> parts = new ArrayList<>();
        settings.engineRpm().ifPresent(rpm -> parts.add("engine " + FigureFormat.rpm(rpm) + " rpm"));
        settings.propellerRpm().ifPresent(rpm -> parts.add("propeller " + FigureFormat.rpm(rpm) + " rpm"));
        if (!settings.channels().isEmpty()) {
            parts.add("channel " + String.join(", ", settings.channels()));
        }
        settings.markChannel().ifPresent(channel -> parts.add("mark on " + channel));
        settings.fullScale().ifPresent(value -> parts.add("full scale " + value));
        if (!settings.table().unsaid()) {
            parts.add("read with " + settings.table().words());
        }
        if (!parts.isEmpty()) {
            lines.add(String.join("; ", parts));
        }
    }

    private static void conditions(Conditions conditions, List<String> lines) {
        List<String> parts = new ArrayList<>();
        conditions.entries().forEach((condition, value) -> parts.add(condition.word() + ": " + value));
        if (!parts.isEmpty()) {
            lines.add(String.join("; ", parts));
        }
    }
}
