package evenblade.face.app;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.ResultCache;
import evenblade.tell.report.ReportFigure;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;

/** The report's pictures of a run in a job's cache. */
final class KeptFigures {
    /** To be raised with every change of this form or of a picture. */
    private static final int FORMAT = 4;

    private final ResultCache cache;
    private final JobRuns runs;

    KeptFigures(JobFolder folder, JobRuns runs) {
        this.cache = folder.cache();
        this.runs = runs;
    }

    /**
     * Pictures kept earlier.
     *
     * @param newest all that the newest run has; else those of an older one
     */
    Optional<List<ReportFigure>> get(Event run, boolean newest) {
        return cache.get(key(run, newest)).flatMap(KeptFigures::read);
    }

    /** Keeps pictures, and gives them back. */
    List<ReportFigure> keep(Event run, boolean newest, List<ReportFigure> figures) {
        cache.put(key(run, newest), written(figures));
        return figures;
    }

    /** The file's name is written in the pictures. */
    private String key(Event run, boolean newest) {
        Detail.Run detail = (Detail.Run) run.detail();
        return runs.dependsOn(
                "pictures in the report, newest: " + newest + ", of "
                        + detail.file().path(),
                FORMAT,
                detail);
    }

    private static byte[] written(List<ReportFigure> figures) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            KeptFields.list(out, figures, (to, figure) -> {
                KeptFields.text(to, figure.words());
                KeptFields.bytes(to, figure.bytes());
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static Optional<List<ReportFigure>> read(byte[] bytes) {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            return Optional.of(
                    KeptFields.list(in, from -> ReportFigure.wide(KeptFields.text(from), KeptFields.bytes(from))));
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
