package evenblade.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The series of the blades' pulses against the pulses themselves. */
class BladePulsesTest {
    private static final Machine MACHINE = Machine.random(3, Machine.Cycle.FOUR_STROKE, 4, Machine.Drive.TEETH, 3);

    @Test
    void theLinesAddUpToThePulses() {
        double[] strength = {1, 0.8, 1.1};
        double[] late = {0, 0.01, -0.005};
        double width = 0.025;
        BladePulses pulses = BladePulses.of(MACHINE, 0.2, width, strength, late);
        for (double turn = 0; turn < 1; turn += 0.013) {
            double sum = 0;
            for (int k = 1; k <= pulses.highestOrder(); k++) {
                Phasor z = pulses.line(k);
                sum += z.re() * Math.cos(2 * Math.PI * k * turn) - z.im() * Math.sin(2 * Math.PI * k * turn);
            }
            double expected = 0;
            for (int b = 0; b < 3; b++) {
                for (int around = -2; around <= 2; around++) {
                    double u = (turn - b / 3.0 - late[b] + around) / width;
                    expected -= 0.2 * strength[b] * u * Math.exp(0.5 - u * u / 2); // slope of a Gaussian, peak 0.2
                }
            }
            assertEquals(expected, sum, 0.2 * 5e-3); // the series is cut where a line has fallen to exp(−8)·k
        }
    }

    @Test
    void equalBladesSoundOnlyAtBladePass() {
        BladePulses equal = BladePulses.of(MACHINE, 0.2, 0.02, new double[] {1, 1, 1}, new double[3]);
        assertEquals(0, equal.line(1).amplitude(), 1e-12);
        assertEquals(0, equal.line(4).amplitude(), 1e-12);
        BladePulses one = BladePulses.of(MACHINE, 0.2, 0.02, new double[] {1, 0, 0}, new double[3]);
        assertEquals(3 * one.line(3).amplitude(), equal.line(3).amplitude(), 1e-12);
    }
}
