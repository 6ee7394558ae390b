package evenblade.keep.practice;

import evenblade.base.problem.BadInput;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What can be asked of an invented machine, or done to it, one step after the other. The prices are invented, in the
 * proportion of an hour's work to a part.
 */
public enum PracticeStep {
    RUN("run", 30, "a ground run"),
    TRACKING("tracking", 5, "tip marks, two rounds"),
    PITCH("pitch", 10, "blade angles"),
    RUN_OUT("runout", 10, "a dial on the flange"),
    CLEAN("clean", 20, "hub, sockets and flange cleaned, blades put back where they were"),
    MOVE_BLADES("move", 20, "every blade moved on by one hub position"),
    BALANCE("balance", 60, "blade {0} balanced against the others", Fault.MASS_IMBALANCE),
    SHIM("shim", 40, "blade {0} shimmed into track", Fault.BLADE_OUT_OF_TRACK),
    SET_PITCH("set-pitch", 40, "blade {0} set to the pitch of the others", Fault.BLADE_OUT_OF_PITCH),
    FACE_FLANGE("face-flange", 200, "the flange's face dressed true", Fault.FLANGE_RUN_OUT),
    TIGHTEN_MOUNTS("tighten", 20, "all bolts of the mounts tightened", Fault.LOOSE_MOUNT),
    OVERHAUL_CYLINDER("cylinder", 250, "cylinder {0} overhauled", Fault.WEAK_CYLINDER),
    CHANGE_GEARS("gears", 400, "both gears changed", Fault.GEAR);

    private final String word;
    private final int price;
    private final String text;
    private final Optional<Fault> cures;

    PracticeStep(String word, int price, String text) {
        this.word = word;
        this.price = price;
        this.text = text;
        this.cures = Optional.empty();
    }

    PracticeStep(String word, int price, String text, Fault cures) {
        this.word = word;
        this.price = price;
        this.text = text;
        this.cures = Optional.of(cures);
    }

    /** As entered. */
    public String word() {
        return word;
    }

    /** What it costs, in invented money. */
    public int price() {
        return price;
    }

    /** What it is, with a place where it has one. */
    public String text(String place) {
        return text.replace("{0}", place);
    }

    /** What it puts right; empty where it measures, cleans or moves. */
    public Optional<Fault> cures() {
        return cures;
    }

    /** Whether it only measures. */
    public boolean measures() {
        return ordinal() <= RUN_OUT.ordinal();
    }

    /** Whether it is done to one blade or cylinder, which has to be named. */
    public boolean placed() {
        return text.contains("{0}");
    }

    /** How it is typed. */
    public String form() {
        return placed() ? word + "=" + (this == OVERHAUL_CYLINDER ? "NUMBER" : "BLADE") : word;
    }

    /**
     * A step as entered, {@code shim=B}.
     *
     * @param step which
     * @param place blade or cylinder; empty for a step that has none
     */
    public record Wanted(PracticeStep step, String place) {}

    /**
     * Reads it.
     *
     * @throws BadInput where there is no such step, or its place is missing
     */
    public static Wanted read(String typed) {
        int sign = typed.indexOf('=');
        String word = (sign < 0 ? typed : typed.substring(0, sign)).strip().toLowerCase(Locale.ROOT);
        String place = sign < 0 ? "" : typed.substring(sign + 1).strip().toUpperCase(Locale.ROOT);
        PracticeStep step = Stream.of(values())
                .filter(each -> each.word.equals(word))
                .findFirst()
                .orElseThrow(
                        () -> BadInput.in("step").found("'" + typed + "'", "one of " + String.join(", ", forms())));
        if (step.placed() == place.isEmpty()) {
            throw BadInput.in("step").found("'" + typed + "'", step.form());
        }
        return new Wanted(step, place);
    }

    /** How all are typed. */
    public static List<String> forms() {
        return Stream.of(values()).map(PracticeStep::form).toList();
    }
}
