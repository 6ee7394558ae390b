package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Source;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Where a comb's teeth lie and what they weigh, and the path of speed that collects them; runs of known speed. */
class PathAndCombTest {
    private static final double RATE_HZ = 800;
    private static final double RATIO = 2.43;
    /** A tenth of what a frame of 1.5 s resolves. */
    private static final double PLACE_HZ = 0.067;

    private static OrderTable table(double ratio, int blades) {
        return new Installation(
                        Optional.empty(),
                        new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.empty(), OptionalDouble.empty()),
                        new Reduction(Reduction.Kind.UNSTATED, ratio, Optional.empty()),
                        new Installation.Propeller(blades, Optional.empty(), Optional.empty()),
                        List.of())
                .orders();
    }

    /** Blade pass, propeller 1×, firing and crank 1× at a speed whose turns are given, in noise; the chance is seeded. */
    private static WhitenedSpectrogram frames(double seconds, DoubleUnaryOperator turns) {
        Random dice = new Random(9);
        int size = (int) (seconds * RATE_HZ);
        double[] x = new double[size];
        for (int i = 0; i < size; i++) {
            double at = 2 * Math.PI * turns.applyAsDouble(i / RATE_HZ);
            x[i] = Math.cos(3 * at)
                    + 0.5 * Math.cos(at + 1)
                    + 0.8 * Math.cos(2 * RATIO * at)
                    + 0.4 * Math.cos(RATIO * at + 2)
                    + 0.3 * dice.nextGaussian();
        }
        Channel channel = new Channel("x", SignalUnit.METRE_PER_SECOND_SQUARED, Series.of(x));
        Recording recording = new Recording(
                new Source(Path.of("x.wav"), FileHash.of("0"), "wav", false, RATE_HZ, seconds, List.of("x")),
                new TimeBase.Even(0, RATE_HZ, size),
                List.of(channel),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(new Stretch(0, seconds)));
        return WhitenedSpectrogram.of(recording, recording.channels(), 350);
    }

    private static double[] path(WhitenedSpectrogram frames, double fromHz, double toHz) {
        PathSearch search = new PathSearch(frames, Comb.of(table(RATIO, 3)), SpeedPrior.between(fromHz, toHz));
        return search.best(IntStream.range(0, frames.frames()).toArray(), fromHz, toHz)
                .hz();
    }

    /** 30 Hz, faster by 0.15 Hz every second.  */
    @Test
    void aPathFollowsASpeedThatRises() {
        WhitenedSpectrogram frames = frames(16, t -> 30 * t + 0.075 * t * t);
        double[] hz = path(frames, 27, 36);
        assertThat(hz).hasSize(frames.frames());
        for (int f = 0; f < hz.length; f++) {
            double truth = 30 + 0.15 * frames.centreS(f);
            assertThat(hz[f]).isCloseTo(truth, within(PLACE_HZ));
        }
    }

    @Test
    void aSteadySpeedHasASteadyPathAndNoRivalNearAsGood() {
        WhitenedSpectrogram frames = frames(8, t -> 30 * t);
        double[] hz = path(frames, 20, 40);
        for (double each : hz) {
            assertThat(each).isCloseTo(30, within(PLACE_HZ));
        }
        PathSearch search = new PathSearch(frames, Comb.of(table(RATIO, 3)), SpeedPrior.between(25, 36));
        double own = IntStream.range(0, frames.frames())
                .mapToDouble(f -> search.evidence(f, 30))
                .sum();
        assertThat(search.rival(30, 0.02)).isLessThan(0.6 * own);
        // Where the speed itself isn't kept out, it is its own best rival; on a grid of 0.1 %.
        assertThat(search.rival(30, 0)).isBetween(0.9 * own, 1.05 * own);
    }

    /** What a frame shows is the sum over the teeth inside the range, each by its weight. */
    @Test
    void evidenceIsTheWeighedSumOverTheTeeth() {
        WhitenedSpectrogram frames = frames(8, t -> 30 * t);
        Comb two = new Comb(
                Comb.of(table(RATIO, 3)).teeth().stream()
                        .filter(t -> t.order() == 1 || t.order() == 3)
                        .toList(),
                3);
        PathSearch search = new PathSearch(frames, two, SpeedPrior.between(25, 36));
        assertThat(search.evidence(4, 30))
                .isCloseTo(0.9 * frames.evidence(0, 4, 30) + 1.5 * frames.evidence(0, 4, 90), within(1e-12));
        // 3 × 120 Hz lie beyond 350 Hz.
        assertThat(search.evidence(4, 120)).isCloseTo(0.9 * frames.evidence(0, 4, 120), within(1e-12));
    }

    @Test
    void teethAreTheTablesLinesAndSomeMultiplesAboveByTheirWeights() {
        Comb comb = Comb.of(table(RATIO, 3));
        assertThat(comb.highestOrder()).isCloseTo(9.72, within(1e-12));
        double[][] expected = {
            {1, 0.9},
            {1.215, 0.4},
            {2, 0.5},
            {2.43, 0.9},
            {3, 1.5},
            {3.645, 0.4},
            {4, 0.5},
            {4.86, 1.5},
            {5, 0.5},
            {6, 1.1},
            {6.075, 0.4},
            {7.29, 0.5},
            {8.505, 0.4},
            {9, 0.8},
            {9.72, 1.1},
            {12, 0.6},
            {14.58, 0.8},
            {19.44, 0.6}
        };
        assertThat(comb.teeth()).hasSize(expected.length);
        for (int k = 0; k < expected.length; k++) {
            assertThat(comb.teeth().get(k).order()).isCloseTo(expected[k][0], within(1e-9));
            assertThat(comb.teeth().get(k).weight()).isEqualTo(expected[k][1]);
        }
        // On one shaft the firing of four cylinders falls on propeller 2× and its double on 4×, and nothing is added
        // above.
        Comb direct = Comb.of(table(1, 3));
        assertThat(direct.teeth().stream().filter(t -> t.order() == 2))
                .singleElement()
                .satisfies(t -> assertThat(t.weight()).isEqualTo(1.5));
        assertThat(direct.teeth()).allMatch(t -> t.order() <= direct.highestOrder());
    }

    /**
     * At 1.5 to one crank 2× falls on propeller 3×, 4× on 6×: firing 1.5 and blade pass 1.5, their doubles 1.1 and 1.1; crank
     * 6× and 8×, which are firing's third and fourth, on 9× and 12×, 0.8 and 0.6. Half orders fall on nothing but 4 on 6 and
     * so on: those counted here are taken from the two tables by hand.
     */
    @Test
    void linesOfBothShaftsOnOnePlaceAreCountedOnce() {
        Comb comb = Comb.of(table(RATIO, 3));
        // Far from any such ratio only pairs within 0.8 % count: at 2.43 crank 2½× (6.075) isn't one of 6, 1.25 % off.
        assertThat(comb.countedTwice(RATIO, RATIO)).isZero();
        // At 2: crank ½ on 1 (0.4 of 0.4 and 0.9), 1 on 2 (0.5), 1½ on 3 (0.4), 2 on 4 (0.5), 2½ on 5 (0.4), 3 on 6
        // (0.5),
        // 6 on 12 (0.6): 3.3.
        assertThat(comb.countedTwice(RATIO, 2)).isCloseTo(3.3, within(1e-9));
    }

    @Test
    void aScoreIsTheSumOfCreditsOnAGridOfEqualRatios() {
        WhitenedSpectrogram frames = frames(8, t -> 30 * t);
        double[] still = new double[frames.frames()];
        java.util.Arrays.fill(still, 30);
        WhitenedLines lines = WhitenedLines.along(frames, 0, still);
        double[] orders = {1, 3};
        double[] weights = {0.9, 1.5};
        CombScore score = new CombScore(lines, orders, weights, 28, 33);
        int most = 0;
        for (int i = 0; i < score.size(); i++) {
            most = score.at(i) > score.at(most) ? i : most;
            double hz = 28 * Math.exp(i * 4e-4);
            assertThat(score.hz(i)).isCloseTo(hz, within(1e-9));
            assertThat(score.at(i)).isCloseTo(0.9 * lines.credit(hz) + 1.5 * lines.credit(3 * hz), within(1e-5));
        }
        assertThat(score.hz(most)).isCloseTo(30, within(0.15));
        // ln(33/28)/0.0004 = 410.8, and both ends.
        assertThat(score.size()).isEqualTo(413);
        assertThat(score.atOrNone(-1)).isZero();
        assertThat(score.atOrNone(413)).isZero();
        // A crank's grid from 60 Hz, over a ratio of 2, begins at 30: ln(30/28)/0.0004 = 172.5 places further on.
        CombScore crank = new CombScore(lines, orders, weights, 60, 66);
        assertThat(score.shift(crank, 2)).isBetween(172, 173);
    }

    /** Speeds rise by 10 % in 2 s at 10 s; before and after nobody moved. */
    @Test
    void dwellsEndWhereTheLeverMoves() {
        KnotTrack track = KnotTrack.ofSpeeds(
                IntStream.rangeClosed(0, 240).mapToDouble(i -> i * 0.1).toArray(),
                IntStream.rangeClosed(0, 240)
                        .mapToDouble(i -> 30 * (1 + 0.1 * Math.max(0, Math.min(1, (i * 0.1 - 10) / 2))))
                        .toArray(),
                0,
                24);
        List<DwellFinder.Stretch> found = DwellFinder.find(track);
        assertThat(found).hasSize(2);
        assertThat(found.get(0).fromS()).isCloseTo(0, within(0.3));
        assertThat(found.get(0).toS()).isCloseTo(10, within(0.6));
        assertThat(found.get(1).fromS()).isCloseTo(12, within(0.6));
        assertThat(found.get(1).toS()).isCloseTo(24, within(0.3));
    }

    /** 20 Hz rising by 0.2 Hz a second, for 20 s. */
    private static KnotTrack rising() {
        return KnotTrack.ofSpeeds(new double[] {0, 20}, new double[] {20, 24}, 0, 20);
    }

    /** Of 2 to 12 s: 21.4 Hz in the mean, known to a twentieth of 1/1.5 Hz over the root of 10/1.5 frames. */
    @Test
    void withoutPhasesADwellHasTheSpeedOfItsPath() {
        SmoothedDwells dwells = new SmoothedDwells(rising(), 1.5);
        Dwell dwell = dwells.of(PhaseLock.Locked.not(rising(), new DwellFinder.Stretch(2, 12)));
        assertThat(dwell.propellerHz()).isCloseTo(21.4, within(1e-9));
        assertThat(dwell.minHz()).isCloseTo(20.4, within(1e-9));
        assertThat(dwell.maxHz()).isCloseTo(22.4, within(1e-9));
        assertThat(dwell.standardErrorHz()).isCloseTo(0.05 / 1.5 / Math.sqrt(10 / 1.5), within(1e-9));
        assertThat(dwells.track().revolutionsAt(7)).isCloseTo(rising().revolutionsAt(7), within(1e-9));
    }

    /** From 5 to 10 s phases say 25 Hz, from any angle; before and after the track goes on as the path, turned on from there. */
    @Test
    void withPhasesTheTrackFollowsThemAndThePathBetween() {
        double[] time =
                IntStream.rangeClosed(0, 20).mapToDouble(i -> 5 + 0.25 * i).toArray();
        double[] turns = java.util.Arrays.stream(time).map(t -> 7000 + 25 * t).toArray();
        double[] variance = java.util.Arrays.stream(time).map(t -> 1e-8).toArray();
        SmoothedDwells dwells = new SmoothedDwells(rising(), 1.5);
        Dwell dwell = dwells.of(new PhaseLock.Locked(
                new DwellFinder.Stretch(5, 10), time, turns, variance, rising(), 0, true, false, 1));
        assertThat(dwell.propellerHz()).isCloseTo(25, within(1e-6));
        assertThat(dwell.minHz()).isCloseTo(25, within(1e-3));
        assertThat(dwell.maxHz()).isCloseTo(25, within(1e-3));
        SpeedTrack track = dwells.track();
        assertThat(track.propellerHzAt(7.1)).isCloseTo(25, within(1e-3));
        assertThat(track.revolutionsAt(9.5) - track.revolutionsAt(5.5)).isCloseTo(100, within(1e-3));
        assertThat(track.revolutionsAt(4) - track.revolutionsAt(1))
                .isCloseTo(rising().revolutionsAt(4) - rising().revolutionsAt(1), within(1e-6));
        assertThat(track.revolutionsAt(18) - track.revolutionsAt(11))
                .isCloseTo(rising().revolutionsAt(18) - rising().revolutionsAt(11), within(1e-6));
        // Where the phases begin the angle is the path's, and 125 turns later it goes on from there.
        assertThat(track.revolutionsAt(5)).isCloseTo(rising().revolutionsAt(5), within(1e-3));
        double gained = 125 - (rising().revolutionsAt(10) - rising().revolutionsAt(5));
        assertThat(track.revolutionsAt(15) - rising().revolutionsAt(15)).isCloseTo(gained, within(1e-3));
    }

    /** A dwell that fills its recording of 5 s, one that begins 5 s into it, and one between two moves. */
    @Test
    void anEndAtAMoveAndTurnsThatMayHaveSlippedCountInTheErrorOfTheMean() {
        assertThat(errorHz(5, 10, 1)).isLessThan(1e-4);
        // 0.4 ms at 25 Hz are 0.01 turns, in 5 s 2 mHz; at both ends √2 of it.
        assertThat(errorHz(0, 10, 1)).isCloseTo(0.002, within(1e-4));
        assertThat(errorHz(0, 20, 1)).isCloseTo(0.002 * Math.sqrt(2), within(1e-4));
        // Of lines of which nine tenths stand still a tenth of a turn and 0.4 of that tenth, 0.14, in 5 s 28 mHz.
        assertThat(errorHz(0, 20, 0.9)).isCloseTo(Math.hypot(0.002 * Math.sqrt(2), 0.028), within(1e-4));
    }

    private static double errorHz(double fromS, double toS, double followed) {
        double[] time =
                IntStream.rangeClosed(0, 20).mapToDouble(i -> 5 + 0.25 * i).toArray();
        double[] turns = java.util.Arrays.stream(time).map(t -> 25 * t).toArray();
        double[] variance = java.util.Arrays.stream(time).map(t -> 1e-8).toArray();
        SpeedTrack path = KnotTrack.constant(25, fromS, toS);
        PhaseLock.Locked locked = new PhaseLock.Locked(
                new DwellFinder.Stretch(5, 10), time, turns, variance, path, 0, true, false, followed);
        return new SmoothedDwells(path, 1.5).of(locked).standardErrorHz();
    }

    /** Lines for 10 of 16 s: frames of 1.5 s hold them to the last third; then nothing bears a path out. */
    @Test
    void aPathIsBorneOutAsFarAsItsLinesStand() {
        WhitenedSpectrogram frames = frames(16, t -> t < 10 ? 30 * t : Math.floor(1e5 * Math.sin(1e4 * t * t)) / 7);
        double[] hz = new double[frames.frames()];
        java.util.Arrays.fill(hz, 30);
        PathSearch search = new PathSearch(frames, Comb.of(table(RATIO, 3)), SpeedPrior.between(25, 36));
        PathSearch.Path path =
                new PathSearch.Path(IntStream.range(0, frames.frames()).toArray(), hz);
        TrackCoverage coverage = TrackCoverage.of(search, path, frames);
        List<DwellFinder.Stretch> parts = coverage.borneOut(List.of(new DwellFinder.Stretch(1, 15)), 5);
        assertThat(parts).singleElement().satisfies(part -> {
            assertThat(part.fromS()).isEqualTo(1);
            // A hop of the frames is 0.375 s.
            assertThat(part.toS()).isCloseTo(10, within(1.0));
        });
        assertThat(coverage.borneOut(List.of(new DwellFinder.Stretch(6, 15)), 5))
                .isEmpty();
        double lost = ((evenblade.base.fact.Value.Amount)
                        coverage.warning().orElseThrow().fact().values().get(0))
                .value();
        assertThat(lost).isCloseTo(5.2, within(1.0));
    }
}
