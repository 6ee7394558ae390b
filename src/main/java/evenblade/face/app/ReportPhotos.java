package evenblade.face.app;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.tell.chart.PhotoScaler;
import evenblade.tell.report.ReportContent.Photo;
import evenblade.tell.report.ReportFigure;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Future;
import java.util.function.Supplier;

/** The photos of a report, brought down to what a page needs; each is scaled once and kept. */
final class ReportPhotos {
    /** To be raised with every change of how photos are scaled. */
    private static final int FORMAT = 1;

    private static final int PHOTO_PX = 1200; // readable in print across a page
    /** All photos together, so that a report of thirty can still be mailed. */
    private static final int PHOTO_BYTES_IN_ALL = 5_000_000;

    /** Ours: hardly seen at that size, and a report can still be sent by mail. */
    private static final int MOST_PHOTO_BYTES = 350_000;

    private final JobFolder folder;
    private final List<Warning> fileWarnings;

    /** @param fileWarnings names the files that aren't as they were added */
    ReportPhotos(JobFolder folder, List<Warning> fileWarnings) {
        this.folder = folder;
        this.fileWarnings = List.copyOf(fileWarnings);
    }

    /** Begins all, in order of time; empty where one can't be shown. */
    List<Future<Optional<Photo>>> begin(Workers workers) {
        List<Event> shown = folder.record().standing(Kind.ATTACHMENT).stream()
                .filter(event -> ((Detail.Attachment) event.detail()).type().showable())
                .toList();
        int budget = Math.min(MOST_PHOTO_BYTES, PHOTO_BYTES_IN_ALL / Math.max(1, shown.size()));
        return workers.beginAll(shown, event -> photo(event, budget));
    }

    private Optional<Photo> photo(Event event, int mostBytes) {
        Detail.Attachment attachment = (Detail.Attachment) event.detail();
        String words = event.text().isBlank() ? attachment.file().originalName() : event.text();
        return shown(attachment, mostBytes)
                .map(jpeg -> new Photo(
                        event.id(),
                        ReportFigure.photo(words, jpeg),
                        event.id() + ", " + attachment.file().originalName()
                                + (event.text().isBlank() ? "" : ": " + event.text())));
    }

    /** Empty too where the file isn't a plain one inside the job. */
    private Optional<byte[]> shown(Detail.Attachment attachment, int mostBytes) {
        try {
            return light(attachment, mostBytes);
        } catch (BadInput e) {
            return Optional.empty();
        }
    }

    private Optional<byte[]> light(Detail.Attachment attachment, int mostBytes) {
        boolean asAdded = fileWarnings.stream().noneMatch(w -> w.subject()
                .equals(new Subject.StoredFile(attachment.file().path())));
        if (!asAdded) {
            // One that was changed since it was added is taken as it is now.
            return PhotoScaler.jpeg(folder.locate(attachment.file()), PHOTO_PX)
                    .map(jpeg -> PhotoScaler.lighter(jpeg, mostBytes));
        }
        return kept(key(attachment, "at most " + mostBytes + " bytes"), () -> kept(
                        key(attachment, ""), () -> PhotoScaler.jpeg(folder.locate(attachment.file()), PHOTO_PX))
                .map(jpeg -> PhotoScaler.lighter(jpeg, mostBytes)));
    }

    /** Scales a photo that was just added, so that the report needn't. */
    void keep(Event event) {
        Detail.Attachment attachment = (Detail.Attachment) event.detail();
        if (attachment.type().showable()) {
            kept(key(attachment, ""), () -> PhotoScaler.jpeg(folder.locate(attachment.file()), PHOTO_PX));
        }
    }

    private Optional<byte[]> kept(String key, Supplier<Optional<byte[]>> made) {
        Optional<byte[]> kept = folder.cache().get(key);
        if (kept.isPresent()) {
            return kept;
        }
        Optional<byte[]> fresh = made.get();
        fresh.ifPresent(jpeg -> folder.cache().put(key, jpeg));
        return fresh;
    }

    private static String key(Detail.Attachment attachment, String weight) {
        return String.join(
                "\n",
                "scaled photo",
                String.valueOf(FORMAT),
                attachment.file().stamp().sha256(),
                String.valueOf(PHOTO_PX),
                weight);
    }
}
