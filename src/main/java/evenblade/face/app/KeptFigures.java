package evenblade.face.app;

import evenblade.base.json.RecordCodec;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.ResultCache;
import evenblade.tell.report.ReportFigure;
import java.util.List;
import java.util.Optional;

/** The report's pictures of a run in a job's cache. */
final class KeptFigures {
    /** To be raised with every change of a picture; what is kept of them is told by the codec. */
    private static final int DRAWN = 6;

    private static final RecordCodec<Pictures> CODEC = new RecordCodec<>(Pictures.class, List.of());

    private record Pictures(List<Drawn> drawn) {}

    private record Drawn(String words, byte[] png, Optional<byte[]> narrow) {}

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
        return cache.get(key(run, newest)).flatMap(CODEC::read).map(kept -> kept.drawn().stream()
                .map(picture -> ReportFigure.kept(picture.words, picture.png, picture.narrow))
                .toList());
    }

    /** Keeps pictures, and gives them back. */
    List<ReportFigure> keep(Event run, boolean newest, List<ReportFigure> figures) {
        cache.put(
                key(run, newest),
                CODEC.written(new Pictures(figures.stream()
                        .map(figure -> new Drawn(
                                figure.words(),
                                figure.broad().get(),
                                figure.narrow().map(ReportFigure.Bytes::get)))
                        .toList())));
        return figures;
    }

    /** The file's name is written in the pictures. */
    private String key(Event run, boolean newest) {
        Detail.Run detail = (Detail.Run) run.detail();
        return runs.dependsOn(
                "pictures in the report, newest: " + newest + ", of "
                        + detail.file().path(),
                DRAWN + "\n" + CODEC.shape(),
                detail);
    }
}
