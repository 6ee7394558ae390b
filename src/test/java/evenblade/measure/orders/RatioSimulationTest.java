package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.measure.speed.RatioTrial;
import evenblade.measure.speed.RatioTrial.Entered;
import evenblade.measure.speed.RatioTrial.Visible;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Right and wrong ratios over many trials; the figures it prints are kept in docs/figures.md. */
@Tag("long")
class RatioSimulationTest {
    private static final double[] ABOVE_NOISE_DB = {0, 10, 20, 30};
    private static final double[] WANDER = {0, 0.003, 0.01};

    @Test
    void aRightRatioIsLeftAlone() {
        int fired = 0;
        int trials = 0;
        for (Visible visible : Visible.values()) {
            for (Entered entered : Entered.values()) {
                int here = 0;
                int n = 0;
                int confirmed = 0;
                for (int machine = 0; machine < RatioTrial.machines(); machine++) {
                    for (int seed = 0; seed < 8; seed++) {
                        RatioTrial trial = RatioTrial.of(
                                machine,
                                RatioTrial.ratioOf(machine),
                                false,
                                entered,
                                visible,
                                ABOVE_NOISE_DB[seed % 4],
                                WANDER[seed % 3],
                                seed % 5 == 0 ? 8 : 20,
                                300 + seed);
                        n++;
                        confirmed += trial.confirmed() ? 1 : 0;
                        if (trial.doubt().isPresent()) {
                            here++;
                            say("  false: machine %d seed %d %s %s %s", machine, seed, visible, entered, trial.doubt());
                        }
                    }
                }
                say(
                        "right ratio, %s visible, %s entered: %d of %d doubted, %d confirmed",
                        visible, entered, here, n, confirmed);
                fired += here;
                trials += n;
            }
        }
        say("right ratio: %d of %d doubted", fired, trials);
        assertThat(fired).isLessThan(trials / 100);
    }

    @Test
    void aWrongRatioIsToldInMostCases() {
        int told = 0;
        int named = 0;
        int telling = 0;
        for (String mistake : new String[] {"near", "far", "upside down"}) {
            for (Entered entered : Entered.values()) {
                int toldHere = 0;
                int namedHere = 0;
                int n = 0;
                int silent = 0;
                for (int machine = 0; machine < RatioTrial.machines(); machine++) {
                    double right = RatioTrial.ratioOf(machine);
                    for (int seed = 0; seed < 8; seed++) {
                        Random random = new Random(31L * machine + seed);
                        random.nextDouble();
                        double size = mistake.equals("near")
                                ? 0.02 + 0.1 * random.nextDouble()
                                : 0.15 + 0.35 * random.nextDouble();
                        double wrong = mistake.equals("upside down")
                                ? 1 / right
                                : right * Math.exp(random.nextBoolean() ? size : -size);
                        if (Math.abs(wrong / right - 1) < 0.01) {
                            continue;
                        }
                        RatioTrial trial = RatioTrial.of(
                                machine,
                                wrong,
                                seed % 2 == 0,
                                entered,
                                Visible.BOTH,
                                ABOVE_NOISE_DB[2 + seed % 2],
                                WANDER[seed % 3],
                                20,
                                700 + seed);
                        if (!trial.telling() || !trial.confirmed()) {
                            silent += trial.telling() ? 1 : 0;
                            continue;
                        }
                        n++;
                        toldHere += trial.doubt().isPresent() ? 1 : 0;
                        namedHere += trial.named() ? 1 : 0;
                        if (!trial.named()) {
                            say(
                                    "  machine %d seed %d true %.3f entered %.3f (%s) confirmed %s: %s",
                                    machine,
                                    seed,
                                    right,
                                    trial.enteredRatio(),
                                    entered,
                                    trial.confirmed(),
                                    trial.doubt());
                        }
                    }
                }
                say(
                        "%s, %s entered: %d of %d told, %d named rightly, and %d speeds not confirmed",
                        mistake, entered, toldHere, n, namedHere, silent);
                told += toldHere;
                named += namedHere;
                telling += n;
            }
        }
        say("wrong ratio: %d of %d told, %d named rightly", told, telling, named);
        assertThat(told).isGreaterThan(2 * telling / 3);
    }

    private static void say(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
