package evenblade.judge.comparison;

import static evenblade.judge.comparison.Invented.dwell;
import static evenblade.judge.comparison.Invented.once;
import static evenblade.judge.comparison.Invented.run;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.Change.ChangeVerdict;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What runs with nothing changed between them say of the others. */
class RepeatRunsTest {
    private static final MeasuredRun BEFORE = run("before", dwell(4800, 1.0, 1.0));
    private static final MeasuredRun AFTER = run("after", dwell(4800, 1.1, 1.0));

    private static TrendStage stage(double... onces) {
        List<MeasuredRun> runs = java.util.stream.IntStream.range(0, onces.length)
                .mapToObj(i -> run("r" + i, dwell(4800, onces[i], 1.0)))
                .toList();
        return new TrendStage(List.of("cleaned"), runs);
    }

    @Test
    void enoughRepeatsSpeakAlone() {
        TrendStage repeats = stage(1.00, 1.01, 0.99, 1.01, 0.99);
        Scatter scatter =
                once(BeforeAndAfter.compare(BEFORE, AFTER, List.of(repeats))).scatter();
        assertThat(scatter.source()).isEqualTo(Scatter.Source.REPEATS);
        assertThat(scatter.degreesOfFreedom()).isEqualTo(4);
        // Standard deviation of ln 1, ln 1.01, ln 0.99, ln 1.01, ln 0.99, by hand: 0.0100006.
        assertThat(scatter.deviation()).isCloseTo(0.0100, within(1e-5));
    }

    /** Repeats say nothing of a sensor that is taken off between the stages; engine lines that stay as they are do. */
    @Test
    void goodRepeatsLetATenPercentChangeBeCalledWhereTheEngineShowsTheSeatAndBadOnesDoNot() {
        MeasuredRun before = withEngine("before", 1.0);
        MeasuredRun after = withEngine("after", 1.1);
        assertThat(once(BeforeAndAfter.compare(before, after, List.of(repeats(1.00, 1.01, 0.99, 1.01, 0.99))))
                        .verdict())
                .isEqualTo(ChangeVerdict.HIGHER);
        assertThat(once(BeforeAndAfter.compare(before, after, List.of(repeats(1.00, 1.1, 0.9, 1.1, 0.9))))
                        .verdict())
                .isEqualTo(ChangeVerdict.NO_CHANGE_SHOWN);
        assertThat(once(BeforeAndAfter.compare(BEFORE, AFTER, List.of(stage(1.00, 1.01, 0.99, 1.01, 0.99))))
                        .verdict())
                .isEqualTo(ChangeVerdict.NO_CHANGE_SHOWN);
    }

    private static MeasuredRun withEngine(String name, double once) {
        return run(name, dwell(4800, Map.of(1.0, once, 3.0, 1.0), Map.of(1.0, 0.5, 2.0, 0.5)));
    }

    private static TrendStage repeats(double... onces) {
        return new TrendStage(
                List.of("cleaned"),
                java.util.stream.IntStream.range(0, onces.length)
                        .mapToObj(i -> withEngine("r" + i, onces[i]))
                        .toList());
    }

    @Test
    void repeatsThatDifferFivefoldAreAskedAboutAndLeftOut() {
        RunComparison comparison = BeforeAndAfter.compare(BEFORE, AFTER, List.of(stage(1.0, 0.2)));
        assertThat(comparison.warnings())
                .extracting(warning -> warning.code().word())
                .contains("repeats-differ", "no-repeat-run");
        assertThat(once(comparison).scatter().source()).isEqualTo(Scatter.Source.ASSUMED);
        RunComparison third = BeforeAndAfter.compare(BEFORE, AFTER, List.of(stage(1.0, 0.2, 0.202)));
        assertThat(third.channels().get(0).repeatRuns()).isEqualTo(1);
        assertThat(once(third).scatter().deviation()).isLessThan(0.03);
    }

    /** Asked and answered: they scatter fivefold, and every later figure carries it. */
    @Test
    void repeatsBetweenWhichNothingWasChangedOnTheUsersWordCountHoweverMuchTheyDiffer() {
        MeasuredRun first = run("r0", dwell(4800, 1.0, 1.0));
        MeasuredRun second =
                run("r1", Invented.nothingChanged(), first.channels().get(0));
        RunComparison asked = BeforeAndAfter.compare(
                BEFORE, AFTER, List.of(new TrendStage(List.of(), List.of(first, scaled(first, "r1", 0.2)))));
        RunComparison answered = BeforeAndAfter.compare(
                BEFORE, AFTER, List.of(new TrendStage(List.of(), List.of(first, scaled(second, "r1", 0.2)))));
        assertThat(asked.warnings()).extracting(warning -> warning.code()).contains(WarningCode.REPEATS_DIFFER);
        assertThat(answered.warnings())
                .extracting(warning -> warning.code())
                .doesNotContain(WarningCode.REPEATS_DIFFER, WarningCode.NO_REPEAT_RUN);
        assertThat(answered.channels().get(0).repeatRuns()).isEqualTo(1);
        // One degree of (ln 5)²/2 beside four of 0.03²/2: √((0.0018 + 1.295145)/5).
        assertThat(once(answered).scatter().deviation()).isCloseTo(0.509303, within(1e-6));
    }

    @Test
    void oneRepeatIsWeighedAgainstWhatIsUsual() {
        RunComparison comparison = BeforeAndAfter.compare(BEFORE, AFTER, List.of(stage(1.00, 1.02)));
        Scatter scatter = once(comparison).scatter();
        assertThat(scatter.source()).isEqualTo(Scatter.Source.FEW_REPEATS);
        // One degree from the repeat, four from the assumed 3 % between two runs:
        // √((4·0.03²/2 + (ln 1.02)²/2)/5) = 0.019980.
        assertThat(scatter.deviation()).isCloseTo(0.019980, within(1e-6));
        assertThat(scatter.degreesOfFreedom()).isEqualTo(5);
        assertThat(comparison.warnings())
                .extracting(warning -> warning.code().word())
                .doesNotContain("no-repeat-run");
        assertThat(comparison.channels().get(0).repeatRuns()).isEqualTo(1);
    }

    @Test
    void runsOfDifferentStagesAreNoRepeats() {
        RunComparison comparison = BeforeAndAfter.compare(BEFORE, AFTER, List.of(stage(1.0), stage(1.3), stage(0.7)));
        assertThat(once(comparison).scatter().source()).isEqualTo(Scatter.Source.ASSUMED);
        assertThat(comparison.warnings())
                .extracting(warning -> warning.code().word())
                .contains("no-repeat-run");
    }

    @Test
    void aRepeatWithAnotherSensorDoesNotCount() {
        MeasuredRun elsewhere = run(
                "elsewhere",
                Invented.with("accelerometer A", "crankcase", "across", "fixed", Optional.empty()),
                Invented.channel("x", SignalUnit.METRE_PER_SECOND_SQUARED, dwell(4800, 3.0, 1.0)));
        RunComparison comparison =
                BeforeAndAfter.compare(BEFORE, AFTER, List.of(new TrendStage(List.of(), List.of(BEFORE, elsewhere))));
        assertThat(once(comparison).scatter().source()).isEqualTo(Scatter.Source.ASSUMED);
    }

    @Test
    void repeatsAtAnotherSpeedAreBroughtToTheSame() {
        TrendStage repeats = new TrendStage(
                List.of(),
                List.of(
                        run("r1", dwell(4800, 1.0, 1.0)),
                        run("r2", dwell(4848, 1.0201, 1.0)),
                        run("r3", dwell(4752, 0.9801, 1.0)),
                        run("r4", dwell(4848, 1.0201, 1.0)),
                        run("r5", dwell(4800, 1.0, 1.0))));
        // All of them are the same imbalance by the square law, so nothing scatters.
        assertThat(once(BeforeAndAfter.compare(BEFORE, AFTER, List.of(repeats)))
                        .scatter()
                        .deviation())
                .isCloseTo(0, within(1e-9));
    }

    /** Each of these is measured otherwise than the others in one thing that decides which runs repeat it. */
    @Test
    void whatIsWorkedOutOnceForManyPairsIsWhatEachPairAloneShows() {
        List<MeasuredRun> unlike = List.of(
                placed("a", "gearbox top", "fixed", "x"),
                placed("b", "crankcase", "fixed", "x"),
                placed("c", "gearbox top", "another", "x"),
                placed("d", "gearbox top", "fixed", "y"),
                Invented.lossy(placed("e", "gearbox top", "fixed", "x")));
        List<MeasuredRun> all = new java.util.ArrayList<>();
        for (int i = 0; i < 5; i++) {
            for (MeasuredRun run : unlike) {
                all.add(scaled(run, run.name() + i, 1 + 0.01 * i * (1 + all.size() % 3)));
            }
        }
        List<TrendStage> job = List.of(new TrendStage(List.of(), all));
        Repeats once = new Repeats(job);
        for (MeasuredRun run : unlike) {
            MeasuredRun after = scaled(run, "after", 1.2);
            assertThat(BeforeAndAfter.compare(run, after, once))
                    .isEqualTo(BeforeAndAfter.compare(run, after, job))
                    .satisfies(compared ->
                            assertThat(once(compared).scatter().source()).isEqualTo(Scatter.Source.REPEATS));
        }
    }

    private static MeasuredRun placed(String name, String place, String gain, String channel) {
        return run(
                name,
                Invented.with("accelerometer A", place, "across", gain, Optional.empty()),
                Invented.channel(channel, SignalUnit.METRE_PER_SECOND_SQUARED, dwell(4800, 1.0, 1.0)));
    }

    private static MeasuredRun scaled(MeasuredRun run, String name, double factor) {
        return new MeasuredRun(
                name,
                run.conditions(),
                run.lossyCoding(),
                run.speedDoubt(),
                run.blades(),
                run.ratio(),
                run.channels().stream()
                        .map(each -> Invented.channel(
                                each.channel(),
                                each.unit(),
                                Invented.scaled(each.dwells().get(0), factor)))
                        .toList());
    }
}
