package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.numeric.Phasor;
import evenblade.input.recording.Recording;
import evenblade.input.recording.TimeBase;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SyntheticRunTest {
    private static final SpeedProfile WANDERING = SpeedProfile.steady(33, 30).wandering(0.01, 11);

    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 2.43, 3, 4.86})
    void eachLineIsInTheSamplesWithItsAmplitudeAndPhase(double order) {
        SyntheticRun run = SyntheticRun.at(WANDERING)
                .withLine(1, 0.5, 20)
                .withLine(2, 0.1, 200)
                .withLine(2.43, 2, 310)
                .withLine(3, 1, 75)
                .withLine(4.86, 0.7, 5);
        TimeBase time = run.evenClock(2000);

        Phasor found = Projection.of(run.samples(time), time, WANDERING, order, 2, 28);

        Phasor truth = run.truth(order, 2, 28);
        assertThat(found.re()).isCloseTo(truth.re(), smallLeak());
        assertThat(found.im()).isCloseTo(truth.im(), smallLeak());
    }

    @Test
    void jitteredStampsSeeTheSameLineAtTheTrueTimes() {
        SyntheticRun run = SyntheticRun.at(WANDERING).withLine(4.5, 1, 40);
        TimeBase time = JitteredClock.jittered(416, 30, 0.4e-3, 0.01, 5);

        Phasor found = Projection.of(run.samples(time), time, WANDERING, 4.5, 1, 29);

        // Lost rows make the mean uneven: a hundredth of them is worth a few parts in a thousand.
        assertThat(found.magnitude()).isCloseTo(1, within(0.01));
        assertThat(found.degrees()).isCloseTo(40, within(0.7));
    }

    @Test
    void linesAtOneOrderAddAsVectors() {
        SyntheticRun run =
                SyntheticRun.at(WANDERING).withLine(3, 3, 0).withLine(3, 4, 90).withLine(1, 9, 0);
        assertThat(run.truth(3, 0, 30).magnitude()).isCloseTo(5, within(1e-12));
    }

    @Test
    void sameSeedSameSamplesOtherSeedOtherNoise() {
        SyntheticRun run = SyntheticRun.at(WANDERING).withLine(1, 1, 0).withNoise(0.1);
        TimeBase time = run.evenClock(1000);
        assertThat(run.withSeed(4).samples(time)).isEqualTo(run.withSeed(4).samples(time));
        assertThat(run.withSeed(4).samples(time)).isNotEqualTo(run.withSeed(5).samples(time));
    }

    @Test
    void theStrongestLineStandsOverTheNoiseAsAskedFor() {
        SyntheticRun run =
                SyntheticRun.at(WANDERING).withLine(1, 1, 0).withLine(3, 4, 0).withStrongestLineAbove(20);
        // A²/(2σ²) = 100 with A = 4.
        assertThat(run.noise().whiteRms()).isCloseTo(Math.sqrt(16.0 / 200), within(1e-12));
        double[] noise =
                SyntheticRun.at(WANDERING).withNoise(run.noise()).withSeed(2).samples(run.evenClock(1000));
        double squares = 0;
        for (double value : noise) {
            squares += value * value;
        }
        // 30,000 samples: the variance scatters by √(2/30000) = 0.8 %, the deviation by half of it.
        assertThat(Math.sqrt(squares / noise.length))
                .isCloseTo(run.noise().whiteRms(), within(0.015 * run.noise().whiteRms()));
    }

    @Test
    void lowNoiseHasItsShareAndFallsWithFrequency() {
        double[] noise = SyntheticRun.at(SpeedProfile.steady(30, 200))
                .withNoise(new Noise(0, 1))
                .withSeed(9)
                .samples(new TimeBase.Even(0, 1000, 200_000));
        double whole = 0;
        double steps = 0;
        for (int i = 1; i < noise.length; i++) {
            whole += noise[i] * noise[i] / noise.length;
            steps += (noise[i] - noise[i - 1]) * (noise[i] - noise[i - 1]) / noise.length;
        }
        assertThat(Math.sqrt(whole)).isCloseTo(1, within(0.15));
        // White noise would step by √2 of its own size.
        assertThat(Math.sqrt(steps)).isLessThan(0.8);
    }

    @Test
    void aRecordingInMemoryHasOneValuePerStamp() {
        Recording recording = SyntheticRun.at(WANDERING).withLine(1, 1, 0).recording(1000);
        assertThat(recording.time().size()).isEqualTo(30_000);
        assertThat(recording.channels())
                .singleElement()
                .satisfies(channel -> assertThat(channel.values().size()).isEqualTo(30_000));
        assertThat(recording.quality().get(0).rms()).isCloseTo(Math.sqrt(0.5), within(0.01));
    }

    /**
     * Corner from the datasheet INMP441 (flat from 60 Hz on); losses computed from the definition and kept to
     * as many places as the list of check values gives. 33.3 Hz there is 2000 rpm.
     */
    @ParameterizedTest
    @CsvSource({
        "60, 2000, -6.27, 0.005",
        "60, 2400, -5.12, 0.005",
        "60, 6000, -1.34, 0.005",
        "100, 2000, -10.0, 0.05",
        "100, 2400, -8.6, 0.05",
        "100, 6000, -3.01, 0.005"
    })
    void aMicrophoneLosesLowTonesAsAFirstOrderHighPass(double cornerHz, double rpm, double lossDb, double rounding) {
        Line heard = Line.of(1, 1, 0).through(LaptopMicrophone.highPass(cornerHz));
        assertThat(20 * Math.log10(heard.law().at(rpm / 60).magnitude())).isCloseTo(lossDb, within(rounding));
    }

    /** A Hann-weighted mean over 26 s leaks less than this from lines 13 Hz away. */
    private static Offset<Double> smallLeak() {
        return within(1e-4);
    }
}
