package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.TimeBase;
import org.junit.jupiter.api.Test;

/** A track through knots of turns and speed is Hermite's cubic: it gives any cubic back exactly. */
class KnotTrackTest {
    private static final double ROUNDING = 1e-9;

    private static double turns(double t) {
        return 1 + 20 * t + 3 * t * t - 0.5 * t * t * t;
    }

    private static double speed(double t) {
        return 20 + 6 * t - 1.5 * t * t;
    }

    private static KnotTrack cubic() {
        double[] time = {0, 0.7, 2.0, 2.4};
        double[] revolutions = new double[time.length];
        double[] hz = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            revolutions[i] = turns(time[i]);
            hz[i] = speed(time[i]);
        }
        return new KnotTrack(time, revolutions, hz, 0, 2.4);
    }

    @Test
    void betweenKnotsTurnsAndSpeedOfACubicAreExact() {
        KnotTrack track = cubic();
        for (double t = 0; t <= 2.4; t += 0.05) {
            assertThat(track.revolutionsAt(t)).isCloseTo(turns(t), within(ROUNDING));
            assertThat(track.propellerHzAt(t)).isCloseTo(speed(t), within(ROUNDING));
        }
    }

    @Test
    void beyondTheKnotsTheSpeedStays() {
        KnotTrack track = cubic();
        assertThat(track.propellerHzAt(-1)).isEqualTo(20);
        assertThat(track.revolutionsAt(-0.5)).isCloseTo(1 - 10, within(ROUNDING));
        assertThat(track.propellerHzAt(9)).isCloseTo(speed(2.4), within(ROUNDING));
        assertThat(track.revolutionsAt(3.4)).isCloseTo(turns(2.4) + speed(2.4), within(ROUNDING));
    }

    /** 20 Hz rising by 3 Hz a second, counted from 0.2 s on: the turns are its integral. */
    @Test
    void speedsThatRunStraightAddUpToTheirIntegral() {
        double[] time = {0.5, 1.0, 2.5};
        double[] hz = {21.5, 23.0, 27.5};
        KnotTrack track = KnotTrack.ofSpeeds(time, hz, 0.2, 2.5);
        double before = 21.5 * 0.3;
        for (double t = 0.5; t <= 2.5; t += 0.25) {
            double integral = 20 * (t - 0.5) + 1.5 * (t * t - 0.25);
            assertThat(track.revolutionsAt(t)).isCloseTo(before + integral, within(ROUNDING));
            assertThat(track.propellerHzAt(t)).isCloseTo(20 + 3 * t, within(ROUNDING));
        }
        assertThat(track.revolutionsAt(0.3)).isCloseTo(before - 21.5 * 0.2, within(ROUNDING));
        assertThat(KnotTrack.constant(25, 1, 3).revolutionsAt(2)).isCloseTo(25, within(ROUNDING));
    }

    /** 20 Hz rising by 3 Hz a second at 1000 samples a second: the angle of order k after t seconds is 2πk(20t + 1.5t²). */
    @Test
    void wavesOnAnEvenClockKeepTheAngleOfATrackThatRises() {
        double[] orders = {1, 2.37, 3};
        KnotTrack track = KnotTrack.ofSpeeds(new double[] {0, 1}, new double[] {20, 23}, 0, 1);
        int count = 300;
        int first = 150;
        double[][] cos = new double[orders.length][count];
        double[][] sin = new double[orders.length][count];
        new OrderWaves(track, new TimeBase.Even(0, 1000, 1000), orders).fill(first, count, cos, sin);
        for (int k = 0; k < orders.length; k++) {
            for (int i = 0; i < count; i++) {
                double t = (first + i) / 1000.0;
                double angle = 2 * Math.PI * orders[k] * (20 * t + 1.5 * t * t);
                assertThat(cos[k][i]).isCloseTo(Math.cos(angle), within(ROUNDING));
                assertThat(sin[k][i]).isCloseTo(Math.sin(angle), within(ROUNDING));
            }
        }
    }

    /** 33 turns a second are 1980 a minute. */
    @Test
    void aDwellHasItsLengthAndItsSpeedAMinute() {
        Dwell dwell = new Dwell(3, 15, 33, 0.01, 32, 34);
        assertThat(dwell.durationS()).isEqualTo(12);
        assertThat(dwell.propellerRpm()).isEqualTo(1980);
    }
}
