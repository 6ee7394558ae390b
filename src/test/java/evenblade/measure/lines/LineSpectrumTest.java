package evenblade.measure.lines;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Invented signals; the truth is what was put into them. */
class LineSpectrumTest {
    private static final double RATE_HZ = 1000;

    /** A sine that was put in. */
    private record Tone(double hz, double amplitude, double phase) {
        double at(double t) {
            return amplitude * Math.sin(2 * Math.PI * hz * t + phase);
        }
    }

    private static double[] noise(Random random, int size, double sigma) {
        double[] noise = new double[size];
        Arrays.setAll(noise, i -> sigma * random.nextGaussian());
        return noise;
    }

    private static LineSpectrum look(double[] samples) {
        return LineSpectrum.of(new TimeBase.Even(0, RATE_HZ, samples.length), Series.of(samples), 0.45 * RATE_HZ);
    }

    private static double[] tones(double[] onto, Tone... tones) {
        for (int i = 0; i < onto.length; i++) {
            for (Tone tone : tones) {
                onto[i] += tone.at(i / RATE_HZ);
            }
        }
        return onto;
    }

    /** Stated: at most 1 in 100. Over 3000 cases of 1, 2, 5 and 20 s each, 6, 5, 2 and 4 showed one. */
    @Test
    void noiseAloneShowsALineInAtMostOneOfAHundredRecordings() {
        Random random = new Random(41);
        for (int seconds : new int[] {2, 20, 60}) {
            int cases = seconds == 60 ? 200 : 500;
            long seen = 0;
            for (int i = 0; i < cases; i++) {
                seen += look(noise(random, (int) (seconds * RATE_HZ), 1))
                                .lines()
                                .isEmpty()
                        ? 0
                        : 1;
            }
            assertThat(seen).as(seconds + " s").isLessThanOrEqualTo(cases / 100);
        }
    }

    /** Noise whose power falls with the square of the frequency, as wind and handling make. */
    @Test
    void noiseThatFallsWithFrequencyIsNoLine() {
        Random random = new Random(42);
        long seen = 0;
        for (int i = 0; i < 200; i++) {
            double[] red = noise(random, (int) (20 * RATE_HZ), 1);
            for (int k = 1; k < red.length; k++) {
                red[k] += 0.99 * red[k - 1];
            }
            seen += look(red).lines().isEmpty() ? 0 : 1;
        }
        assertThat(seen).isLessThanOrEqualTo(2);
    }

    /** A resonance that noise rings: a hump of 4 Hz, sixteen bins. */
    @Test
    void aBroadHumpIsNoLine() {
        Random random = new Random(43);
        double[] hump = noise(random, (int) (60 * RATE_HZ), 1);
        double r = Math.exp(-Math.PI * 4 / RATE_HZ);
        for (int k = 2; k < hump.length; k++) {
            hump[k] += 2 * r * Math.cos(2 * Math.PI * 80 / RATE_HZ) * hump[k - 1] - r * r * hump[k - 2];
        }
        assertThat(look(hump).lines()).isEmpty();
    }

    /** Anywhere between two bins, strong and weak: within 1 % and three standard errors; frequency within a tenth of a bin. */
    @Test
    void tonesReadTheirAmplitudeAndFrequency() {
        Random random = new Random(44);
        for (int i = 0; i < 40; i++) {
            double shift = i * 0.00625;
            Tone strong = new Tone(32.97 + shift, 2, 1 + i);
            Tone middle = new Tone(81.3 + shift, 0.3, 2 + i);
            Tone weak = new Tone(240.1 + shift, 0.1, 3 + i);
            LineSpectrum found = look(tones(noise(random, (int) (20 * RATE_HZ), 0.3), strong, middle, weak));
            List<SteadyLine> lines = found.lines();
            assertThat(lines).hasSizeGreaterThanOrEqualTo(3);
            for (int k = 0; k < 3; k++) {
                Tone truth = List.of(strong, middle, weak).get(k);
                SteadyLine line = lines.get(k);
                assertThat(line.steady()).isTrue();
                assertThat(line.frequencyHz())
                        .isCloseTo(truth.hz(), within(0.1 * found.spectrum().binHz()));
                assertThat(line.amplitude())
                        .isCloseTo(truth.amplitude(), within(0.01 * truth.amplitude() + 4 * line.standardError()));
            }
        }
    }

    /** 300 cases of a line: its scatter about the truth in standard errors has a standard deviation of 1 within a fifth. */
    @Test
    void theStandardErrorIsTheScatter() {
        Random random = new Random(45);
        for (double amplitude : new double[] {0.1, 0.4, 3}) {
            double squares = 0;
            double sum = 0;
            int seen = 0;
            int unsteady = 0;
            for (int i = 0; i < 300; i++) {
                Tone tone = new Tone(60 + 0.001 * i, amplitude, i);
                List<SteadyLine> lines = look(tones(noise(random, (int) (20 * RATE_HZ), 0.5), tone))
                        .lines();
                for (SteadyLine line : lines) {
                    if (Math.abs(line.frequencyHz() - tone.hz()) < 0.5) {
                        double off = (line.amplitude() - amplitude) / line.standardError();
                        squares += off * off;
                        sum += off;
                        seen++;
                        unsteady += line.steady() ? 0 : 1;
                    }
                }
            }
            assertThat(seen).isEqualTo(300);
            assertThat(unsteady).isLessThanOrEqualTo(3);
            assertThat(Math.sqrt(squares / seen)).as("amplitude " + amplitude).isBetween(0.8, 1.25);
            assertThat(Math.abs(sum / seen)).as("amplitude " + amplitude).isLessThan(0.5);
        }
    }

    /** A speed that wanders by 2 %: what shows of it isn't called steady. */
    @Test
    void aLineThatWandersIsNotSteady() {
        double[] samples = noise(new Random(48), (int) (20 * RATE_HZ), 0.01);
        double turns = 0;
        for (int i = 0; i < samples.length; i++) {
            turns += 90 * (1 + 0.01 * Math.sin(2 * Math.PI * 0.11 * i / RATE_HZ)) / RATE_HZ;
            samples[i] += Math.sin(2 * Math.PI * turns);
        }
        List<SteadyLine> lines = look(samples).lines();
        assertThat(lines).isNotEmpty().noneMatch(SteadyLine::steady);
    }

    /** Jittered stamps at 416 Hz, where an even grid would read 14 % low at half the highest frequency. */
    @Test
    void stampedRowsAreMeasuredAtTheirStamps() {
        Random random = new Random(46);
        double[] stamps = new double[416 * 20];
        double[] values = new double[stamps.length];
        Tone tone = new Tone(131.3, 1, 0.3);
        for (int i = 0; i < stamps.length; i++) {
            stamps[i] = 5 + i / 416.0 + 0.0008 * (random.nextDouble() - 0.5);
            values[i] = 9.81 + tone.at(stamps[i]) + 0.05 * random.nextGaussian();
        }
        LineSpectrum found =
                LineSpectrum.of(new TimeBase.Stamped(Series.of(stamps), 416), Series.of(values), 0.45 * 416);
        SteadyLine line = found.lines().get(0);
        assertThat(line.frequencyHz()).isCloseTo(131.3, within(0.02));
        assertThat(line.amplitude()).isCloseTo(1, within(0.01));
    }

    @Test
    void theSkirtOfAStrongLineHoldsNoLines() {
        double[] samples = tones(noise(new Random(47), (int) (20 * RATE_HZ), 1e-4), new Tone(80.123, 10, 0));
        assertThat(look(samples).lines()).hasSize(1);
    }
}
