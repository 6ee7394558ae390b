package evenblade.face.cli;

import evenblade.face.app.CompareRuns;
import evenblade.judge.comparison.Reason.ReasonCode;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What to type so that two runs can be compared: what was noted wrongly is put right, else another run is made. */
record CompareCures(String job, CompareRuns.Answer answer) {
    /** Empty where the runs were compared. */
    static List<String> lines(Path job, CompareRuns.Answer answer) {
        List<String> lines = new ArrayList<>();
        if (!answer.comparison().comparable()) {
            CompareCures cures = new CompareCures(JobNextCommand.quoted(job.toString()), answer);
            lines.add("");
            answer.comparison().reasons().stream()
                    .map(reason -> cures.cure(reason.code()))
                    .distinct()
                    .forEach(lines::addAll);
        }
        return lines;
    }

    private List<String> cure(ReasonCode code) {
        return switch (code) {
            case SENSOR_DIFFERS -> noted(Condition.SENSOR);
            case PLACE_DIFFERS -> noted(Condition.PLACE);
            case DIRECTION_DIFFERS -> noted(Condition.DIRECTION);
            case GAIN_DIFFERS -> noted(Condition.GAIN);
            case FULL_SCALE_DIFFERS, CALIBRATION_DIFFERS, UNIT_DIFFERS ->
                typed("If the scale of one run was left out or is wrong:", amend("--full-scale \"50 m/s2\""));
            case NO_COMMON_CHANNEL ->
                typed(
                        "If the directions of the channels were noted wrongly:",
                        amend("--direction \"along, across, up\""));
            case SPEED_NOT_CONFIRMED ->
                typed("If you read the speed in the cockpit and it wasn't noted:", amend("--engine-rpm 4800"));
            case INSTALLATION_DIFFERS ->
                typed("If the installation was described wrongly:", "job installation " + job + " FILE");
            case BLADE_PASS_NOT_DETECTED ->
                typed("If the gain stayed the same in both runs, note it:", amend("--gain \"fixed, 40\""));
            case NO_DWELL_AT_SAME_RPM -> typed("Make another run at speeds that the other one held:", again());
            case LOSSY_AGAINST_LOSSLESS, CODING_DIFFERS ->
                typed("Make another run, recorded like the other one (best as WAV or FLAC):", again());
        };
    }

    /** A condition that was noted differently. */
    private List<String> noted(Condition condition) {
        String before = value(answer.before(), condition).orElse("as it was");
        List<String> lines = new ArrayList<>(typed(
                "If it was the same and only noted wrongly:",
                amend("--" + condition.word() + " " + JobNextCommand.quoted(before))));
        lines.addAll(typed("Else make another run with it as it was before:", again()));
        return lines;
    }

    private static Optional<String> value(Event run, Condition condition) {
        return ((Detail.Run) run.detail()).conditions().get(condition);
    }

    private String amend(String option) {
        return "job amend " + job + " " + answer.after().id() + " " + option;
    }

    /** A run measured like the first of the two. */
    private String again() {
        return "job add " + job + " RECORDING --label NAME"
                + JobNextCommand.alike((Detail.Run) answer.before().detail());
    }

    /** Said in lines that fit; typed in one, however long. */
    private static List<String> typed(String when, String command) {
        return List.of(
                LineWrapper.lines("", "", when).stream().collect(Collectors.joining("\n")), "  evenblade " + command);
    }
}
