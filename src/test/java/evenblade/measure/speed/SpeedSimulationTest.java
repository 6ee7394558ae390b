package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.input.recording.Recording;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Over a thousand trials of each kind; the figures it prints are kept in docs/figures.md. */
@Tag("long")
class SpeedSimulationTest {
    private static final int PER_MACHINE = 112;

    @Test
    void noGrossErrorAndNoneAboveAHalfPerMilleAtTwentyDecibels() {
        double worst = 0;
        int unconfirmed = 0;
        int trials = 0;
        for (Machine machine : Machine.ALL) {
            double ofMachine = 0;
            for (int seed = 0; seed < PER_MACHINE; seed++) {
                Trial trial = Trial.of(machine, 20, 0.01, 15, seed);
                trials++;
                unconfirmed += trial.found().confirmed() ? 0 : 1;
                ofMachine = Math.max(ofMachine, Math.abs(trial.error()));
            }
            say("20 dB, wander 1 %%: %-42s worst %.5f %%", machine.name(), 100 * ofMachine);
            worst = Math.max(worst, ofMachine);
        }
        say("20 dB, wander 1 %%: %d trials, worst %.5f %%, not confirmed %d", trials, 100 * worst, unconfirmed);
        assertThat(worst).isLessThan(0.0005);
        assertThat(unconfirmed).isZero();
    }

    @Test
    void theErrorAtConstantSpeedIsNearTheBound() {
        for (double aboveNoiseDb : new double[] {-5, 5}) {
            int gross = 0;
            double sumOfScores = 0;
            double sumOfSquares = 0;
            int trials = 0;
            double worst = 0;
            for (Machine machine : Machine.ALL) {
                double ofMachine = 0;
                for (int seed = 0; seed < PER_MACHINE; seed++) {
                    Trial trial = Trial.of(machine, aboveNoiseDb, 0, 15, seed);
                    trials++;
                    boolean wrong = !trial.found().confirmed() || Math.abs(trial.error()) > 0.01;
                    gross += wrong ? 1 : 0;
                    if (!wrong) {
                        double off = trial.dwell().propellerHz() - trial.trueHz();
                        double square = Math.pow(off / trial.boundHz(), 2);
                        ofMachine += square;
                        sumOfSquares += square;
                        sumOfScores += Math.pow(off / trial.dwell().standardErrorHz(), 2);
                        worst = Math.max(worst, Math.abs(trial.error()));
                    }
                }
                say(
                        "%.0f dB, constant: %-42s RMS error over bound %.3f",
                        aboveNoiseDb, machine.name(), Math.sqrt(ofMachine / PER_MACHINE));
            }
            int n = trials - gross;
            double rms = Math.sqrt(sumOfSquares / n);
            say(
                    "%.0f dB, constant: %d trials, RMS error over bound %.3f, over stated error %.3f, worst %.5f %%,"
                            + " gross %d",
                    aboveNoiseDb, trials, rms, Math.sqrt(sumOfScores / n), 100 * worst, gross);
            assertThat(gross).isZero();
            assertThat(rms).isLessThanOrEqualTo(1.3);
        }
    }

    @Test
    void noiseAloneIsConfirmedInAtMostOneRunInAHundred() {
        int confirmed = 0;
        int trials = 0;
        for (Machine machine : Machine.ALL) {
            for (int seed = 0; seed < PER_MACHINE; seed++) {
                Noise noise = seed % 2 == 0 ? Noise.white(1) : new Noise(0.3, 1);
                double seconds = seed % 3 == 0 ? 3 : 12;
                Recording recording = SyntheticRun.at(SpeedProfile.steady(30, seconds))
                        .withNoise(noise)
                        .withSeed(1000L * machine.blades() + seed)
                        .recording(Trial.RATE_HZ);
                double middle = (machine.idleRpm() + machine.maxRpm()) / 2 / 60 / machine.ratio();
                SpeedPrior expectation = seed % 4 == 0
                        ? SpeedPrior.between(
                                machine.idleRpm() / 60 / machine.ratio(), machine.maxRpm() / 60 / machine.ratio())
                        : SpeedPrior.around(middle, 0.05);
                SpeedResult found = SpeedFinder.find(recording, recording.channels(), machine.table(), expectation);
                confirmed += found.confirmed() ? 1 : 0;
                trials++;
            }
        }
        say("noise alone: %d of %d confirmed", confirmed, trials);
        assertThat(confirmed).isLessThanOrEqualTo(trials / 100);
    }

    private static void say(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
