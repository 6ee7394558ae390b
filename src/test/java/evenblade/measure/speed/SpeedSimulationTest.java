package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.input.recording.Recording;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
                if (trial.found().confirmed()) {
                    ofMachine = Math.max(ofMachine, Math.abs(trial.error()));
                } else {
                    unconfirmed++;
                }
            }
            say("20 dB, wander 1 %%: %-42s worst %.5f %%", machine.name(), 100 * ofMachine);
            worst = Math.max(worst, ofMachine);
        }
        say("20 dB, wander 1 %%: %d trials, worst %.5f %%, not confirmed %d", trials, 100 * worst, unconfirmed);
        assertThat(worst).isLessThan(0.0005);
        // 10 on 2026-11-30: six beat as beside a second engine, four fit another blade count. Two standard errors are
        // six.
        assertThat(unconfirmed).isLessThanOrEqualTo(16);
    }

    /**
     * Doubts that a weak run deserves: of some of these machines hardly more than one line stands then, or one shaft's. Another
     * speed, ratio or blade count would be untrue.
     */
    private static final Set<SpeedDoubt> HONEST = EnumSet.of(
            SpeedDoubt.NOTHING_STANDS,
            SpeedDoubt.ONE_LINE,
            SpeedDoubt.TWO_LINES,
            SpeedDoubt.ONE_SERIES,
            SpeedDoubt.ONE_SHAFT,
            SpeedDoubt.CHANCE);

    /**
     * @param aboveNoiseDb of the strongest line over the noise of the whole band
     * @param mostUnconfirmed share of runs that may stay unconfirmed, each for an honest doubt: 4.8 % and 1.5 % when this was
     *     measured, whose share scatters by 0.7 % and 0.4 %, and three times that
     */
    @ParameterizedTest
    @CsvSource({"-5, 0.07", "5, 0.027"})
    void theErrorAtConstantSpeedIsNearTheBound(double aboveNoiseDb, double mostUnconfirmed) {
        int gross = 0;
        int unconfirmed = 0;
        double sumOfScores = 0;
        double sumOfSquares = 0;
        int trials = 0;
        double worst = 0;
        for (Machine machine : Machine.ALL) {
            double ofMachine = 0;
            int confirmed = 0;
            for (int seed = 0; seed < PER_MACHINE; seed++) {
                Trial trial = Trial.of(machine, aboveNoiseDb, 0, 15, seed);
                trials++;
                if (!trial.found().confirmed()) {
                    unconfirmed++;
                    assertThat(trial.found().doubtful())
                            .as("%s, seed %d", machine.name(), seed)
                            .allMatch(dwell -> HONEST.contains(dwell.doubt()));
                    continue;
                }
                confirmed++;
                gross += Math.abs(trial.error()) > 0.01 ? 1 : 0;
                double off = trial.dwell().propellerHz() - trial.trueHz();
                double square = Math.pow(off / trial.boundHz(), 2);
                ofMachine += square;
                sumOfSquares += square;
                sumOfScores += Math.pow(off / trial.dwell().standardErrorHz(), 2);
                worst = Math.max(worst, Math.abs(trial.error()));
            }
            say(
                    "%.0f dB, constant: %-42s RMS error over bound %.3f, not confirmed %d",
                    aboveNoiseDb, machine.name(), Math.sqrt(ofMachine / confirmed), PER_MACHINE - confirmed);
        }
        int n = trials - unconfirmed;
        double rms = Math.sqrt(sumOfSquares / n);
        say(
                "%.0f dB, constant: %d trials, RMS error over bound %.3f, over stated error %.3f, worst %.5f %%,"
                        + " gross %d, not confirmed %d",
                aboveNoiseDb, trials, rms, Math.sqrt(sumOfScores / n), 100 * worst, gross, unconfirmed);
        assertThat(gross).isZero();
        assertThat(unconfirmed).isLessThanOrEqualTo((int) (mostUnconfirmed * trials));
        // 1.13 and 1.12 when this was measured; a root mean square of a thousand scatters by 0.025.
        assertThat(rms).isLessThanOrEqualTo(1.2);
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
