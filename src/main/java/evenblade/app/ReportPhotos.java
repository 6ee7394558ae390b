package evenblade.app;

import evenblade.chart.PhotoScaler;
import evenblade.job.Detail;
import evenblade.job.Event;
import evenblade.job.JobFolder;
import evenblade.job.Kind;
import evenblade.problem.Warning;
import evenblade.report.Figure;
import evenblade.report.ReportContent.Photo;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Future;

/** The photos of a report, brought down to what a page needs; each is scaled once and kept. */
final class ReportPhotos {
    private static final int PHOTO_PX = 1200;
    /** All photos together, so that a report of thirty can still be mailed. */
    private static final int PHOTO_BYTES_IN_ALL = 5_000_000;

    private static final int MOST_PHOTO_BYTES = 350_000;

    private final JobFolder folder;
    private final String version;
    private final List<Warning> fileWarnings;

    /**
     * @param version of the program: another one may scale otherwise
     * @param fileWarnings names the files that aren't as they were added
     */
    ReportPhotos(JobFolder folder, String version, List<Warning> fileWarnings) {
        this.folder = folder;
        this.version = version;
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
        return scaled(attachment, mostBytes)
                .map(jpeg -> new Photo(
                        Figure.photo(words, jpeg),
                        event.id() + ", " + attachment.file().originalName()
                                + (event.text().isBlank() ? "" : ": " + event.text())));
    }

    /** One that was changed since it was added is taken as it is now. */
    private Optional<byte[]> scaled(Detail.Attachment attachment, int mostBytes) {
        boolean asAdded = fileWarnings.stream()
                .noneMatch(w -> w.message().contains("'" + attachment.file().path() + "'"));
        String key = String.join(
                "\n", "scaled photo", version, attachment.file().stamp().sha256(), PHOTO_PX + " " + mostBytes);
        Optional<byte[]> kept = asAdded ? folder.cache().get(key) : Optional.empty();
        if (kept.isPresent()) {
            return kept;
        }
        Optional<byte[]> fresh = PhotoScaler.jpeg(folder.locate(attachment.file()), PHOTO_PX, mostBytes);
        if (asAdded) {
            fresh.ifPresent(jpeg -> folder.cache().put(key, jpeg));
        }
        return fresh;
    }
}
