package evenblade.judge.balance;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.numeric.Phasor;
import evenblade.judge.balance.BalanceAnswer.Advice;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A thousand invented jobs with phase and a thousand without: runs scatter by 3 to 8 %, lines by 1 %, weights by what is
 * said of them. Figures in docs. A share of 95 % of a thousand scatters by 0.7 %: 93 to 97 % is within three of that.
 */
@Tag("long")
class BalanceSimulationTest {
    /** Of each of five designs; a thousand in all. */
    private static final int JOBS = 200;

    /** What became of many jobs. */
    private static final class Tally {
        int jobs;
        int given;
        int massHeld;
        int angleHeld;
        int predicted;
        int fell;
        int checked;

        void add(InventedMachine machine, List<WeightedReading> runs, boolean phase) {
            jobs++;
            BalanceAnswer answer = Balancing.balance(Runs.request(runs));
            if (answer.refused()) {
                return;
            }
            given++;
            Advice advice = answer.advice().orElseThrow();
            Correction c = advice.correction();
            Phasor truth = machine.heavy.times(-1);
            massHeld += c.lowGmm() <= truth.magnitude() && truth.magnitude() <= c.highGmm() ? 1 : 0;
            double turn = Correction.turn(c.value().angleDeg(), truth.degrees());
            angleHeld += -c.belowDeg() <= turn && turn <= c.aboveDeg() ? 1 : 0;
            Weight put = Weight.of(advice.massG(), Runs.RADIUS_MM, c.value().angleDeg());
            WeightedReading check = machine.read(machine.truly(put), phase, List.of(put));
            predicted += advice.residual().check(check, phase).fits() ? 1 : 0;
            checked += check.amplitude() <= advice.residual().high() ? 1 : 0;
            fell += check.amplitude() < machine.plain() ? 1 : 0;
        }

        double share(int count) {
            return (double) count / given;
        }

        void mustHold() {
            assertThat(share(massHeld)).isBetween(0.93, 0.97);
            assertThat(share(angleHeld)).isBetween(0.93, 0.97);
            assertThat(share(predicted)).isBetween(0.93, 0.97);
            assertThat(fell).isEqualTo(given);
        }

        void print(String name) {
            System.out.printf(
                    Locale.ROOT,
                    "%-34s given %4d of %4d, mass held %.1f %%, angle held %.1f %%, check fits %.1f %%, below high %.1f %%, fell %.1f %%%n",
                    name,
                    given,
                    jobs,
                    100 * share(massHeld),
                    100 * share(angleHeld),
                    100 * share(predicted),
                    100 * share(checked),
                    100 * share(fell));
        }
    }

    /** Trials of 0.3 to 1.5 times the unbalance. */
    private static Tally seen(long seed, boolean phase, int repeats, double... angles) {
        return tally(seed, phase, (machine, random) -> 0.3 + 1.2 * random.nextDouble(), repeats, angles);
    }

    /** Trials that move the line by less than one standard deviation of the difference that is read. */
    private static Tally lost(long seed, boolean phase, int repeats, double... angles) {
        return tally(
                seed,
                phase,
                (machine, random) -> random.nextDouble()
                        * Math.hypot(machine.scatterShare, InventedMachine.LINE_ERROR_SHARE)
                        * Math.sqrt(2.0 / repeats),
                repeats,
                angles);
    }

    /** How heavy a trial is, over the unbalance. */
    private interface TrialShare {
        double of(InventedMachine machine, Random random);
    }

    private static Tally tally(long seed, boolean phase, TrialShare trial, int repeats, double... angles) {
        Random random = new Random(seed);
        Tally tally = new Tally();
        for (int job = 0; job < JOBS; job++) {
            InventedMachine machine = new InventedMachine(random);
            double share = trial.of(machine, random);
            double turn = 360 * random.nextDouble();
            double[] at = new double[angles.length];
            for (int i = 0; i < at.length; i++) {
                at[i] = angles[i] + turn;
            }
            tally.add(machine, machine.job(share, phase, repeats, at), phase);
        }
        tally.print((phase ? "phase" : "no phase") + " x" + repeats + " " + angles.length + " trials");
        return tally;
    }

    private static Tally together(String name, List<Tally> all) {
        Tally sum = new Tally();
        for (Tally tally : all) {
            sum.jobs += tally.jobs;
            sum.given += tally.given;
            sum.massHeld += tally.massHeld;
            sum.angleHeld += tally.angleHeld;
            sum.predicted += tally.predicted;
            sum.checked += tally.checked;
            sum.fell += tally.fell;
        }
        sum.print(name);
        return sum;
    }

    /** One run each, and repeated; one trial and two. */
    @Test
    void withPhaseIntervalsHoldAndTheLineFallsAsPredicted() {
        together(
                        "with phase, together",
                        List.of(
                                seen(1, true, 1, 0),
                                seen(2, true, 2, 0),
                                seen(3, true, 3, 0),
                                seen(4, true, 1, 0, 120),
                                seen(5, true, 2, 0, 90)))
                .mustHold();
    }

    @Test
    void withoutPhaseIntervalsHoldAndTheLineFallsAsPredicted() {
        together(
                        "without phase, together",
                        List.of(
                                seen(6, false, 1, 0, 120, 240),
                                seen(7, false, 2, 0, 120, 240),
                                seen(8, false, 3, 0, 120, 240),
                                seen(9, false, 1, 0, 60, 120, 180, 240, 300),
                                seen(10, false, 2, 0, 100, 200, 290)))
                .mustHold();
    }

    /** The chance for it is set to 1 in 2,000 at most; none is to be expected in 1,000. */
    @Test
    void nothingIsGivenWhereTheTrialIsLostInTheScatter() {
        Tally sum = together(
                "lost in the scatter, together",
                List.of(
                        lost(11, true, 1, 0),
                        lost(12, true, 3, 0),
                        lost(15, true, 2, 0, 120),
                        lost(13, false, 1, 0, 120, 240),
                        lost(14, false, 3, 0, 120, 240)));
        assertThat(sum.given).isZero();
    }
}
