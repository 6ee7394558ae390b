package evenblade.face.cli;

import evenblade.face.app.StartJob;
import evenblade.keep.job.JobFolder;
import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job new}: begins a job record. */
final class JobNewCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage().description("Begin a job record in a new folder; the installation is copied into it.");
        spec.addPositional(Options.word(0, "DIR", Path.class, "A folder that is empty or not there yet."));
        spec.addOption(Options.installation());
        spec.addOption(Options.value("--name", "TEXT", String.class, "What to call the job. Left out: as the folder."));
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        Path installation = Options.path(words, "--installation").orElseThrow();
        JobFolder job = StartJob.answer(JobWords.folder(words), installation, Options.text(words, "--name"));
        out.println("job '" + job.record().name() + "' begun in " + job.path());
        return ExitStatus.DONE;
    }
}
