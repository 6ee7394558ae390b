package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.tell.report.PaperSize;
import evenblade.tell.report.SheetImages;
import java.io.IOException;
import java.nio.file.Path;

/** Answers what the sheets of a job's report look like, without writing anything. */
public final class PreviewReport {
    private PreviewReport() {}

    /**
     * The sheets as {@link WriteReport} would write them now.
     *
     * @param job the job's folder
     * @throws BadInput where the job can't be read
     */
    public static SheetImages answer(Path job, PaperSize paper, Progress progress) throws IOException {
        return SheetImages.of(WriteReport.composed(job, paper, progress));
    }
}
