package evenblade.face.app;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.judge.findings.Cause;
import evenblade.judge.findings.Confidence;
import evenblade.judge.findings.Finding;
import evenblade.judge.findings.FindingFact;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.Phrases;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Answers what the one next step of a job is: what its entries lack, else what its findings ask for.
 *
 * @param because what a finding that asks for it says
 * @param step a sentence
 * @param action what it asks for
 * @param blades as they sit on the hub, position 1 first; where they are to be moved, as they are to sit
 * @param lastRun how the run before was measured, for the next one to be measured alike
 * @param leftOut runs that the step doesn't rest on, each with why
 */
public record WhatNext(
        Optional<String> because,
        String step,
        Action action,
        List<String> blades,
        Optional<Detail.Run> lastRun,
        List<Warning> leftOut) {
    public WhatNext {
        blades = List.copyOf(blades);
        leftOut = List.copyOf(leftOut);
    }

    /** What can be done next. */
    public enum Action {
        MARK_TIPS,
        READ_PITCH,
        READ_RUN_OUT,
        ADD_RUN,
        WRITE_CORRECTION,
        ENTER_INSTALLATION,
        BALANCE,
        WRITE_REPORT
    }

    /**
     * The next step.
     *
     * @throws evenblade.base.problem.BadInput where there is no job
     */
    public static WhatNext find(Path job, Phrases phrases, Progress progress) {
        JobRuns jobRuns = new JobRuns(JobFolder.open(job));
        JobRecord record = jobRuns.record();
        List<Event> runs = record.standing(Kind.RUN);
        Optional<Detail.Run> last = runs.isEmpty()
                ? Optional.empty()
                : Optional.of((Detail.Run) runs.get(runs.size() - 1).detail());
        NextStep step = NextStep.of(record);
        List<String> blades = blades(record);
        if (step == NextStep.COMPARE) {
            return weighed(job, EvidenceOfJob.of(jobRuns, progress), phrases, blades, last);
        }
        return new WhatNext(
                Optional.empty(),
                phrases.text(step.fact()),
                step == NextStep.MARK_TIPS
                        ? Action.MARK_TIPS
                        : step == NextStep.LOOK_AT_BALANCE ? Action.BALANCE : Action.ADD_RUN,
                blades,
                last,
                runs.isEmpty() ? List.of() : EvidenceOfJob.of(jobRuns, progress).silent());
    }

    private static WhatNext weighed(
            Path job, EvidenceOfJob.Loaded loaded, Phrases phrases, List<String> blades, Optional<Detail.Run> last) {
        List<Warning> leftOut = loaded.silent();
        return WeighFindings.weigh(job, loaded).findings().list().stream()
                .filter(finding -> finding.open()
                        && finding.cause() != Cause.NOTHING
                        && finding.sureness().share() >= Confidence.LEANING)
                .findFirst()
                .map(finding -> new WhatNext(
                        Optional.of(FigureFormat.capital(phrases.text(finding.statement()))),
                        FigureFormat.capital(phrases.text(finding.next())),
                        asked(finding),
                        otherLayout(finding, loaded.record()) ? movedOn(blades) : blades,
                        last,
                        leftOut))
                .orElseGet(() -> new WhatNext(
                        Optional.empty(),
                        phrases.text(Fact.of(FindingFact.NO_MORE_WORK)),
                        Action.WRITE_REPORT,
                        blades,
                        last,
                        leftOut));
    }

    /** The step, behind what it is wanted for. */
    public String text() {
        return because.map(why -> why + " ").orElse("") + step;
    }

    /** As they were marked last; by their letters where they never were. */
    private static List<String> blades(JobRecord record) {
        return record.standing(Kind.TRACKING).stream()
                .map(event -> ((Detail.Tracking) event.detail()).layout().blades())
                .reduce((earlier, later) -> later)
                .orElseGet(() -> IntStream.range(
                                0, record.installation().propeller().blades())
                        .mapToObj(i -> String.valueOf((char) ('A' + i)))
                        .toList());
    }

    /** Whether tips are to be marked with the blades elsewhere than they were marked last. */
    private static boolean otherLayout(Finding finding, JobRecord record) {
        Code next = finding.next().code();
        return next == FindingFact.MOVE_BLADES
                || next == FindingFact.READ_BEFORE_BALANCE
                        && !record.standing(Kind.TRACKING).isEmpty();
    }

    /** Every blade one hub position on. */
    private static List<String> movedOn(List<String> blades) {
        List<String> moved = new ArrayList<>(blades);
        moved.add(0, moved.remove(moved.size() - 1));
        return moved;
    }

    private static Action asked(Finding finding) {
        if (!(finding.next().code() instanceof FindingFact next)) {
            return Action.WRITE_CORRECTION;
        }
        return switch (next) {
            case MARK_TIPS, MOVE_BLADES, READ_BEFORE_BALANCE -> Action.MARK_TIPS;
            case READ_PITCH -> Action.READ_PITCH;
            case READ_RUN_OUT, READ_RUN_OUT_FIRST -> Action.READ_RUN_OUT;
            case MEASURE_ALL,
                    MEASURE_ALONG_AND_ACROSS,
                    MEASURE_LEVEL_AND_UPRIGHT,
                    MORE_DWELLS,
                    DWELLS_AROUND_PEAK,
                    HOLD_LONGER,
                    MAKE_A_RUN,
                    SECOND_PLACE,
                    LOOK_FOR_SWELL,
                    CARRY_ON,
                    ADD_WITH_SPEED,
                    CHECK_SENSOR -> Action.ADD_RUN;
            case ENTER_POSITION_AT_MARK, ENTER_PLACE -> Action.ENTER_INSTALLATION;
            default -> Action.WRITE_CORRECTION;
        };
    }
}
