package evenblade.face.cli;

import java.util.List;

/** What is said wherever the next step is done by hand at the propeller. */
final class Caution {
    private Caution() {}

    /** Common practice, no source. */
    static List<String> lines() {
        return LineWrapper.lines(
                "! ",
                "  ",
                "Before a hand goes near the propeller: ignition off (electric: battery unplugged); treat it as live all"
                        + " the same. Blades, weights and shims are changed only as the makers allow.");
    }
}
