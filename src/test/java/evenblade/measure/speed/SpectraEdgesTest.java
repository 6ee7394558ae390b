package evenblade.measure.speed;

import static evenblade.measure.speed.Drawn.line;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.measure.speed.WhitenedSpectrogram.Places;
import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Short spectra of short, long, stamped and sloping recordings, and what a line needs to stand in few of them. */
class SpectraEdgesTest {
    private static DoubleUnaryOperator noisy(long seed, double noise, DoubleUnaryOperator value) {
        Random dice = new Random(seed);
        return t -> value.applyAsDouble(t) + noise * dice.nextGaussian();
    }

    private static WhitenedSpectrogram frames(Recording run, double upToHz) {
        return WhitenedSpectrogram.of(run, run.channels(), upToHz);
    }

    /** A quarter of the recording, but at least 0.4 and at most 1.5 s. */
    @Test
    void framesAreAQuarterOfAShortRecording() {
        double[][] secondsAndFrames = {{1, 0.4}, {4, 1}, {10, 1.5}};
        for (double[] each : secondsAndFrames) {
            Recording run = Drawn.recording(200, each[0], noisy(1, 1, t -> 0));
            assertThat(frames(run, 60).lengthS()).isCloseTo(each[1], within(1e-9));
        }
    }

    /** 80 samples a frame: padded to 128 at least, as 1.6 times 80 are; 81 need 256. Bins go two beyond what is asked. */
    @Test
    void framesArePaddedByMoreThanHalf() {
        Recording run = Drawn.recording(80, 8, noisy(1, 1, t -> 0));
        WhitenedSpectrogram even = WhitenedSpectrogram.of(run, run.channels(), 20, 1);
        // Bins of 0.625 Hz: 32 to 20 Hz.
        assertThat(even.highestHz()).isCloseTo(33 * 0.625, within(1e-9));
        WhitenedSpectrogram more = WhitenedSpectrogram.of(run, run.channels(), 20, 81 / 80.0);
        assertThat(more.highestHz()).isCloseTo(65 * 0.3125, within(1e-9));
        // What is asked beyond half the rate isn't there: 64 bins, two of them kept back.
        WhitenedSpectrogram all = WhitenedSpectrogram.of(run, run.channels(), 100, 1);
        assertThat(all.highestHz()).isCloseTo(62 * 0.625, within(1e-9));
        assertThat(even.floorDensity(0, 1000)).isEqualTo(even.floorDensity(0, 34 * 0.625));
    }

    /** 5760 samples in frames of 32: more than 600 frames at every eighth; at every tenth 573. */
    @Test
    void aLongRecordingHasItsFramesFurtherApart() {
        Recording run = Drawn.recording(64, 90, noisy(1, 1, t -> 0));
        WhitenedSpectrogram frames = WhitenedSpectrogram.of(run, run.channels(), 20, 0.5);
        assertThat(frames.hopS()).isCloseTo(10 / 64.0, within(1e-12));
        assertThat(frames.frames()).isEqualTo(573);
        assertThat(frames.centreS(2)).isCloseTo(20 / 64.0 + 0.25, within(1e-12));
    }

    /** The line through each frame is taken out first: single precision is all that differs. */
    @Test
    void aSlopeUnderTheLinesChangesNothing() {
        Recording level = Drawn.recording(200, 4, noisy(5, 0.2, t -> line(1, 1, 20 * t)));
        Recording sloping = Drawn.recording(200, 4, noisy(5, 0.2, t -> line(1, 1, 20 * t) + 40 - 300 * t));
        WhitenedSpectrogram one = frames(level, 60);
        WhitenedSpectrogram other = frames(sloping, 60);
        for (double hz = 3; hz < 60; hz += 1.3) {
            double over = one.overFloor(0, 5, hz);
            assertThat(other.overFloor(0, 5, hz)).isCloseTo(over, within(1e-5 * (1 + over)));
        }
    }

    /** Stamps on an even clock say the same as the clock, from whatever second they begin. */
    @Test
    void stampsGiveTheFramesOfAnEvenClock() {
        int size = 900;
        double startS = 7;
        Recording even =
                Drawn.recording(new TimeBase.Even(startS, 200, size), 200, noisy(5, 0.2, t -> line(1, 1, 20 * t)));
        double[] stamps =
                IntStream.range(0, size).mapToDouble(i -> startS + i / 200.0).toArray();
        Recording stamped = Drawn.recording(
                new TimeBase.Stamped(Series.of(stamps), 200), 200, noisy(5, 0.2, t -> line(1, 1, 20 * t)));
        WhitenedSpectrogram one = frames(even, 60);
        WhitenedSpectrogram other = frames(stamped, 60);
        assertThat(other.frames()).isEqualTo(one.frames());
        assertThat(other.centreS(3)).isCloseTo(one.centreS(3), within(1e-9));
        for (double hz = 3; hz < 60; hz += 1.3) {
            double over = one.overFloor(0, 5, hz);
            assertThat(other.overFloor(0, 5, hz)).isCloseTo(over, within(1e-4 * (1 + over)));
        }
    }

    /** A rate a hundredth below the file's was made by a filter that kept out what would fold. */
    @Test
    void onlyWhatWasRecordedAtThisRateFolds() {
        DoubleUnaryOperator noise = noisy(1, 1, t -> 0);
        TimeBase time = new TimeBase.Even(0, 200, 800);
        assertThat(frames(Drawn.recording(time, 200.5, noise), 60).appearsAtHz(170))
                .isCloseTo(30, within(1e-9));
        assertThat(frames(Drawn.recording(time, 203, noise), 60).appearsAtHz(170))
                .isEqualTo(170);
    }

    /** ln 1001 is 30 dB: beyond it a quarter of the logarithm counts. */
    @Test
    void strengthBeyondThirtyDecibelsAddsAQuarter() {
        Recording run = Drawn.recording(
                256, 4, noisy(3, 0.01, t -> line(1, 1, 20 * t)), noisy(4, 0.3, t -> line(1, 1, 20 * t)));
        WhitenedSpectrogram frames = frames(run, 60);
        double strong = frames.overFloor(0, 3, 20);
        assertThat(strong).isGreaterThan(10_000);
        double knee = Math.log(1001);
        assertThat(frames.evidence(0, 3, 20))
                .isCloseTo(knee + (Math.log(1 + strong) - knee) / 4 - 0.4285, within(1e-4));
        double fair = frames.overFloor(1, 3, 20);
        assertThat(fair).isBetween(30.0, 1000.0);
        assertThat(frames.evidence(1, 3, 20)).isCloseTo(Math.log(1 + fair) - 0.4285, within(1e-4));
    }

    /** Three cycles in a frame of a second are the least that is seen. */
    @Test
    void evidenceIsAddedWhereAFrequencyIsInRangeAPartOfTheGridAtATime() {
        Recording run = Drawn.recording(200, 4, noisy(5, 0.2, t -> line(1, 1, 20 * t)));
        WhitenedSpectrogram frames = frames(run, 60);
        double[] grid = {2.9, 3.1, 20, frames.highestHz() - 0.1, frames.highestHz() + 0.1};
        Places all = frames.inRange(grid, new Places(0, 5), 1);
        assertThat(all).isEqualTo(new Places(1, 4));
        float[] sum = new float[5];
        frames.addEvidence(0, 2, grid, all, 1, 1, sum);
        frames.addEvidence(0, 2, grid, all, 1, 2, sum);
        assertThat(sum[0]).isZero();
        assertThat(sum[4]).isZero();
        for (int i = 1; i < 4; i++) {
            assertThat(sum[i]).isCloseTo(3 * (float) frames.evidence(0, 2, grid[i]), within(2e-5f));
        }
        assertThat(frames.inRange(grid, new Places(0, 2), 1.05)).isEqualTo(new Places(0, 2));
        assertThat(frames.inRange(grid, new Places(2, 5), 1.05)).isEqualTo(new Places(2, 3));
    }

    /**
     * A line stands from 4.2 × 0.55 over the root of the independent frames on, 1.9 to a length of 0.5 s less 0.9, in each
     * channel as many; at least from 0.7 on.
     */
    @Test
    void aLineStandsInManyFramesSoonerThanInFew() {
        DoubleUnaryOperator lines = t ->
                0.4 * Math.cos(40 * Math.PI * t) + 0.2 * Math.cos(66 * Math.PI * t) + 0.1 * Math.cos(88 * Math.PI * t);
        Recording run = Drawn.recording(200, 16, noisy(5, 0.2, lines), noisy(6, 0.25, lines));
        for (int channels = 1; channels <= 2; channels++) {
            WhitenedSpectrogram frames =
                    WhitenedSpectrogram.of(run, run.channels().subList(0, channels), 60, 0.5);
            for (int n : new int[] {1, 2, 4, 9, 12, 60}) {
                double[] hz = new double[n];
                Arrays.fill(hz, 20);
                WhitenedLines along = WhitenedLines.along(frames, 0, hz);
                double seconds = 0.5 + 0.125 * (n - 1);
                double from = Math.max(0.7, 2.31 / Math.sqrt(Math.max(1, channels * 1.9 * seconds / 0.5 - 0.9)));
                double below = 0;
                double above = 99;
                for (double f = 7; f < 59; f += 0.011) {
                    double evidence = along.evidence(f);
                    assertThat(along.stands(f)).isEqualTo(evidence > from);
                    below = evidence <= from ? Math.max(below, evidence) : below;
                    above = evidence > from ? Math.min(above, evidence) : above;
                }
                // The places tried come as near to it as this.
                assertThat(above - below)
                        .as("%s channels, %s frames", channels, n)
                        .isLessThan(0.12);
            }
        }
    }

    /** A peak is the most there is within 0.8 of a resolution, on a grid of ratios of e^0.0004 from the lowest frequency on. */
    @Test
    void aPeakIsTheMostWithinFourFifthsOfAResolution() {
        Recording run = Drawn.recording(
                200,
                12,
                noisy(
                        5,
                        0.1,
                        t -> line(1, 1, 9 * t)
                                + line(0.8, 1, 10.4 * t)
                                + line(0.6, 1, 11.2 * t)
                                + line(0.7, 1, 30 * t)
                                + line(0.5, 1, 31.1 * t)
                                + line(0.3, 1, 50 * t)
                                + line(0.3, 1, 50.9 * t)));
        WhitenedSpectrogram frames = WhitenedSpectrogram.of(run, run.channels(), 60, 1);
        double[] hz = new double[frames.frames()];
        Arrays.fill(hz, 20);
        WhitenedLines lines = WhitenedLines.along(frames, 0, hz);
        double[] grid = IntStream.range(1, 7510)
                .mapToDouble(i -> 3 * Math.exp(4e-4 * i))
                .filter(each -> each < 59.9)
                .toArray();
        double[] expected = Arrays.stream(grid)
                .filter(lines::stands)
                .filter(at -> {
                    double own = lines.evidence(at);
                    return Arrays.stream(grid)
                            .filter(other -> Math.abs(other - at) < 0.8 + 0.0003 * at)
                            .allMatch(other -> lines.evidence(other) <= own + 1e-7);
                })
                .boxed()
                .sorted((a, b) -> Double.compare(lines.evidence(b), lines.evidence(a)))
                .mapToDouble(each -> each)
                .toArray();
        double[] peaks =
                Arrays.stream(lines.peaksHz()).filter(each -> each < 59.5).toArray();
        assertThat(peaks.length).isGreaterThan(3);
        assertThat(peaks).containsExactly(expected, within(1e-6));
    }

    /** Whether a line lies below the range, in it or above it. */
    @Test
    void creditsOfAGridOfSpeedsAreThoseOfEachSpeed() {
        Recording run = Drawn.recording(200, 8, noisy(5, 0.1, t -> line(1, 1, 20 * t) + line(0.7, 1, 33.3 * t)));
        WhitenedSpectrogram frames = frames(run, 80);
        double[] still = new double[frames.frames()];
        Arrays.fill(still, 20);
        WhitenedLines lines = WhitenedLines.along(frames, 0, still);
        for (double order : new double[] {0.1, 1, 1.5, 3.7, 12}) {
            double[] sum = new double[2500];
            lines.addCredits(order, 2, Math.log(11), sum);
            int standing = 0;
            for (int i = 0; i < sum.length; i++) {
                double credit = lines.credit(order * 11 * Math.exp(i * WhitenedLines.STEP));
                standing += credit > 0 ? 1 : 0;
                assertThat(sum[i]).isCloseTo(2 * credit, within(1e-5));
            }
            if (order == 1 || order == 1.5) {
                assertThat(standing).isPositive();
            }
        }
    }
}
