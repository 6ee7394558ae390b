package evenblade.face.cli;

import evenblade.base.fact.WarningCode;
import evenblade.face.app.CompareRuns;
import evenblade.face.app.RunBefore;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What to type where something is open: what was noted wrongly is put right, a question answered, or another run made. */
record CompareCures(String job, CompareRuns.Answer answer) {
    /** Empty where the runs were compared and nothing was asked. */
    static List<String> lines(Path job, CompareRuns.Answer answer) {
        List<String> lines = new ArrayList<>();
        if (!answer.comparison().comparable()) {
            CompareCures cures = new CompareCures(RunOptions.quoted(job.toString()), answer);
            lines.add("");
            answer.comparison().reasons().stream()
                    .map(reason -> cures.cure(reason.code()))
                    .distinct()
                    .forEach(lines::addAll);
        }
        for (Event run : answer.unanswered()) {
            lines.add("");
            lines.addAll(typed(
                    "If nothing was changed before run '" + run.label().orElse(run.id()) + "' (else enter the change):",
                    "job amend " + RunOptions.quoted(job.toString()) + " " + run.id() + " " + ConditionOptions.ANSWER));
        }
        return lines;
    }

    private List<String> cure(WarningCode code) {
        return switch (code) {
            case SPEED_NOT_CONFIRMED ->
                typed("If you read the speed in the cockpit and it wasn't noted:", amend("--engine-rpm 4800"));
            case INSTALLATION_DIFFERS ->
                typed("If the installation was described wrongly:", "job installation " + job + " FILE");
            case BLADE_PASS_NOT_DETECTED ->
                typed("If the gain stayed the same in both runs, note it:", amend("--gain \"fixed, 40\""));
            case NO_DWELL_AT_SAME_RPM -> typed("Make another run at speeds that the other one held:", again());
            case LOSSY_AGAINST_LOSSLESS, CODING_DIFFERS ->
                typed("Make another run, recorded like the other one (best as WAV or FLAC):", again());
            default -> noted();
        };
    }

    /** It was measured alike and noted otherwise, or it wasn't. */
    private List<String> noted() {
        Detail.Run before = (Detail.Run) answer.before().detail();
        Detail.Run after = (Detail.Run) answer.after().detail();
        String differing = RunOptions.of(
                before.settings().unlike(after.settings()),
                before.conditions().of(RunBefore.KEPT).unlike(after.conditions()));
        List<String> lines = new ArrayList<>();
        if (!differing.isEmpty()) {
            lines.addAll(typed("If it was measured alike and only noted otherwise:", amend(differing.strip())));
        }
        lines.addAll(typed(
                differing.isEmpty()
                        ? "Make another run, measured as before:"
                        : "Else make another run, measured as before:",
                again()));
        return lines;
    }

    private String amend(String option) {
        return "job amend " + job + " " + answer.after().id() + " " + option;
    }

    /** A run measured like the first of the two. */
    private String again() {
        return "job add " + job + " RECORDING --label NAME"
                + RunOptions.again((Detail.Run) answer.before().detail());
    }

    /** Said in lines that fit; typed in one, however long. */
    private static List<String> typed(String when, String command) {
        return List.of(
                LineWrapper.lines("", "", when).stream().collect(Collectors.joining("\n")), "  evenblade " + command);
    }
}
