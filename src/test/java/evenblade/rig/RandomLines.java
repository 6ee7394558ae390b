package evenblade.rig;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Lines of a machine with sizes by chance: blade pass and its multiples strong, the other propeller orders weaker,
 * firing pulses, crank 1× and 2× of unbalance. Each rises with a power of speed, 1× with about the square.
 * Accelerations in m/s² peak at maximum rpm; sound as share of full scale.
 */
final class RandomLines implements LineSource {
    private record Law(Phasor atMax, double power) {
        Phasor at(double share) {
            return atMax.times(Math.pow(share, power));
        }
    }

    private final Machine machine;
    private final List<LineId> ids = new ArrayList<>();
    private final List<Map<Axis, Law>> laws = new ArrayList<>();
    private final Map<Axis, List<Law>> pulses = new EnumMap<>(Axis.class);
    private final Combustion combustion;
    private final double swing;
    private final double memoryS;

    /** Swing by chance: deviation 1–8 %, memory 0.3–2 s. */
    RandomLines(Machine machine, long seed) {
        this(
                machine,
                seed,
                new Dice(seed).fork(32).uniform(0.01, 0.08),
                new Dice(seed).fork(33).logUniform(0.3, 2));
    }

    RandomLines(Machine machine, long seed, double swing, double memoryS) {
        this.machine = machine;
        this.swing = swing;
        this.memoryS = memoryS;
        Dice dice = new Dice(seed).fork(31);
        int blades = machine.blades();
        double unlike = dice.logUniform(0.08, 0.8); // how unlike the blades are, against blade pass
        for (int k = 1; k <= 4 * blades; k++) {
            boolean pass = k % blades == 0;
            double size = (pass ? 1 : unlike * (k == 1 ? 1 : 0.5)) * Math.pow(pass ? k / (double) blades : k, -0.8);
            double power = k == 1 ? 2 : dice.uniform(1, 2.5);
            add(
                    new LineId(Shaft.PROPELLER, k),
                    size * dice.logUniform(1, 3),
                    size * dice.logUniform(0.02, 0.06),
                    power,
                    dice);
        }
        add(new LineId(Shaft.CRANK, 1), dice.logUniform(0.1, 1), dice.logUniform(0.001, 0.01), 2, dice);
        add(new LineId(Shaft.CRANK, 2), dice.logUniform(0.1, 1), dice.logUniform(0.001, 0.01), 2, dice);
        this.combustion = machine.cycle() == Machine.Cycle.ELECTRIC ? null : combustion(dice);
    }

    private void add(LineId id, double acceleration, double sound, double power, Dice dice) {
        Map<Axis, Law> byAxis = new EnumMap<>(Axis.class);
        for (Axis axis : Axis.values()) {
            double size = axis == Axis.SOUND ? sound : acceleration * dice.logUniform(0.4, 1.6);
            byAxis.put(axis, new Law(Phasor.polar(size, dice.angle()), power));
        }
        ids.add(id);
        laws.add(byAxis);
    }

    private Combustion combustion(Dice dice) {
        int cylinders = machine.cylinders();
        double[] strength = new double[cylinders];
        double spread = dice.uniform(0.01, 0.06);
        for (int c = 0; c < cylinders; c++) {
            strength[c] = 1 + spread * dice.normal();
        }
        double firing = machine.firingOrder();
        int highest = (int) Math.round(3 * firing * machine.cycle().turnsPerCycle);
        double acceleration = dice.logUniform(1, 5) / cylinders;
        double sound = dice.logUniform(0.02, 0.08) / cylinders;
        double fall = dice.uniform(0.5, 1.2);
        for (Axis axis : Axis.values()) {
            List<Law> list = new ArrayList<>();
            double size = axis == Axis.SOUND ? sound : acceleration * dice.logUniform(0.5, 1.5);
            for (int k = 1; k <= highest; k++) {
                double relative = (double) k / machine.cycle().turnsPerCycle / firing;
                list.add(new Law(Phasor.polar(size * Math.pow(Math.max(relative, 0.5), -fall), dice.angle()), 1));
            }
            pulses.put(axis, list);
        }
        return new Combustion(machine, strength, dice.uniform(0.02, 0.1), this::pulse, highest);
    }

    private Phasor pulse(double order, double engineRpm, Axis axis) {
        int k = (int) Math.round(order * machine.cycle().turnsPerCycle);
        return pulses.get(axis).get(k - 1).at(engineRpm / machine.maxRpm());
    }

    @Override
    public List<Line> lines(SpeedTrack track, Dice dice) {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < ids.size(); i++) {
            Map<Axis, Law> byAxis = laws.get(i);
            Line.Response response = (rpm, axis) -> byAxis.get(axis).at(rpm / machine.maxRpm());
            lines.add(Line.swinging(ids.get(i), response, track, swing, memoryS, dice.fork(100 + i)));
        }
        if (combustion != null) {
            lines.addAll(combustion.lines(track, dice.fork(99)));
        }
        return lines;
    }
}
