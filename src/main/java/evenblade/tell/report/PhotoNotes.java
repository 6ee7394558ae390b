package evenblade.tell.report;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.FileNature;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.tell.report.ReportContent.Photo;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Why a picture among the attachments isn't shown. */
final class PhotoNotes {
    private PhotoNotes() {}

    /** One line for each standing picture that isn't among those shown. */
    static List<String> of(JobRecord record, List<Photo> shown) {
        Set<String> entries = shown.stream().map(Photo::entry).collect(Collectors.toSet());
        return record.standing(Kind.ATTACHMENT).stream()
                .filter(event -> !entries.contains(event.id()))
                .flatMap(event -> note(event).stream())
                .toList();
    }

    private static Optional<String> note(Event event) {
        Detail.Attachment attachment = (Detail.Attachment) event.detail();
        FileNature type = attachment.type();
        if (!type.showable() && !type.picture()) {
            return Optional.empty();
        }
        String why = type.showable()
                ? type.display() + " that can't be read: missing or damaged"
                : type.display() + ", a kind that this program can't show; open it from the record's folder";
        return Optional.of(event.id() + ", " + attachment.file().originalName()
                + (event.text().isBlank() ? "" : ": " + event.text()) + " (" + why + ")");
    }
}
