package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.Entry;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewJob;
import evenblade.keep.practice.PracticeInstallation;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportCommandTest {
    @TempDir
    Path folder;

    @Test
    void aJobWithoutARunHasAReportToo() throws Exception {
        Path job = folder.resolve("job with blanks");
        JobFolder.create(job, NewJob.of("Invented job", true, PracticeInstallation.geared()))
                .append(Entry.note("Nothing done yet."));
        CommandLineRun run = CommandLineRun.of("report", job.toString(), "--paper", "letter", "--full");
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        assertThat(run.out()).isEqualTo(job.resolve("report.html") + "\n" + job.resolve("report.pdf") + "\n");
        assertThat(Files.readString(job.resolve("report.html")))
                .contains("There are not yet two runs to hold against each other.")
                .contains("No ground run was entered yet.")
                .contains("size: 8.5in 11in");
    }

    @Test
    void anUnknownSizeOfPaperIsOneLineAndWritesNothing() {
        CommandLineRun run = CommandLineRun.of("report", folder.toString(), "--paper", "A5");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).isEqualTo("evenblade: --paper: 'A5', expected one of A4, Letter\n");
    }

    @Test
    void aFolderWithoutAJobIsOneLineAndWritesNothing() {
        CommandLineRun run = CommandLineRun.of("report", folder.toString());
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).singleElement();
        assertThat(folder).isEmptyDirectory();
    }
}
