package evenblade.judge.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.numeric.Phasor;
import evenblade.base.numeric.PlanarSpread;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Errors and intervals of a correction beside figures made by numpy and scipy from the definitions, by numeric slopes and
 * brute search: {@code reference/balance/intervals.py}. That script's own steps are good to six digits at least, where
 * nothing else is said.
 */
class IntervalReferenceTest {
    private static final double SIX_DIGITS = 1e-6;

    private static final Phasor REST = Phasor.ofDegrees(4, 35);
    private static final Phasor PER_GMM = Phasor.ofDegrees(0.005, 70);
    private static final TrialScatter SCATTER = new TrialScatter(0.04, 12, 0);
    private static final double[][] FROM_LINES = {
        {9.0e-3, 1.0e-3, -8e-6, 2e-6},
        {1.0e-3, 7.0e-3, 1e-6, -5e-6},
        {-8e-6, 1e-6, 3e-8, 4e-9},
        {2e-6, -5e-6, 4e-9, 2e-8}
    };
    private static final double[][] FROM_SCATTER = {
        {4.0e-2, -6e-3, -2.4e-5, 9e-6},
        {-6e-3, 3.0e-2, 5e-6, -1.5e-5},
        {-2.4e-5, 5e-6, 1.2e-7, -1e-8},
        {9e-6, -1.5e-5, -1e-8, 7e-8}
    };
    private static final double[][] FROM_WEIGHTS = {{0, 0, 0, 0}, {0, 0, 0, 0}, {0, 0, 6e-9, 0}, {0, 0, 0, 9e-9}};
    private static final Influence MACHINE =
            new Influence(REST, PER_GMM, FROM_LINES, FROM_SCATTER, FROM_WEIGHTS, SCATTER, 0, 0);

    /** Amplitudes near what that machine shows with such weights on. */
    private static final List<WeightedReading> AMPLITUDES = List.of(
            WeightedReading.withoutPhase(4.1, 0.06),
            WeightedReading.withoutPhase(2.75, 0.05, Weight.of(9, 60, 100)),
            WeightedReading.withoutPhase(5.0, 0.08, Weight.of(11, 55, 230)),
            WeightedReading.withoutPhase(6.3, 0.04, Weight.of(7, 70, 330)),
            WeightedReading.withoutPhase(5.3, 0.07, Weight.of(12, 60, 60)));

    private static void assertSpread(PlanarSpread spread, double re, double im, double xx, double xy, double yy) {
        assertThat(spread.middle().re()).isCloseTo(re, within(SIX_DIGITS));
        assertThat(spread.middle().im()).isCloseTo(im, within(SIX_DIGITS));
        assertThat(spread.xx()).isCloseTo(xx, within(SIX_DIGITS));
        assertThat(spread.xy()).isCloseTo(xy, within(SIX_DIGITS));
        assertThat(spread.yy()).isCloseTo(yy, within(SIX_DIGITS));
    }

    @Test
    void errorsAreCarriedToAnyWeight() {
        assertSpread(
                MACHINE.lineAt(Phasor.ofDegrees(700, 200)),
                3.27660818,
                -1.20569425,
                0.17142795,
                -0.00658501,
                0.11032582);
    }

    @Test
    void aRunIsPredictedWithErrorsOfMassPlaceAndScatter() {
        assertSpread(
                MACHINE.predicted(List.of(new Weight(10, 70, 200, 0.3), new Weight(4, 50, 320, 0.1))),
                4.14263358,
                -0.70569425,
                0.18912402,
                0.00044889,
                0.13764853);
    }

    @Test
    void degreesOfFreedomComeFromTheScattersPart() {
        assertThat(MACHINE.freedom()).isCloseTo(20.542849, within(SIX_DIGITS));
        assertThat(MACHINE.freedomOfReadings()).isCloseTo(19.146814, within(SIX_DIGITS));
        assertThat(MACHINE.reach95()).isCloseTo(2.0824354, within(SIX_DIGITS));
        assertThat(MACHINE.widening()).isCloseTo(1.0624865, within(SIX_DIGITS));
        assertThat(MACHINE.trialEffect()).isCloseTo(16.512098, within(SIX_DIGITS));
    }

    /** Ends are sought to a ten thousandth of the bracket, which is up to half as wide again as the end: 0.5 %. */
    @Test
    void theIntervalHoldsEveryMassAndAngleThatMightStillTheLine() {
        Correction correction = Correction.of(MACHINE);
        assertThat(correction.value().gmm()).isCloseTo(800, within(SIX_DIGITS));
        assertThat(correction.value().angleDeg()).isCloseTo(145, within(SIX_DIGITS));
        assertThat(correction.standardErrorGmm()).isCloseTo(69.763563, within(SIX_DIGITS));
        assertThat(correction.standardErrorDeg()).isCloseTo(6.2615626, within(SIX_DIGITS));
        assertThat(correction.lowGmm()).isCloseTo(668.22, within(0.5));
        assertThat(correction.highGmm()).isCloseTo(962.99, within(0.5));
        assertThat(correction.belowDeg()).isCloseTo(12.8733, within(0.02));
        assertThat(correction.aboveDeg()).isCloseTo(13.1781, within(0.02));
    }

    @Test
    void amplitudesErrorsAddUpAsSquares() {
        double[] variances = {0.0308, 0.02579076, 0.05254992, 0.06966607, 0.05829977};
        for (int i = 0; i < variances.length; i++) {
            assertThat(MACHINE.varianceOfAmplitude(AMPLITUDES.get(i))).isCloseTo(variances[i], within(1e-8));
        }
    }

    /**
     * Masses are tried by steps of 1.75 %, angles by one degree; half a degree is added. The answer lies 2° past the best
     * angle of the fit here, so what reaches 7.25° below that and 3.75° above it reaches 9.25° and 1.75°.
     */
    @Test
    void amplitudesAloneLeaveTheIntervalThatEveryTriedMassAndAngleShows() {
        Correction narrow = new Correction(new Unbalance(Phasor.ofDegrees(800, 145)), 11, 3, 790, 810, 1, 1);
        Correction found = AmplitudeProfile.of(AMPLITUDES, MACHINE).interval(narrow, Phasor.ofDegrees(780, 147));
        assertThat(found.value().gmm()).isCloseTo(780, within(1e-9));
        assertThat(found.standardErrorGmm()).isEqualTo(11);
        assertThat(found.standardErrorDeg()).isEqualTo(3);
        assertThat(found.lowGmm()).isCloseTo(637.9, within(0.0175 * 637.9));
        assertThat(found.highGmm()).isCloseTo(996.4, within(0.0175 * 996.4));
        assertThat(found.belowDeg()).isCloseTo(9.25, within(0.75));
        assertThat(found.aboveDeg()).isCloseTo(1.75, within(0.75));

        Correction wide = new Correction(narrow.value(), 11, 3, 600, 1100, 1, 1);
        Correction asWide = AmplitudeProfile.of(AMPLITUDES, MACHINE).interval(wide, Phasor.ofDegrees(780, 147));
        assertThat(asWide.lowGmm()).isEqualTo(600);
        assertThat(asWide.highGmm()).isEqualTo(1100);
    }

    /** Five runs for four unknowns: what they weigh, light or heavy, shows in the answer. */
    @Test
    void squaresOfAmplitudesWeighByTheirErrors() {
        SquaredFit fit = SquaredFit.of(AMPLITUDES).orElseThrow();
        assertThat(fit.atRest()).isCloseTo(4.02443533, within(SIX_DIGITS));
        assertThat(fit.perGmm()).isCloseTo(0.005161556579, within(1e-9));
        assertThat(fit.correctionGmm().magnitude()).isCloseTo(779.694123, within(1e-4));
        assertThat(Correction.turn(143.01747, fit.correctionGmm().degrees())).isCloseTo(0, within(1e-5));
        assertThat(fit.closure()).isCloseTo(0.98928375, within(SIX_DIGITS));
        assertThat(fit.start()[0]).isCloseTo(4.02443533, within(SIX_DIGITS));
        assertThat(fit.start()[1]).isCloseTo(0.004123149309, within(1e-9));
        assertThat(fit.start()[2]).isCloseTo(0.003105045264, within(1e-9));
    }
}
