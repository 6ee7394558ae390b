package evenblade.judge.tie;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.numeric.LinearDesign;
import evenblade.base.numeric.Phasor;
import evenblade.base.units.Length;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.SwapFit;
import evenblade.judge.tracking.TrackingSession;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Sizes and intervals of a tie without phase, held against closed forms: A = |c + k·T|, c = 2, k = 0.5 at 40°. */
class AmplitudeTieTest {
    private static final double C = 2;
    private static final Phasor K = Phasor.ofDegrees(0.5, 40);
    private static final double ERROR = 0.005;
    /** As draws are made wider. */
    private static final double WIDER = 1.06;

    /** A 2.5 % point of 400 draws scatters by 7 % of the reach; three of that, and what bends the model. */
    private static final double OF_DRAWS = 0.2;

    private static final List<Phasor> TRACKS = List.of(
            Phasor.ofDegrees(1, 0),
            Phasor.ofDegrees(1.5, 70),
            Phasor.ofDegrees(0.8, 160),
            Phasor.ofDegrees(1.2, 230),
            Phasor.ofDegrees(1.7, 300),
            Phasor.ofDegrees(0.4, 20));

    private static double amplitude(Phasor track) {
        return new Phasor(C, 0).plus(K.times(track)).magnitude();
    }

    private static AmplitudeTie tie() {
        List<TieRun> runs = new ArrayList<>();
        for (Phasor track : TRACKS) {
            runs.add(new TieRun(
                    "run " + (runs.size() + 1),
                    amplitude(track),
                    ERROR,
                    OptionalDouble.empty(),
                    track,
                    0,
                    Optional.empty(),
                    "marking " + (runs.size() + 1),
                    List.of("A", "B", "C")));
        }
        return AmplitudeTie.of(runs, false).orElseThrow();
    }

    /** Change of the amplitude with c and both parts of k: the unit vector along V times 1, T and i·T. */
    private static double[] slope(Phasor track) {
        Phasor line = new Phasor(C, 0).plus(K.times(track));
        double re = line.re() / line.magnitude();
        double im = line.im() / line.magnitude();
        return new double[] {re, re * track.re() + im * track.im(), -re * track.im() + im * track.re()};
    }

    private static double standardError(double... combination) {
        double[][] rows = TRACKS.stream().map(AmplitudeTieTest::slope).toArray(double[][]::new);
        // Nothing scatters: of the 5 that stated errors are worth 8 are made by three markings more than unknowns.
        return Math.sqrt(5.0 / 8) * ERROR * Math.sqrt(LinearDesign.of(rows).varianceFactor(combination));
    }

    private static void assertInterval(Size size, double value, double standardError) {
        double reach = WIDER * 1.96 * standardError;
        assertThat(size.value()).isCloseTo(value, within(1e-4));
        assertThat(value - size.low()).isCloseTo(reach, within(OF_DRAWS * reach));
        assertThat(size.high() - value).isCloseTo(reach, within(OF_DRAWS * reach));
    }

    @Test
    void intervalsAreThoseOfLeastSquares() {
        AmplitudeTie tie = tie();
        double along = Math.cos(Math.toRadians(40));
        double aside = Math.sin(Math.toRadians(40));
        assertInterval(tie.left(), C, standardError(1, 0, 0));
        assertInterval(tie.perMillimetre(), 0.5, standardError(0, along, aside));
        assertThat(tie.perDegree()).isEmpty();
    }

    /** |k|·|T|, run by run. */
    @Test
    void theShareThatGoesWithTrackIsItsSizeTimesTheTrack() {
        List<TrackTie.Share> shares = tie().shares();
        double along = Math.cos(Math.toRadians(40));
        double aside = Math.sin(Math.toRadians(40));
        for (int i = 0; i < TRACKS.size(); i++) {
            double mm = TRACKS.get(i).magnitude();
            assertThat(shares.get(i).measured()).isCloseTo(amplitude(TRACKS.get(i)), within(1e-12));
            assertInterval(shares.get(i).withTrack(), 0.5 * mm, mm * standardError(0, along, aside));
        }
    }

    /** Where the track itself is unsure by σ in each part, the length of the line is by |k|·σ more. */
    @Test
    void anUnsureTrackWidensThePrediction() {
        Phasor track = Phasor.ofDegrees(1, 120);
        double fit = standardError(slope(track));
        assertThat(tie().expected(track)).isCloseTo(amplitude(track), within(1e-4));
        assertInterval(tie().predicted(track, 0), amplitude(track), fit);
        assertInterval(tie().predicted(track, 0.1), amplitude(track), Math.hypot(fit, 0.5 * 0.1));
    }

    private static TrackingSession marks(String blades, double... mm) {
        return TrackingSession.of(
                Instant.parse("2026-03-01T08:00:00Z"),
                Layout.of(blades.split("")),
                Arrays.stream(mm).mapToObj(Length::ofMillimetres).toList(),
                Length.ofMillimetres(0.1));
    }

    /**
     * Three tips with errors σ each, taken as independent: each part of (2/3)·Σ d·e^(−jθ) has the variance (4/9)·(3/2)·σ².
     * Marks in three layouts tell every blade and position apart.
     */
    @Test
    void theSmoothestLayoutCarriesTheErrorOfItsPredictedTrack() {
        SwapFit fit = SwapFit.of(List.of(marks("ABC", 2, 0, 0), marks("CAB", 0, 2, 0), marks("BAC", 0, 2, 0)));
        SmoothestLayout best = SmoothestLayout.of(tie(), fit);
        Layout layout = best.layout();
        double squares = fit.predictedTrack(layout).orElseThrow().stream()
                .mapToDouble(e -> Math.pow(e.standardErrorMm(), 2))
                .sum();
        double part = Math.sqrt(2.0 / 3 * squares / 3);
        double reach = WIDER * 1.96 * 0.5 * part;
        assertThat((best.predicted().high() - best.predicted().low()) / 2).isCloseTo(reach, within(OF_DRAWS * reach));
        assertThat(best.predicted().value()).isLessThanOrEqualTo(best.now().value());
    }
}
