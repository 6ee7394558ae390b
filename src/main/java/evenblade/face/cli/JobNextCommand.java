package evenblade.face.cli;

import evenblade.face.app.Progress;
import evenblade.face.app.WhatNext;
import evenblade.keep.practice.OpenPractice;
import evenblade.keep.practice.PracticeStep;
import evenblade.keep.practice.StepPractice;
import evenblade.tell.document.Document;
import evenblade.tell.document.FigureFormat;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade job next}: the one next step of a job, and what to type. */
final class JobNextCommand implements Command {
    /** Steps that bring a hand near the propeller. */
    private static final Set<WhatNext.Action> AT_THE_PROPELLER = Set.of(
            WhatNext.Action.MARK_TIPS,
            WhatNext.Action.READ_PITCH,
            WhatNext.Action.READ_RUN_OUT,
            WhatNext.Action.ADD_RUN,
            WhatNext.Action.WRITE_CORRECTION);

    private static final String ANY_STEP = "--step STEP";
    /** Runs named one by one; a step is one, not a list. */
    private static final int MOST_LEFT_OUT = 3;

    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage().description("Say the one next step of a job, and what to type.");
        JobWords.addFolder(spec);
        spec.addOption(JobUnits.option());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        Path job = JobWords.folder(words);
        WhatNext next = WhatNext.find(job, JobUnits.phrases(job, words), Progress.SILENT);
        LineWrapper.lines("Next: ", "      ", next.text()).forEach(out::println);
        WarningText.marked(next.leftOut().stream().limit(MOST_LEFT_OUT).toList())
                .forEach(out::println);
        if (next.leftOut().size() > MOST_LEFT_OUT) {
            out.println("! and " + FigureFormat.count(next.leftOut().size() - MOST_LEFT_OUT, "more run")
                    + ": evenblade job show " + RunOptions.quoted(job.toString()));
        }
        Optional<String> step = practised(job, next);
        String dir = RunOptions.quoted(job.toString());
        // One line, however long: it is there to be copied.
        out.println("Type: evenblade "
                + step.map(option -> "practice " + dir + " " + option).orElseGet(() -> typed(dir, next)));
        if (step.filter(ANY_STEP::equals).isPresent()) {
            LineWrapper.lines("", "", "(STEP: one of " + String.join(", ", PracticeStep.forms()) + ".)")
                    .forEach(out::println);
        }
        if (step.isEmpty() && next.action() != WhatNext.Action.WRITE_REPORT) {
            out.println("(Names and figures in it are examples: put yours in their place.)");
        }
        if (AT_THE_PROPELLER.contains(next.action())) {
            Terminal.lines(Document.begin().handsOff().done()).forEach(out::println);
        }
        return ExitStatus.DONE;
    }

    /** In an invented job that goes on, measuring is a step of practice. */
    private static Optional<String> practised(Path job, WhatNext next) {
        if (OpenPractice.goesOn(job)) {
            return next.action() == WhatNext.Action.ADD_RUN ? Optional.of("--next-run --label NAME") : Optional.empty();
        }
        if (!StepPractice.goesOn(job)) {
            return Optional.empty();
        }
        return switch (next.action()) {
            case MARK_TIPS -> Optional.of("--step tracking");
            case READ_PITCH -> Optional.of("--step pitch");
            case READ_RUN_OUT -> Optional.of("--step runout");
            case ADD_RUN -> Optional.of("--step run");
            case WRITE_CORRECTION -> Optional.of(ANY_STEP);
            case WRITE_REPORT -> Optional.of("--reveal");
            case ENTER_INSTALLATION, BALANCE -> Optional.empty();
        };
    }

    private static String typed(String job, WhatNext next) {
        return switch (next.action()) {
            case MARK_TIPS ->
                "job tracking " + job + " --layout " + layout(next.blades()) + " --readings "
                        + examples(next.blades(), "12.5 mm");
            case READ_PITCH ->
                "job pitch " + job + " --layout " + layout(next.blades()) + " --readings "
                        + examples(next.blades(), "17.4 deg") + " --station \"0.6 m\"";
            case READ_RUN_OUT ->
                "job runout " + job + " --total \"0.05 mm\" --dial-radius \"50 mm\" --high \"120 deg\"";
            case ADD_RUN ->
                "job add " + job + " RECORDING --label NAME"
                        + next.lastRun().map(RunOptions::again).orElse(" --engine-rpm 4800");
            case WRITE_CORRECTION -> "job correction " + job + " \"what was changed\"";
            case ENTER_INSTALLATION -> "job installation " + job + " FILE";
            case BALANCE -> "balance " + job;
            case WRITE_REPORT -> "report " + job;
        };
    }

    private static String layout(List<String> blades) {
        return RunOptions.quoted(IntStream.range(0, blades.size())
                .mapToObj(i -> (i + 1) + "=" + blades.get(i))
                .collect(Collectors.joining(",")));
    }

    /** One reading for each blade, to be put right by the reader. */
    private static String examples(List<String> blades, String reading) {
        return RunOptions.quoted(blades.stream().map(blade -> reading).collect(Collectors.joining(",")));
    }
}
