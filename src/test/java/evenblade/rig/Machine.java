package evenblade.rig;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * An invented engine with drive and propeller. {@code ratio} is what the wheels really do (engine turns per propeller
 * turn); {@code enteredRatio} is what the owner typed where no teeth are entered (often rounded).
 */
public record Machine(
        String name,
        Cycle cycle,
        int cylinders,
        double idleRpm,
        double maxRpm,
        Drive drive,
        double ratio,
        int drivingTeeth,
        int drivenTeeth,
        double enteredRatio,
        int blades,
        double diameterM,
        boolean clockwise) {

    /** Working cycle: how many crank turns lie between two firings of one cylinder. */
    public enum Cycle {
        TWO_STROKE("two-stroke", 1),
        FOUR_STROKE("four-stroke", 2),
        ELECTRIC("electric", 1);

        final String key;
        final int turnsPerCycle;

        Cycle(String key, int turnsPerCycle) {
            this.key = key;
            this.turnsPerCycle = turnsPerCycle;
        }
    }

    /** How the installation states its drive. */
    public enum Drive {
        TEETH,
        DECIMALS,
        BELT_TEETH,
        BELT_DECIMALS,
        DIRECT;

        boolean belt() {
            return this == BELT_TEETH || this == BELT_DECIMALS;
        }
    }

    /** Firings per crank turn; 0 for an electric motor. */
    public double firingOrder() {
        return cycle == Cycle.ELECTRIC ? 0 : (double) cylinders / cycle.turnsPerCycle;
    }

    /** Any machine of the trade, by chance. */
    public static Machine random(long seed) {
        Dice dice = new Dice(seed).fork(11);
        Cycle cycle = dice.pick(
                List.of(Cycle.FOUR_STROKE, Cycle.FOUR_STROKE, Cycle.FOUR_STROKE, Cycle.TWO_STROKE, Cycle.TWO_STROKE));
        Drive drive = dice.pick(List.of(
                Drive.TEETH,
                Drive.TEETH,
                Drive.TEETH,
                Drive.DECIMALS,
                Drive.DECIMALS,
                Drive.BELT_TEETH,
                Drive.BELT_DECIMALS,
                Drive.DIRECT));
        int cylinders =
                cycle == Cycle.TWO_STROKE ? dice.pick(List.of(1, 2, 2, 2, 3)) : dice.pick(List.of(2, 3, 4, 4, 4, 6));
        return random(seed, cycle, cylinders, drive, dice.pick(List.of(2, 2, 3, 3, 3, 4, 5, 6)));
    }

    /** A machine of a stated kind; wheels, speeds and size by chance. */
    public static Machine random(long seed, Cycle cycle, int cylinders, Drive drive, int blades) {
        Dice dice = new Dice(seed).fork(12);
        boolean direct = drive == Drive.DIRECT;
        int driving = direct ? 1 : dice.between(17, 27);
        int driven = direct
                ? 1
                : (int) Math.round(driving
                        * dice.uniform(cycle == Cycle.TWO_STROKE ? 2.0 : 1.6, cycle == Cycle.TWO_STROKE ? 3.7 : 2.9));
        double ratio = (double) driven / driving;
        double entered = Math.round(ratio * 100) / 100.0;
        double idle = direct ? dice.uniform(750, 1000) : dice.uniform(1400, 2200);
        double max = direct ? dice.uniform(2700, 3400) : dice.uniform(5000, 6600);
        double propellerMax = max / ratio / 60;
        double diameter =
                Math.round(dice.uniform(0.65, 0.8) * 340 / (Math.PI * propellerMax) * 100) / 100.0; // tip Mach
        return new Machine(
                "Invented machine " + seed,
                cycle,
                cylinders,
                round(idle, 50),
                round(max, 50),
                drive,
                ratio,
                driving,
                driven,
                entered,
                blades,
                Math.min(2.2, Math.max(1.0, diameter)),
                dice.chance(0.5));
    }

    private static double round(double value, double step) {
        return Math.round(value / step) * step;
    }

    /** The same machine with another ratio entered than the wheels make (decimals). */
    public Machine enteredAs(double decimals) {
        Drive told = drive.belt() ? Drive.BELT_DECIMALS : Drive.DECIMALS;
        return new Machine(
                name,
                cycle,
                cylinders,
                idleRpm,
                maxRpm,
                told,
                ratio,
                drivingTeeth,
                drivenTeeth,
                decimals,
                blades,
                diameterM,
                clockwise);
    }

    /** The ratio that a reader of the installation file would work with. */
    public double ratioAsEntered() {
        return drive == Drive.DECIMALS || drive == Drive.BELT_DECIMALS ? enteredRatio : ratio;
    }

    /** The installation file's content. */
    public String installationJson() {
        Map<String, Object> engine = new LinkedHashMap<>();
        engine.put("cycle", cycle.key);
        if (cycle != Cycle.ELECTRIC) {
            engine.put("cylinders", cylinders);
        }
        engine.put("idleRpm", idleRpm);
        engine.put("maxRpm", maxRpm);
        Map<String, Object> reduction = new LinkedHashMap<>();
        switch (drive) {
            case TEETH, BELT_TEETH -> {
                reduction.put("drivingTeeth", drivingTeeth);
                reduction.put("drivenTeeth", drivenTeeth);
                reduction.put("kind", drive.belt() ? "belt" : "gear");
            }
            case DECIMALS -> reduction.put("ratio", enteredRatio);
            case BELT_DECIMALS -> {
                reduction.put("ratio", enteredRatio);
                reduction.put("kind", "belt");
            }
            case DIRECT -> {
                reduction.put("ratio", 1.0);
                reduction.put("kind", "direct");
            }
        }
        Map<String, Object> propeller = new LinkedHashMap<>();
        propeller.put("blades", blades);
        propeller.put("diameter", String.format(java.util.Locale.ROOT, "%.2f m", diameterM));
        propeller.put("rotation", clockwise ? "clockwise" : "counter-clockwise");
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("name", name);
        all.put("engine", engine);
        all.put("reduction", reduction);
        all.put("propeller", propeller);
        return Json.write(all);
    }
}
