package evenblade.keep.practice;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.Nearest;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** What can be put wrong with an invented machine. */
public enum Fault {
    NONE(
            "none",
            "nothing beyond the small differences any propeller has",
            "Nothing found that needs changing; bolts checked and sealed again.",
            machine -> machine),
    MASS_IMBALANCE(
            "mass-imbalance",
            "one blade is 3 g heavy at its centre of gravity",
            "Blade %s balanced against the others.",
            machine -> machine.withBlade(2, machine.blades().get(1).heavierBy(0.003))),
    BLADE_OUT_OF_TRACK(
            "blade-out-of-track",
            "one tip runs 6 mm ahead of the others",
            "Blade %s shimmed into track.",
            machine -> machine.withBlade(2, machine.blades().get(1).ahead(0.006))),
    BLADE_OUT_OF_PITCH(
            "blade-out-of-pitch",
            "one blade is set 1.5° coarser than the others",
            "Blade %s set to the pitch of the others.",
            machine -> machine.withBlade(2, machine.blades().get(1).coarser(1.5))),
    FLANGE_RUN_OUT(
            "flange-run-out",
            "the flange's face runs out by 0.35 mm at a dial radius of 50 mm",
            "Flange face dressed true.",
            machine -> machine.withRunOut(new InventedRunOut(0.35e-3, 0.05, machine.angleDeg(1)))),
    WEAK_CYLINDER(
            "weak-cylinder",
            "one cylinder gives 65 % of what it should",
            "Valves of cylinder %s ground in; compression is even now.",
            Fault::weakenFirstCylinder),
    CRANK_IMBALANCE(
            "crank-imbalance",
            "the crank or rotor is 300 g·mm out of balance",
            "Crank or rotor taken to a balancing shop and put back.",
            machine -> machine.withDrive(machine.drive().withCrankImbalance(300e-6))),
    CARBURETTORS_OUT_OF_STEP(
            "carburettors-out-of-step",
            "every other firing is 15 % stronger, the rest 15 % weaker",
            "Carburettors set to open together.",
            Fault::loadEveryOtherCylinder),
    MOUNT_RESONANCE(
            "mount-resonance",
            "the body resonates on its mounts at 30 Hz with 4 % damping",
            "Mount rubbers changed for softer ones.",
            machine -> machine.withBody(
                    machine.body().onMounts(new Body.Resonance(30, 0.04), new Body.Resonance(30, 0.04)))),
    LOOSE_MOUNT(
            "loose-mount",
            "a mount chatters: a row of half and whole propeller orders",
            "Mount bolt found loose; tightened to the maker's torque.",
            machine -> machine.withDrive(machine.drive().withRattle(0.8))),
    GEAR(
            "gear",
            "the mesh is loud and swells once per propeller revolution",
            "Worn pair of gears replaced.",
            Fault::wearGear);

    private final String word;
    private final String description;
    private final String remedy;
    private final UnaryOperator<Machine> spoiler;

    Fault(String word, String description, String remedy, UnaryOperator<Machine> spoiler) {
        this.word = word;
        this.description = description;
        this.remedy = remedy;
        this.spoiler = spoiler;
    }

    /** As entered and as written in truth files. */
    public String word() {
        return word;
    }

    /** What is wrong, in numbers. */
    public String description() {
        return description;
    }

    /**
     * What a workshop writes down once it is put right.
     *
     * @param where name of the blade or number of the cylinder; not said for faults that have neither
     */
    public String remedy(String where) {
        return remedy.replace("%s", where);
    }

    /**
     * The machine with this put wrong.
     *
     * @throws BadInput where this machine can't have it
     */
    public Machine in(Machine machine) {
        return spoiler.apply(machine);
    }

    /**
     * The fault of that name.
     *
     * @throws BadInput where there is none
     */
    public static Fault named(String word) {
        return Stream.of(values())
                .filter(fault -> fault.word.equals(word))
                .findFirst()
                .orElseThrow(() -> unknown(word));
    }

    private static BadInput unknown(String word) {
        List<String> known = Stream.of(values()).map(Fault::word).toList();
        String meant = Nearest.alike(word, known)
                .map(nearest -> "'" + nearest + "' or another of ")
                .orElse("one of ");
        return BadInput.in("fault").found("'" + word + "'", meant + String.join(", ", known));
    }

    private static Machine weakenFirstCylinder(Machine machine) {
        requireFiring(machine, WEAK_CYLINDER);
        List<Double> strengths = new ArrayList<>(machine.drive().cylinderStrength());
        strengths.set(0, 0.65 * strengths.get(0));
        return machine.withDrive(machine.drive().withCylinders(strengths));
    }

    private static Machine loadEveryOtherCylinder(Machine machine) {
        requireFiring(machine, CARBURETTORS_OUT_OF_STEP);
        List<Double> strengths = new ArrayList<>(machine.drive().cylinderStrength());
        for (int c = 0; c < strengths.size(); c++) {
            strengths.set(c, strengths.get(c) * (c % 2 == 0 ? 1.15 : 0.85));
        }
        return machine.withDrive(machine.drive().withCylinders(strengths));
    }

    private static Machine wearGear(Machine machine) {
        if (machine.installation().reduction().teeth().isEmpty()) {
            throw BadInput.in("fault '" + GEAR.word + "'")
                    .found("a drive without tooth counts", "an installation that gives them");
        }
        return machine.withDrive(machine.drive().withMesh(1.5, 0.5));
    }

    static void requireFiring(Machine machine, Fault fault) {
        if (machine.electric()) {
            throw BadInput.in("fault '" + fault.word + "'").found("an electric motor", "an engine with cylinders");
        }
    }
}
