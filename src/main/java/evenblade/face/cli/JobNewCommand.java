package evenblade.face.cli;

import evenblade.face.app.StartJob;
import evenblade.keep.job.JobFolder;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job new}: begins a job record. */
final class JobNewCommand implements Command {
    /** A program that pipes its answers in begins to write well before that. */
    private static final int WAIT_MS = 500;

    private static final int STEP_MS = 20; // short beside the time a person notices

    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage()
                .description("Begin a job record in a new folder; the installation is copied into it. Without"
                        + " --installation it is asked for in the terminal and written to a file beside the folder.");
        spec.addPositional(Options.word(0, "DIR", Path.class, "A folder that is empty or not there yet."));
        spec.addOption(
                Options.value("--installation", "FILE", Path.class, "The installation file. Left out: you are asked."));
        spec.addOption(Options.value("--name", "TEXT", String.class, "What to call the job. Left out: as the folder."));
    }

    @Override
    public int run(ParseResult words, PrintWriter out) throws IOException {
        Path folder = JobWords.folder(words);
        Optional<String> name = Options.text(words, "--name");
        Optional<Path> file = Options.path(words, "--installation");
        JobFolder job;
        if (file.isPresent()) {
            job = StartJob.start(folder, file.get(), name);
        } else if (answersComing()) {
            StartJob.Asked asked = StartJob.asked(folder);
            job = asked.start(
                    new InstallationQuestions(
                                    new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)), out)
                            .ask(),
                    name);
            out.println("wrote " + asked.file());
        } else {
            throw new ParameterException(
                    words.commandSpec().commandLine(),
                    "missing: --installation FILE, or a terminal to answer the questions in");
        }
        out.println("job '" + job.record().name() + "' begun in " + job.path());
        return ExitStatus.DONE;
    }

    /** Whether a person sits at the terminal or answers are piped in. */
    private static boolean answersComing() throws IOException {
        for (int waited = 0; System.console() == null && System.in.available() == 0; waited += STEP_MS) {
            if (waited >= WAIT_MS) {
                return false;
            }
            try {
                Thread.sleep(STEP_MS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return false;
            }
        }
        return true;
    }
}
