package evenblade.rig;

import java.util.ArrayList;
import java.util.List;

/**
 * Firing pulses, cylinder by cylinder. Cylinder c fires at crank turn θ_c; the line of crank order m has the amplitude
 * a_m·Σ_c s_c(t)·exp(−j2πmθ_c), s_c the strength of the cylinder in this cycle. With equal strengths only multiples of
 * the firing order are left. Strengths differ a little for good (spread), more where a cylinder is weak, and from cycle
 * to cycle (variation; a coefficient of 2–10 % is usual for spark engines at part load: from memory).
 */
final class Combustion implements LineSource {
    private final Machine machine;
    private final double[] strength;
    private final double variation;
    private final Pulse pulse;
    private final int highestLine;

    /** Amplitude of line m (crank order) of ONE cylinder at an engine rpm. */
    interface Pulse {
        Phasor at(double order, double engineRpm, Axis axis);
    }

    Combustion(Machine machine, double[] strength, double variation, Pulse pulse, int highestLine) {
        this.machine = machine;
        this.strength = strength.clone();
        this.variation = variation;
        this.pulse = pulse;
        this.highestLine = highestLine;
    }

    /** Σ_c s_c·exp(−j2πmθ_c) of the mean strengths. */
    Phasor cylinderSum(double order) {
        Phasor sum = Phasor.ZERO;
        for (int c = 0; c < strength.length; c++) {
            sum = sum.plus(Phasor.polar(strength[c], -2 * Math.PI * order * fires(c)));
        }
        return sum;
    }

    private double fires(int cylinder) {
        return (double) cylinder * machine.cycle().turnsPerCycle / machine.cylinders();
    }

    @Override
    public List<Line> lines(SpeedTrack track, Dice dice) {
        int cylinders = strength.length;
        double[][] s = new double[cylinders][];
        for (int c = 0; c < cylinders; c++) {
            s[c] = strengths(track, c, dice.fork(c));
        }
        List<Line> lines = new ArrayList<>();
        for (int k = 1; k <= highestLine; k++) {
            double order = (double) k / machine.cycle().turnsPerCycle;
            double[] re = new double[track.points()];
            double[] im = new double[track.points()];
            for (int c = 0; c < cylinders; c++) {
                double cos = Math.cos(2 * Math.PI * order * fires(c));
                double sin = -Math.sin(2 * Math.PI * order * fires(c));
                for (int i = 0; i < re.length; i++) {
                    re[i] += s[c][i] * cos;
                    im[i] += s[c][i] * sin;
                }
            }
            lines.add(new Line(new LineId(Shaft.CRANK, order), (rpm, axis) -> pulse.at(order, rpm, axis), re, im));
        }
        return lines;
    }

    private double[] strengths(SpeedTrack track, int cylinder, Dice dice) {
        double[] s = new double[track.points()];
        double now = dice.normal();
        double next = dice.normal();
        double cycle = Math.floor(cycles(track, 0, cylinder));
        for (int i = 0; i < s.length; i++) {
            double place = cycles(track, i, cylinder);
            while (place >= cycle + 1) {
                cycle++;
                now = next;
                next = dice.normal();
            }
            double part = place - cycle;
            s[i] = strength[cylinder] * (1 + variation * (now * (1 - part) + next * part));
        }
        return s;
    }

    private double cycles(SpeedTrack track, int point, int cylinder) {
        return (track.turns(Shaft.CRANK, point * SpeedTrack.STEP_S) - fires(cylinder)) / machine.cycle().turnsPerCycle;
    }
}
