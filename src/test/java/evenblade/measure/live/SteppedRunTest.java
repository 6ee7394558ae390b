package evenblade.measure.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Reduction;
import evenblade.machine.plan.PlannedDwell;
import evenblade.measure.speed.SpeedPrior;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class SteppedRunTest {
    private static final double RATIO = 2.43;
    private static final WindowReader READER = new WindowReader(
            new Installation(
                    Optional.of("invented"),
                    new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.of(1600), OptionalDouble.of(5600)),
                    new Reduction(Reduction.Kind.UNSTATED, RATIO, Optional.empty()),
                    new Installation.Propeller(3, Optional.empty(), Optional.empty()),
                    List.of()),
            SpeedPrior.between(11, 39),
            Optional.empty());

    private static PlannedDwell step(double engineRpm) {
        return new PlannedDwell(engineRpm, engineRpm / RATIO, 20, List.of(), List.of());
    }

    /** Readings of an invented run held at a speed, one a second, over eight seconds each. */
    private static List<LiveReading> held(double engineRpm, double fromS, int count, double noise) {
        SyntheticRun run = SyntheticRun.at(SpeedProfile.steady(engineRpm / RATIO / 60, 8))
                .withLine(1, 0.05, 20)
                .withLine(3, 0.2, 100)
                .withLine(4.86, 0.1, 200)
                .withNoise(new Noise(noise, 0))
                .withSeed(2);
        LiveReading one = READER.read(run.recording(2400), 0);
        List<LiveReading> readings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            readings.add(later(one, fromS + i));
        }
        return readings;
    }

    private static LiveReading later(LiveReading reading, double byS) {
        var channels = reading.channels().stream()
                .map(c -> new evenblade.measure.orders.ChannelOrders(
                        c.channel(),
                        c.unit(),
                        c.dwells().stream()
                                .map(d -> new evenblade.measure.orders.DwellOrders(
                                        new evenblade.measure.speed.Dwell(
                                                d.dwell().fromS() + byS,
                                                d.dwell().toS() + byS,
                                                d.dwell().propellerHz(),
                                                d.dwell().standardErrorHz(),
                                                d.dwell().minHz(),
                                                d.dwell().maxHz()),
                                        d.readings(),
                                        d.unexplained(),
                                        d.unevenness()))
                                .toList()))
                .toList();
        return new LiveReading(
                reading.fromS() + byS,
                reading.toS() + byS,
                reading.ratio(),
                reading.speed(),
                channels,
                reading.spectrum(),
                0);
    }

    @Test
    void eachDwellIsDoneWhenItWasHeldLongEnoughForTheWantedError() {
        SteppedRun run = new SteppedRun(List.of(step(3060), step(4800)), 5);
        List<StepProgress> seen = new ArrayList<>();
        held(3060, 0, 30, 0.02).forEach(r -> run.take(r).ifPresent(seen::add));
        held(4800, 30, 30, 0.02).forEach(r -> run.take(r).ifPresent(seen::add));

        assertThat(run.finished()).extracting(StepProgress::engineRpm).containsExactly(3060.0, 4800.0);
        assertThat(run.finished()).allSatisfy(done -> {
            assertThat(done.state()).isEqualTo(StepProgress.State.DONE);
            assertThat(done.heldS()).isCloseTo(20, within(1.5));
            assertThat(done.oncePercent().orElseThrow()).isLessThan(5);
        });
        assertThat(seen).extracting(StepProgress::state).contains(StepProgress.State.GO_THERE);
    }

    @Test
    void aWrongSpeedDoesNotCount() {
        SteppedRun run = new SteppedRun(List.of(step(3060)), 5);

        held(3200, 0, 40, 0.02).forEach(run::take);

        assertThat(run.finished()).isEmpty();
    }

    @Test
    void aLineTooWeakForTheWantedErrorEndsTheStepAfterTwiceTheTime() {
        SteppedRun run = new SteppedRun(List.of(step(3060)), 0.01);

        held(3060, 0, 60, 0.02).forEach(run::take);

        assertThat(run.finished()).singleElement().satisfies(done -> {
            assertThat(done.state()).isEqualTo(StepProgress.State.DONE_WEAK);
            assertThat(done.heldS()).isCloseTo(40, within(1.5));
        });
    }

    @Test
    void windowsThatDoNotOverlapTakeTheErrorDownByTheRootOfTheirNumber() {
        SteppedRun run = new SteppedRun(List.of(step(3060)), 0.01);
        List<Double> percent = new ArrayList<>();
        held(3060, 0, 33, 0.02)
                .forEach(
                        r -> run.take(r).flatMap(StepProgress::bladePassPercent).ifPresent(percent::add));

        assertThat(percent.get(0) / percent.get(percent.size() - 1)).isCloseTo(2, within(0.3));
    }
}
