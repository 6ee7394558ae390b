package evenblade.rig;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Sound of a propeller as one pulse for each blade that goes by: blade b passes at the turn b/B + late_b with strength s_b.
 * The pulse is the slope of a Gaussian of width w (share of a turn, standard deviation), so line k of the shaft is
 *
 * <p>c_k = j·scale·2√(2π)·w·2πkw·exp(½ − (2πkw)²/2)·Σ_b s_b·exp(−j2πk(b/B + late_b)); scale is the peak of a pulse of
 * strength 1. How strength changes with rpm is left out.
 */
public final class BladePulses implements LineSource {
    private final int blades;
    private final double scale;
    private final double width;
    private final double[] strength;
    private final double[] late;
    private final double swing;

    private BladePulses(int blades, double scale, double width, double[] strength, double[] late, double swing) {
        this.blades = blades;
        this.scale = scale;
        this.width = width;
        this.strength = strength;
        this.late = late;
        this.swing = swing;
    }

    /** Strengths scatter by {@code strengthDeviation} (share), angles by {@code angleDeviationDeg} (degrees of the shaft). */
    public static BladePulses random(Machine machine, double strengthDeviation, double angleDeviationDeg, long seed) {
        Dice dice = new Dice(seed).fork(95);
        double[] strength = new double[machine.blades()];
        double[] late = new double[machine.blades()];
        for (int b = 0; b < strength.length; b++) {
            strength[b] = Math.max(0.1, 1 + strengthDeviation * dice.normal());
            late[b] = angleDeviationDeg / 360 * dice.normal();
        }
        return of(machine, dice.logUniform(0.05, 0.3), dice.uniform(0.015, 0.03), strength, late);
    }

    /** Stated strengths and angles (turns, late positive). */
    public static BladePulses of(Machine machine, double scale, double width, double[] strength, double[] lateTurns) {
        return new BladePulses(machine.blades(), scale, width, strength.clone(), lateTurns.clone(), 0.03);
    }

    /** Pulses whose lines breathe by this deviation (share); 0.03 is set at first. */
    public BladePulses swinging(double deviation) {
        return new BladePulses(blades, scale, width, strength, late, deviation);
    }

    public double strength(int blade) {
        return strength[blade];
    }

    public double lateDeg(int blade) {
        return late[blade] * 360;
    }

    /** Highest line worth making: the pulse's series has fallen to exp(−8). */
    public int highestOrder() {
        return (int) Math.ceil(4 / (2 * Math.PI * width));
    }

    /** Complex amplitude of line k, turns counted from the mark. */
    public Phasor line(int k) {
        Phasor sum = Phasor.ZERO;
        for (int b = 0; b < blades; b++) {
            sum = sum.plus(Phasor.polar(strength[b], -2 * Math.PI * k * ((double) b / blades + late[b])));
        }
        // Gaussian exp(−u²/2w²) has c_k = 2·√(2π)·w·exp(−(2πkw)²/2); its slope times w·e^½ (peak 1) is that times
        // j2πk·w·e^½.
        double size = 2
                * Math.sqrt(2 * Math.PI)
                * width
                * Math.exp(-Math.pow(2 * Math.PI * k * width, 2) / 2)
                * 2
                * Math.PI
                * k
                * width
                * Math.exp(0.5);
        return sum.times(new Phasor(0, scale * size));
    }

    /** Strengths and angles for the truth record. */
    public Map<String, Object> facts() {
        Map<String, Object> facts = new LinkedHashMap<>();
        List<Double> strengths = new ArrayList<>();
        List<Double> angles = new ArrayList<>();
        for (int b = 0; b < blades; b++) {
            strengths.add(strength[b]);
            angles.add(late[b] * 360);
        }
        facts.put("bladeStrength", strengths);
        facts.put("bladeLateDeg", angles);
        facts.put("pulseWidthTurns", width);
        return facts;
    }

    @Override
    public List<Line> lines(SpeedTrack track, Dice dice) {
        List<Line> lines = new ArrayList<>();
        double[] common = Wander.bounded(track.points(), SpeedTrack.STEP_S, 0.3, swing, dice.fork(0));
        for (int i = 0; i < common.length; i++) {
            common[i] += 1;
        }
        for (int k = 1; k <= highestOrder(); k++) {
            Phasor z = line(k);
            lines.add(new Line(new LineId(Shaft.PROPELLER, k), (rpm, axis) -> z, common, new double[common.length]));
        }
        return lines;
    }
}
