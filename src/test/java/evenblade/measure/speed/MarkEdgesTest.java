package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Recording;
import evenblade.input.recording.TimeBase;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/**
 * Marks of roofs with a flat top: up in 0.015 s, level as long, down as long. Half the height of the first slope lies
 * where it should, whatever the samples' places, since the slope is straight and the top is as high everywhere.
 */
class MarkEdgesTest {
    private static final double RATE_HZ = 200;
    private static final double SLOPE_S = 0.015;
    private static final double ROUNDING = 1e-9;

    /** Half the height of the way up at each time. */
    private static DoubleUnaryOperator roofs(double height, double... at) {
        return t -> {
            double most = 0;
            for (double each : at) {
                most = Math.max(most, Math.min(1, Math.min(0.5 + (t - each) / SLOPE_S, 2.5 - (t - each) / SLOPE_S)));
            }
            return height * most;
        };
    }

    /** From a time on, a step apart. */
    private static double[] every(double from, double step, int count) {
        return DoubleStream.iterate(from, t -> t + step).limit(count).toArray();
    }

    private static MarkPulseTimes read(double seconds, DoubleUnaryOperator value) {
        Recording run = Drawn.recording(RATE_HZ, seconds, value);
        return MarkPulseTimes.of(run.time(), run.channels().get(0).values());
    }

    private static double[] times(MarkPulseTimes pulses) {
        return pulses.timeS().stream().mapToDouble(x -> x).toArray();
    }

    /** Upwards and downwards, from a level of 10 as well, and between the samples. */
    @Test
    void pulsesAreTimedWhateverLevelTheyStandOn() {
        double[] at = every(0.3337, 0.3719, 20);
        for (double height : new double[] {2, -2}) {
            for (double level : new double[] {0, 10, -10}) {
                DoubleUnaryOperator roofs = roofs(height, at);
                MarkPulseTimes pulses = read(8, t -> level + roofs.applyAsDouble(t));
                assertThat(times(pulses)).containsExactly(at, within(ROUNDING));
            }
        }
    }

    /** Three quarters of a channel stray by no more than a: there is a mark from 4 times the 2a between its quarters on. */
    @Test
    void aMarkStandsOverTheChannelsUsualStray() {
        double[] at = every(0.3337, 0.5719, 12);
        for (double stray : new double[] {0.11, 0.14}) {
            DoubleUnaryOperator roofs = roofs(1, at);
            double[] rough = {-stray, 0, stray};
            MarkPulseTimes pulses = read(8, t -> {
                double pulse = roofs.applyAsDouble(t);
                return pulse > 0 ? pulse : rough[(int) Math.rint(t * RATE_HZ) % 3];
            });
            assertThat(pulses.usable()).as("stray %s", stray).isEqualTo(stray < 0.125);
        }
    }

    /** Pulses of 4 for 4 s and then of 1: half of four is more than the later ones reach, half of one is known a second on. */
    @Test
    void heightIsThatOfTheSecondsAround() {
        DoubleUnaryOperator high = roofs(4, every(0.2, 0.4, 9));
        double[] later = every(3.8, 0.4, 10);
        DoubleUnaryOperator low = roofs(1, later);
        MarkPulseTimes pulses = read(8, t -> high.applyAsDouble(t) + low.applyAsDouble(t));
        // One-second windows look half a second beyond their ends: that from 4 s on doesn't see the last high one, 3.4
        // s.
        double[] seen = DoubleStream.concat(
                        Arrays.stream(every(0.2, 0.4, 9)), Arrays.stream(later).skip(1))
                .toArray();
        assertThat(times(pulses)).containsExactly(seen, within(ROUNDING));
    }

    /** A pulse that falls to 0.3 of its height and rises again is one; one that falls to 0.2 is two, of which one is a double. */
    @Test
    void aPulseFiresAgainAfterAQuarterOfItsHeight() {
        double[] at = every(0.3, 0.5, 14);
        for (double dip : new double[] {0.3, 0.2}) {
            DoubleUnaryOperator roofs = roofs(1, at);
            DoubleUnaryOperator dented = t -> {
                double value = roofs.applyAsDouble(t);
                double into = t - 2.3;
                return into > 0.0125 && into < 0.0175 ? dip : value;
            };
            MarkPulseTimes pulses = read(8, dented);
            assertThat(pulses.doubled()).isEqualTo(dip < 0.25 ? 1 : 0);
            assertThat(times(pulses)).containsExactly(at, within(ROUNDING));
        }
    }

    /** From 0.25 s a turn to three times as much within 60 turns: each step is held against those around it. */
    @Test
    void turnsAreCountedWhileTheSpeedFallsToAThird() {
        double[] at = new double[60];
        at[0] = 0.3;
        for (int k = 1; k < at.length; k++) {
            at[k] = at[k - 1] + 0.25 * Math.pow(3, k / 59.0);
        }
        double[] without = Arrays.stream(at)
                .filter(t -> t != at[5] && t != at[30] && t != at[31] && t != at[55])
                .toArray();
        double seconds = at[59] + 1;
        MarkPulseTimes all = read(seconds, roofs(1, at));
        assertThat(all.missing() + all.doubled()).isZero();
        assertThat(times(all)).containsExactly(at, within(ROUNDING));
        MarkPulseTimes some = read(seconds, roofs(1, without));
        assertThat(some.missing()).isEqualTo(4);
        assertThat(some.doubled()).isZero();
        assertThat(some.revolutions()).hasSize(56).endsWith(56, 57, 58, 59).doesNotContain(5, 30, 31, 55);
        // One more, at 0.55 of a step, is a double; at 0.65 it counts.
        double early = at[20] + 0.55 * (at[21] - at[20]);
        double[] doubled =
                DoubleStream.concat(Arrays.stream(at), DoubleStream.of(early)).toArray();
        assertThat(read(seconds, roofs(1, doubled)).doubled()).isEqualTo(1);
    }

    private static Dwell only(SpeedResult result) {
        assertThat(result.dwells()).hasSize(1);
        return result.dwells().get(0);
    }

    private static SpeedResult find(Recording run) {
        return MarkSpeed.find(run, run.channels().get(0), List.of(), null, SpeedPrior.between(1, 9));
    }

    /**
     * 3 turns a second for 12 s. Nothing strays, so that the six readings' worth of what was stated remains: a twentieth of a
     * sample each, over the root of their distances' squares.
     */
    @Test
    void aDwellsErrorIsThatOfALineThroughItsPulses() {
        double[] at = every(4.1, 1 / 3.0, 35);
        Recording run = Drawn.recording(new TimeBase.Even(4, RATE_HZ, 2400), RATE_HZ, roofs(1, at));
        Dwell dwell = only(find(run));
        assertThat(dwell.fromS()).isCloseTo(4, within(ROUNDING));
        assertThat(dwell.toS()).isCloseTo(16, within(ROUNDING));
        assertThat(dwell.propellerHz()).isCloseTo(3, within(1e-8));
        double middle = Arrays.stream(at).average().orElseThrow();
        double squares = Arrays.stream(at).map(t -> (t - middle) * (t - middle)).sum();
        double turns = 0.05 / RATE_HZ * 3;
        double error = turns / Math.sqrt(squares) * Math.sqrt(6.0 / (6 + 35 - 2));
        assertThat(dwell.standardErrorHz()).isCloseTo(error, within(1e-3 * error));
        assertThat(dwell.minHz()).isCloseTo(3, within(1e-8));
        assertThat(dwell.maxHz()).isCloseTo(3, within(1e-8));
    }

    /** 2.5 turns a second for 10 s, then 3: each dwell by its own pulses. */
    @Test
    void eachDwellHasTheSpeedOfItsOwnPulses() {
        double[] at = DoubleStream.concat(
                        Arrays.stream(every(0.2, 0.4, 25)), Arrays.stream(every(9.8 + 1 / 3.0, 1 / 3.0, 30)))
                .toArray();
        Recording run = Drawn.recording(RATE_HZ, 20, roofs(1, at));
        List<Dwell> dwells = find(run).dwells();
        assertThat(dwells).hasSize(2);
        assertThat(dwells.get(0).propellerHz()).isCloseTo(2.5, within(0.002));
        assertThat(dwells.get(1).propellerHz()).isCloseTo(3, within(0.002));
        assertThat(dwells.get(0).fromS()).isZero();
        assertThat(dwells.get(0).toS()).isBetween(9.0, 10.0);
        assertThat(dwells.get(1).fromS()).isBetween(9.7, 11.0);
        assertThat(dwells.get(1).toS()).isCloseTo(20, within(ROUNDING));
    }

    /** 3 turns a second, faster by a hundredth every second: slowest where the dwell begins, fastest where it ends. */
    @Test
    void aDwellsSlowestAndFastestAreThoseOfItsEnds() {
        // 3t + 0.005t² = k + ½: from 0.17 to 11.93 s.
        double[] at = new double[37];
        for (int k = 0; k < at.length; k++) {
            at[k] = (-3 + Math.sqrt(9 + 0.02 * (k + 0.5))) / 0.01;
        }
        Recording run = Drawn.recording(RATE_HZ, 12, roofs(1, at));
        Dwell dwell = only(find(run));
        assertThat(dwell.minHz()).isCloseTo(3, within(0.005));
        assertThat(dwell.maxHz()).isCloseTo(3.12, within(0.005));
        assertThat(dwell.propellerHz()).isCloseTo(3.06, within(1e-3));
    }

    /** 3 turns a second, 1 % faster halfway: 3t + 0.03·(12/π)·(1 − cos(πt/12)) turns, each whole one found by halving. */
    @Test
    void aDwellIsFastestWhereItsPulsesAre() {
        DoubleUnaryOperator turns = t -> 3 * t + 0.36 / Math.PI * (1 - Math.cos(Math.PI * t / 12));
        double[] at = new double[36];
        for (int k = 0; k < at.length; k++) {
            double low = 0;
            double high = 12;
            for (int half = 0; half < 60; half++) {
                double middle = (low + high) / 2;
                if (turns.applyAsDouble(middle) < k + 0.4) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            at[k] = low;
        }
        Dwell dwell = only(find(Drawn.recording(RATE_HZ, 12, roofs(1, at))));
        assertThat(dwell.maxHz()).isCloseTo(3.03, within(0.003));
        assertThat(dwell.minHz()).isCloseTo(3, within(0.005));
    }

    /** As many doubles as missing pulses are two things to tell, not none. */
    @Test
    void aMissingPulseAndADoubleAreBothTold() {
        double[] whole = every(0.2, 1 / 3.0, 35);
        double[] at = DoubleStream.concat(
                        Arrays.stream(whole).filter(t -> t != whole[9]), DoubleStream.of(whole[20] + 0.15))
                .toArray();
        assertThat(find(Drawn.recording(RATE_HZ, 12, roofs(1, at))).warnings())
                .extracting(Warning::code)
                .containsExactly(WarningCode.MARK_REPAIRED);
    }

    /** Pulses of the last 0.6 s, eight of them at steps that grow; the second half from the middle one. */
    @Test
    void theSpeedNowIsReadFromTheLastSixTenthsOfASecond() {
        double[] at = {2.05, 2.25, 2.45, 2.65, 2.85, 3.07, 3.30, 3.55};
        Recording run = Drawn.recording(new TimeBase.Even(2, RATE_HZ, 350), RATE_HZ, roofs(1, at));
        SpeedNow now = MarkSpeed.now(run, run.channels().get(0)).orElseThrow();
        // From 2.85 s, 0.7 s before the last: 3 turns; of them the last two take 0.48 s.
        assertThat(now.fromS()).isCloseTo(2.85, within(ROUNDING));
        assertThat(now.toS()).isCloseTo(3.55, within(ROUNDING));
        assertThat(now.propellerHz()).isCloseTo(3 / 0.7, within(1e-7));
        double bend = Math.abs(2 / 0.48 - 3 / 0.7);
        double pulse = 3 / 0.7 * 0.1 / RATE_HZ / 0.7;
        assertThat(now.plusMinusHz()).isCloseTo(pulse + 2 * bend, within(1e-6));
    }
}
