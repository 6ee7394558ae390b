package evenblade.keep.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * A fault with a place and a size of its own.
 *
 * @param fault what is wrong
 * @param place number of the blade, hub position or cylinder, from 1; means nothing for faults that have none
 * @param scale of the usual size of that fault
 */
record Ailment(Fault fault, int place, double scale) {
    /** Around the usual size of each fault: smaller ones might not show, larger ones would be too easy. */
    private static final double LEAST_SCALE = 0.8;

    private static final double MOST_SCALE = 1.6; // invented: from clearly to badly

    private static final double TRACK_M = 0.006; // invented: twice what is accepted in practice
    private static final double MASS_KG = 0.003; // invented: a few grams of a blade of 1.2 kg
    private static final double PITCH_DEG = 1.5; // invented: seen with a protractor
    private static final double RUN_OUT_M = 0.35e-3; // invented: seen with a dial
    private static final double DIAL_RADIUS_M = 0.05; // invented: a flange of 10 cm
    /** What a cylinder of usual weakness lacks; the share that it gives is never below 0. */
    private static final double CYLINDER_LACKS = 0.35;

    private static final double ONE_IN_THREE = 1 / 3.0; // invented
    /** Sizes that seeds go through; all within the range above. */
    private static final double[] SCALES = {LEAST_SCALE, 1, 1.3, MOST_SCALE};

    /**
     * Faults that were asked for, each with place and size by the seed: the next seed takes the next place, and once all
     * places are through, the next size. The second fault takes the place behind the first one's.
     */
    static List<Ailment> of(List<Fault> faults, Machine machine, long seed) {
        List<Ailment> all = new ArrayList<>();
        for (Fault fault : faults) {
            long number = seed + 1 + all.size();
            int places = places(fault, machine);
            int size = (int) Math.floorMod(Math.floorDiv(number, (long) places), (long) SCALES.length);
            all.add(new Ailment(fault, 1 + (int) Math.floorMod(number, (long) places), SCALES[size]));
        }
        return all;
    }

    /** A fault as examples have it: of usual size, at the second blade, the first hub position or the first cylinder. */
    static Ailment usual(Fault fault) {
        boolean first = fault == Fault.FLANGE_RUN_OUT || fault == Fault.WEAK_CYLINDER;
        return new Ailment(fault, first ? 1 : 2, 1);
    }

    private static int places(Fault fault, Machine machine) {
        boolean ofCylinders = fault == Fault.WEAK_CYLINDER && !machine.electric();
        return ofCylinders
                ? machine.drive().cylinderStrength().size()
                : machine.blades().size();
    }

    /** One fault, in one case of three two, that this machine can have; same seed, same faults. */
    static List<Ailment> drawn(Machine machine, long seed) {
        Random random = new Random(Seeds.part(seed, 7));
        List<Fault> left = new ArrayList<>(List.of(
                Fault.MASS_IMBALANCE,
                Fault.BLADE_OUT_OF_TRACK,
                Fault.BLADE_OUT_OF_PITCH,
                Fault.FLANGE_RUN_OUT,
                Fault.LOOSE_MOUNT));
        if (!machine.electric()) {
            left.add(Fault.WEAK_CYLINDER);
        }
        if (machine.installation().reduction().teeth().isPresent()) {
            left.add(Fault.GEAR);
        }
        int count = random.nextDouble() < ONE_IN_THREE ? 2 : 1;
        List<Ailment> drawn = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Fault fault = left.remove(random.nextInt(left.size()));
            drawn.add(new Ailment(
                    fault,
                    1 + random.nextInt(places(fault, machine)),
                    LEAST_SCALE + (MOST_SCALE - LEAST_SCALE) * random.nextDouble()));
        }
        return drawn;
    }

    /** The machine with this put wrong. */
    Machine in(Machine machine) {
        return switch (fault) {
            case MASS_IMBALANCE -> machine.withBlade(place, blade(machine).heavierBy(MASS_KG * scale));
            case BLADE_OUT_OF_TRACK -> machine.withBlade(place, blade(machine).ahead(TRACK_M * scale));
            case BLADE_OUT_OF_PITCH -> machine.withBlade(place, blade(machine).coarser(PITCH_DEG * scale));
            case FLANGE_RUN_OUT ->
                machine.withRunOut(new InventedRunOut(RUN_OUT_M * scale, DIAL_RADIUS_M, machine.angleDeg(place)));
            case WEAK_CYLINDER -> {
                Fault.requireFiring(machine, fault);
                List<Double> strengths = new ArrayList<>(machine.drive().cylinderStrength());
                strengths.set(place - 1, (1 - CYLINDER_LACKS * scale) * strengths.get(place - 1));
                yield machine.withDrive(machine.drive().withCylinders(strengths));
            }
            default -> fault.in(machine);
        };
    }

    /** What is wrong, in numbers, for a machine whose blades sit as they did at first. */
    String words(Machine machine) {
        return switch (fault) {
            case MASS_IMBALANCE ->
                said("blade %s is %.1f g heavy at its centre of gravity", name(machine), 1e3 * MASS_KG);
            case BLADE_OUT_OF_TRACK ->
                said("the tip of blade %s runs %.1f mm ahead of the others", name(machine), 1e3 * TRACK_M);
            case BLADE_OUT_OF_PITCH -> said("blade %s is set %.1f° coarser than the others", name(machine), PITCH_DEG);
            case FLANGE_RUN_OUT ->
                said(
                        "the flange's face runs out, highest at hub position %s, by %.2f mm at a dial radius of 50 mm",
                        String.valueOf(place), 1e3 * RUN_OUT_M);
            case WEAK_CYLINDER ->
                said(
                        "cylinder %s (in firing order) gives %.0f %% too little",
                        String.valueOf(place), 100 * CYLINDER_LACKS);
            default -> fault.description();
        };
    }

    /** What a workshop writes down once it is put right. */
    String remedy(Machine machine) {
        return fault.remedy(fault == Fault.WEAK_CYLINDER ? String.valueOf(place) : name(machine));
    }

    private String said(String form, String where, double usual) {
        return String.format(Locale.ROOT, form, where, usual * scale);
    }

    private String name(Machine machine) {
        return blade(machine).name();
    }

    private Blade blade(Machine machine) {
        return machine.blades().get(place - 1);
    }
}
