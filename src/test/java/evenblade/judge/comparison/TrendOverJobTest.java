package evenblade.judge.comparison;

import static evenblade.judge.comparison.Invented.dwell;
import static evenblade.judge.comparison.Invented.run;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.Change.ChangeVerdict;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Every figure over the runs of a job. */
class TrendOverJobTest {
    private static final List<TrendStage> JOB = List.of(
            new TrendStage(
                    List.of(),
                    List.of(
                            run("r1", dwell(4000, 0.5, 1.0), dwell(4800, 0.8, 1.0)),
                            run("r2", dwell(4000, 0.5, 1.0), dwell(4800, 0.81, 1.0)))),
            new TrendStage(List.of("cleaned the flange"), List.of(run("r3", dwell(4810, 0.4, 1.0)))),
            new TrendStage(List.of("blades moved", "torqued"), List.of(run("r4", dwell(4800, 0.6, 1.0)))));

    private static List<Trend.Point> onceAt(Trend trend, int speed) {
        return trend.speeds().get(speed).lines().stream()
                .filter(l -> l.figure().name().equals("propeller 1×"))
                .findFirst()
                .orElseThrow()
                .points();
    }

    @Test
    void aFigureIsFollowedOverAllRunsAgainstTheLastAndTheFirst() {
        Trend trend = TrendOverJob.of(JOB).get(0);
        assertThat(trend.speeds()).extracting(g -> Math.round(g.engineRpm())).containsExactly(4000L, 4800L);
        List<Trend.Point> points = onceAt(trend, 1);
        assertThat(points).extracting(Trend.Point::run).containsExactly("r1", "r2", "r3", "r4");
        assertThat(points.get(0).sinceLast()).isEmpty();
        assertThat(verdict(points.get(1).sinceLast())).isEqualTo(ChangeVerdict.NO_CHANGE_SHOWN);
        assertThat(verdict(points.get(2).sinceLast())).isEqualTo(ChangeVerdict.LOWER);
        assertThat(verdict(points.get(3).sinceLast())).isEqualTo(ChangeVerdict.HIGHER);
        assertThat(verdict(points.get(3).sinceFirst())).isEqualTo(ChangeVerdict.LOWER);
        assertThat(points.get(3).sinceFirst().orElseThrow().percent().orElseThrow())
                .isCloseTo(-25, within(1e-9));
    }

    private static ChangeVerdict verdict(Optional<Change> change) {
        return change.orElseThrow().verdict();
    }

    @Test
    void theChangesStandBeforeTheRunThatFollowedThem() {
        Trend trend = TrendOverJob.of(JOB).get(0);
        assertThat(trend.runs())
                .extracting(Trend.RunEntry::changesBefore)
                .containsExactly(
                        List.of(), List.of(), List.of("cleaned the flange"), List.of("blades moved", "torqued"));
    }

    @Test
    void aRunWithoutADwellAtASpeedIsNamed() {
        assertThat(TrendOverJob.of(JOB).get(0).speeds().get(0).without()).containsExactly("r3", "r4");
    }

    @Test
    void aRunWithTheSensorElsewhereIsLeftOutByName() {
        MeasuredRun elsewhere = run(
                "first try",
                Invented.with("accelerometer A", "crankcase", "across", "fixed", Optional.empty()),
                Invented.channel("x", SignalUnit.METRE_PER_SECOND_SQUARED, dwell(4800, 3.0, 1.0)));
        List<TrendStage> job = new java.util.ArrayList<>();
        job.add(new TrendStage(List.of(), List.of(elsewhere)));
        job.addAll(JOB);
        Trend trend = TrendOverJob.of(job).get(0);
        assertThat(trend.runs().get(0).leftOut()).extracting(Warning::code).containsExactly(WarningCode.PLACE_DIFFERS);
        assertThat(onceAt(trend, 1)).extracting(Trend.Point::run).containsExactly("r1", "r2", "r3", "r4");
    }

    @Test
    void anIntervalHoldsTheScatterBetweenRunsToo() {
        Trend.Point point = onceAt(TrendOverJob.of(JOB).get(0), 1).get(0);
        // The run alone reaches ± 1 %; runs scatter more than that.
        assertThat(point.ciHigh()).isGreaterThan(0.8 * 1.02);
        assertThat(point.ciLow()).isLessThan(0.8 * 0.98);
    }

    @Test
    void aJobWithoutRunsHasNoTrend() {
        assertThat(TrendOverJob.of(List.of())).isEmpty();
    }
}
