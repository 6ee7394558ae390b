package evenblade.face.cli;

import evenblade.face.app.MakePractice;
import evenblade.keep.job.Event;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.PracticeJob;
import evenblade.keep.practice.PracticeStep;
import evenblade.keep.practice.SealedTruth;
import evenblade.keep.practice.StepPractice;
import evenblade.tell.document.FigureFormat;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** {@code evenblade practice}: an invented job to practise on. */
final class PracticeCommand implements Command {
    private static final long USUAL_SEED = 1; // any will do; the same one gives the same job

    @Override
    public void describe(CommandSpec spec) {
        String faults = Stream.of(Fault.values()).map(Fault::word).collect(Collectors.joining(", "));
        spec.usageMessage()
                .description(
                        "Make an invented job to practise on: five runs, three corrections, the truth beside them.");
        spec.addPositional(Options.word(0, "DIR", Path.class, "Folder of the new job; empty or not there yet."));
        spec.addOption(Options.repeated(
                "--fault",
                "NAME",
                String.class,
                "What is wrong with it; may be repeated. One of: " + faults + ". Left out: "
                        + MakePractice.USUAL_FAULT.word() + "."));
        spec.addOption(Options.value("--seed", "N", Long.class, "Same seed, same job (" + USUAL_SEED + ")."));
        spec.addOption(Options.flag(
                "--surprise",
                "Something is wrong that no name and no text gives away; blade, size and place come from the seed, which is"
                        + " another each time where none is given."));
        spec.addOption(
                Options.flag(
                        "--steps",
                        "A surprise in which nothing is measured until you ask for it, and every step costs; --step takes them."));
        spec.addOption(Options.value(
                "--step",
                "STEP",
                String.class,
                "Take a step in such a job: " + String.join(", ", PracticeStep.forms())
                        + ". The first four measure, the others change something."));
        spec.addOption(
                Options.flag("--reveal", "Open the sealed answer of a surprise; after --steps with your score."));
        spec.addOption(
                Options.value("--installation", "FILE", Path.class, "Another installation than the invented one."));
        spec.addOption(Options.flag(
                "--to-balance", "Make a job with one run that goes on: weigh, run again, until it is balanced."));
        spec.addOption(Options.flag("--without-mark", "With --to-balance: no mark on the propeller, so no phase."));
        spec.addOption(Options.flag(
                "--next-run", "Make the next run of such a job, with the weights that are on the hub by its record."));
        spec.addOption(Options.value("--label", "TEXT", String.class, "With --next-run: a short name for the run."));
    }

    @Override
    public int run(ParseResult words, PrintWriter out) throws IOException {
        Path folder = words.matchedPositionalValue(0, (Path) null);
        if (Options.said(words, "--reveal")) {
            return reveal(folder, out);
        }
        Optional<String> step = Options.text(words, "--step");
        if (step.isPresent()) {
            return JobWords.written(folder, List.of(MakePractice.step(folder, step.get())), out);
        }
        if (Options.said(words, "--steps")) {
            return begin(folder, words, out);
        }
        if (Options.said(words, "--surprise")) {
            return surprise(folder, words, out);
        }
        if (Options.said(words, "--next-run")) {
            return JobWords.written(folder, List.of(MakePractice.nextRun(folder, Options.text(words, "--label"))), out);
        }
        if (Options.said(words, "--to-balance")) {
            Event run = MakePractice.toBalance(
                    folder,
                    Options.all(words, "--fault"),
                    words.matchedOptionValue("--seed", USUAL_SEED),
                    !Options.said(words, "--without-mark"));
            out.println("Invented for practice, measured nowhere: a job to balance in " + folder);
            out.println("What is truly in it: " + folder.resolve("truth"));
            out.println("Don't look there before you have found out yourself.");
            return JobWords.written(folder, List.of(run), out);
        }
        PracticeJob.Made made = MakePractice.make(
                folder,
                Options.all(words, "--fault"),
                words.matchedOptionValue("--seed", USUAL_SEED),
                Options.path(words, "--installation"));
        out.println("Invented for practice, measured nowhere: a job with "
                + made.truths().size() + " runs in " + made.folder());
        out.println("What is truly in each run: " + made.truths().get(0).getParent());
        out.println("Don't look there before you have found out yourself.");
        return ExitStatus.DONE;
    }

    private static int surprise(Path folder, ParseResult words, PrintWriter out) throws IOException {
        if (!Options.all(words, "--fault").isEmpty()) {
            throw new ParameterException(
                    words.commandSpec().commandLine(), "only one of --surprise and --fault can be given");
        }
        long seed = words.matchedOptionValue("--seed", System.nanoTime());
        MakePractice.surprise(folder, seed, Options.path(words, "--installation"));
        out.println("Invented for practice, measured nowhere: a job with 5 runs in " + folder + " (seed " + seed + ")");
        out.println("What is wrong is sealed. Find out; then: evenblade practice " + folder + " --reveal");
        return ExitStatus.DONE;
    }

    private static int begin(Path folder, ParseResult words, PrintWriter out) throws IOException {
        long seed = words.matchedOptionValue("--seed", System.nanoTime());
        MakePractice.stepwise(folder, seed, Options.path(words, "--installation"));
        out.println("Invented for practice, measured nowhere: a machine that shakes, in " + folder + " (seed " + seed
                + ")");
        out.println("What is wrong is sealed: one fault, or two. Each step costs invented money:");
        for (PracticeStep each : PracticeStep.values()) {
            out.println(String.format(Locale.ROOT, "  %-16s %4d  %s", each.form(), each.price(), each.text("…")));
        }
        out.println("Take one:   evenblade practice " + folder + " --step run");
        out.println("Weigh all:  evenblade findings " + folder);
        out.println("Finished:   evenblade practice " + folder + " --reveal");
        return ExitStatus.DONE;
    }

    private static int reveal(Path folder, PrintWriter out) throws IOException {
        SealedTruth truth = MakePractice.revealed(folder);
        truth.faults().forEach(fault -> out.println("In the first runs: " + fault + "."));
        Optional<StepPractice.Score> score = MakePractice.score(folder);
        if (score.isEmpty()) {
            out.println("The truth about each run: " + folder.resolve("truth"));
            return ExitStatus.DONE;
        }
        score.get().left().forEach(left -> out.println("Still wrong: " + left + "."));
        score.get().wrong().forEach(wrong -> out.println("Was in order: " + wrong + "."));
        out.println("Score: " + FigureFormat.count(score.get().changes(), "change") + ", money spent "
                + score.get().money() + ", "
                + FigureFormat.count(score.get().wrong().size(), "wrong repair") + ", "
                + (score.get().left().isEmpty() ? "nothing left wrong." : "not finished."));
        return ExitStatus.DONE;
    }
}
