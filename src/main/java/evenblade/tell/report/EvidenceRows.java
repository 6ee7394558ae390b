package evenblade.tell.report;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Detail.StoredFile;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import evenblade.tell.report.ReportContent.Evidence;
import evenblade.tell.report.ReportContent.StoredRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Every stored file with its hash, and whether it still is what it was. */
final class EvidenceRows {
    private EvidenceRows() {}

    /**
     * The stored files of a record.
     *
     * @param warnings what a look at every byte of them showed
     */
    static Evidence of(JobRecord record, List<Warning> warnings) {
        Set<String> struck = record.struckOut();
        List<StoredRow> rows = new ArrayList<>();
        for (Event event : record.events()) {
            file(event)
                    .ifPresent(file -> rows.add(new StoredRow(
                            event.id() + event.label().map(l -> " " + l).orElse(""),
                            file.path(),
                            file.originalName(),
                            String.valueOf(file.stamp().bytes()),
                            file.stamp().sha256(),
                            struck.contains(event.id())
                                    ? "entry crossed out, not looked at"
                                    : trouble(file, warnings).isPresent()
                                            ? state(trouble(file, warnings).get())
                                            : "as added")));
        }
        return new Evidence(Phrases.of(Face.PAPER).texts(warnings), rows);
    }

    static Optional<StoredFile> file(Event event) {
        if (event.detail() instanceof Detail.Run run) {
            return Optional.of(run.file());
        }
        return event.detail() instanceof Detail.Attachment attachment
                ? Optional.of(attachment.file())
                : Optional.empty();
    }

    /** The warning about a file, where there is one. */
    static Optional<Warning> trouble(StoredFile file, List<Warning> warnings) {
        return warnings.stream()
                .filter(w -> w.subject().equals(new Subject.StoredFile(file.path())))
                .findFirst();
    }

    private static String state(Warning warning) {
        return switch (warning.code()) {
            case RECORDING_MISSING, ATTACHMENT_MISSING -> "MISSING";
            case RECORDING_CHANGED, ATTACHMENT_CHANGED -> "CHANGED since it was added";
            default -> "can't be read";
        };
    }
}
