package evenblade.measure.live;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Reduction;
import evenblade.machine.plan.PlannedDwell;
import evenblade.measure.live.LiveListener.LiveNow;
import evenblade.measure.orders.DwellOrders;
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

    /** An invented run that holds speeds, with two seconds from one to the next. */
    private static SpeedProfile holding(double seconds, double... engineRpms) {
        SpeedProfile profile =
                SpeedProfile.startingAt(engineRpms[0] / RATIO / 60).thenDwell(seconds);
        for (int i = 1; i < engineRpms.length; i++) {
            profile = profile.thenRampTo(engineRpms[i] / RATIO / 60, 2).thenDwell(seconds);
        }
        return profile.wandering(0.002, 7);
    }

    private static Recording heard(SpeedProfile profile, double noise) {
        return SyntheticRun.at(profile)
                .withLine(1, 0.05, 20)
                .withLine(3, 0.2, 100)
                .withLine(4.86, 0.1, 200)
                .withNoise(new Noise(noise, 0))
                .withSeed(2)
                .recording(2400);
    }

    /** Shows a recording to a stepped run, second by second, as the live chain does. */
    private static List<StepProgress> lead(SteppedRun run, Recording recording, double fromS, double toS) {
        return lead(run, recording, fromS, toS, List.of());
    }

    /** @param lost seconds at whose end the window holds noise alone, so that it bears no speed out */
    private static List<StepProgress> lead(
            SteppedRun run, Recording recording, double fromS, double toS, List<Double> lost) {
        Recording noise = SyntheticRun.at(SpeedProfile.steady(1, toS))
                .withNoise(new Noise(1, 0))
                .withSeed(3)
                .recording(2400);
        List<StepProgress> seen = new ArrayList<>();
        LiveAnalysis analysis = new LiveAnalysis(READER, new LiveListener() {
            @Override
            public void now(LiveNow now) {}

            @Override
            public void window(LiveReading window) {
                run.take(window);
                run.now().ifPresent(seen::add);
            }

            @Override
            public void stopped() {}
        });
        for (double atS = fromS + 1; atS <= toS; atS++) {
            double rate = recording.time().rateHz();
            int end = (int) Math.round(atS * rate);
            int begin = Math.max((int) (fromS * rate), end - (int) Math.round(analysis.windowS(atS) * rate));
            analysis.window(part(lost.contains(atS) ? noise : recording, begin, end - begin), 0);
        }
        return seen;
    }

    private static Recording part(Recording recording, int from, int size) {
        List<Channel> channels = recording.channels().stream()
                .map(c -> new Channel(c.name(), c.unit(), c.values().part(from, size)))
                .toList();
        return new Recording(
                recording.source(),
                recording.time().part(from, size),
                channels,
                recording.quality(),
                Optional.empty(),
                List.of());
    }

    private static DwellOrders printed(Recording recording, double engineRpm) {
        return READER.read(recording, 0).channels().get(0).dwells().stream()
                .filter(d -> Math.abs(d.dwell().propellerRpm() * RATIO / engineRpm - 1) < 0.03)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatIsSaidOfAStepThatIsDoneIsWhatOrdersPrintsLater() {
        SteppedRun run = new SteppedRun(List.of(step(3060), step(4800)), 5);
        Recording recording = heard(holding(26, 3060, 4800), 0.05);

        List<StepProgress> seen = lead(run, recording, 0, 54);

        assertThat(run.now()).isEmpty();
        assertThat(run.finished()).extracting(StepProgress::engineRpm).containsExactly(3060.0, 4800.0);
        assertThat(seen).extracting(StepProgress::state).contains(StepProgress.State.GO_THERE);
        for (StepProgress done : run.finished()) {
            DwellOrders later = printed(recording, done.engineRpm());
            assertThat(done.state()).isEqualTo(StepProgress.State.DONE);
            assertThat(done.heldS()).isBetween(20.0, later.dwell().durationS() + 0.5);
            double once = 100 * half(later, OrderLine.Role.UNEVEN_PROPELLER);
            // The dwell printed is some seconds longer, so its interval is no wider but for chance.
            assertThat(done.oncePercent().orElseThrow()).isBetween(0.6 * once, 1.7 * once);
            assertThat(once).isLessThan(5);
        }
    }

    private static double half(DwellOrders dwell, OrderLine.Role role) {
        LiveFigures.Figure figure = LiveFigures.figure(dwell, role).orElseThrow();
        return figure.plusMinus() / figure.value();
    }

    @Test
    void aWrongSpeedDoesNotCount() {
        SteppedRun run = new SteppedRun(List.of(step(3060)), 5);

        lead(run, heard(holding(26, 3200), 0.02), 0, 26);

        assertThat(run.finished()).isEmpty();
        assertThat(run.now().orElseThrow().state()).isEqualTo(StepProgress.State.GO_THERE);
    }

    @Test
    void aHoldThatTheThrottleBreaksBeginsAnew() {
        SteppedRun run = new SteppedRun(List.of(step(3060)), 5);

        lead(run, heard(holding(13, 3060, 3300, 3060), 0.02), 0, 43);

        assertThat(run.finished()).as("twice 13 s are no 20 s").isEmpty();
    }

    @Test
    void aWindowThatIsNotBorneOutTakesNothingAwayFromTheHoldAroundIt() {
        SteppedRun run = new SteppedRun(List.of(step(3060)), 5);

        List<StepProgress> seen = lead(run, heard(holding(26, 3060), 0.02), 0, 18, List.of(14.0));

        assertThat(seen.get(13).state()).isEqualTo(StepProgress.State.GO_THERE);
        assertThat(seen.get(14).heldS()).as("the latest seconds first").isBetween(7.0, 9.0);
        assertThat(seen.get(15).heldS()).as("then all of it").isBetween(15.0, 16.5);
    }

    @Test
    void aLineTooWeakForTheWantedErrorEndsTheStepAfterTwiceTheTime() {
        SteppedRun run = new SteppedRun(List.of(step(3060)), 0.01);

        lead(run, heard(holding(46, 3060), 0.02), 0, 46);

        assertThat(run.finished()).singleElement().satisfies(done -> {
            assertThat(done.state()).isEqualTo(StepProgress.State.DONE_WEAK);
            assertThat(done.heldS()).isBetween(40.0, 42.0);
        });
    }

    @Test
    void stepsMayBeTakenInAnyOrderSkippedAndRepeated() {
        SteppedRun run = new SteppedRun(List.of(step(3060), step(4800)), 5);
        Recording recording = heard(holding(26, 4800, 3060), 0.02);

        lead(run, recording, 0, 26);
        assertThat(run.finished()).extracting(StepProgress::number).containsExactly(2);

        run.repeat();
        assertThat(run.finished()).isEmpty();
        assertThat(run.now().orElseThrow().number()).isEqualTo(2);
        run.skip();
        assertThat(run.now().orElseThrow().number()).isEqualTo(1);

        lead(run, recording, 24, 54);
        assertThat(run.finished()).extracting(StepProgress::number).containsExactly(1);
        run.skip();
        assertThat(run.now()).as("the last one left is dropped").isEmpty();
    }
}
