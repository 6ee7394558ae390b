package evenblade.judge.tracking;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The sentences of a {@link TrackVerdict}. */
final class VerdictText {
    private VerdictText() {}

    static String oneLayout(SwapFit fit, boolean uneven) {
        String spread = mm(fit.latest().spreadMm());
        String cannot =
                "The blades have always sat in the same order, so a blade and its hub position can't be told apart.";
        return uneven
                ? cannot + " The marks spread over " + spread
                        + ", more than the reading error: move the blades round the hub and mark again."
                : cannot + " The marks spread over " + spread + ", which the reading error alone can do.";
    }

    static String partlyTried(List<StandOut> blades, List<StandOut> positions) {
        return "Something stands out by more than the reading error, but the blade and the position concerned have not"
                + " been separated yet: " + list(blades) + " fits as well as " + list(positions)
                + ". Move the blades again and mark them.";
    }

    static String withinError(SwapFit fit) {
        return "All blades and all hub positions are alike within the reading error (" + mm(fit.readingSigmaMm())
                + " for one reading). The marks give no reason to move or shim anything.";
    }

    static String one(boolean goesWithBlade, List<StandOut> standOuts, double odds) {
        String who = list(standOuts);
        String what = goesWithBlade
                ? "The track error goes with the blade when the blades are moved, which points to " + who + "."
                : "The track error stays on the hub when the blades are moved, which points to " + who
                        + ": the hub, its sockets or the flange.";
        if (standOuts.size() == 2 && mirrored(standOuts)) {
            what += " With two, the marks alone can't say which of them is wrong.";
        }
        return odds >= TrackVerdict.FIRM_ODDS
                ? what
                : what
                        + String.format(
                                Locale.ROOT,
                                " This only leans that way (about %.0f to 1): another layout would make it surer.",
                                Math.max(1, odds));
    }

    static String both(List<StandOut> standOuts) {
        List<StandOut> blades = standOuts.stream().filter(StandOut::blade).toList();
        List<StandOut> positions = standOuts.stream().filter(s -> !s.blade()).toList();
        return "Part of the track error goes with the blades and part stays on the hub, which points to " + list(blades)
                + " and to " + list(positions) + ".";
    }

    /** Two that lie off each other by the same amount: nobody else to compare with. */
    private static boolean mirrored(List<StandOut> standOuts) {
        double first = standOuts.get(0).offset().valueMm();
        double second = standOuts.get(1).offset().valueMm();
        return Math.abs(first + second) <= 1e-6 * Math.abs(first);
    }

    private static String list(List<StandOut> standOuts) {
        if (standOuts.isEmpty()) {
            return "no single one";
        }
        List<String> parts = new ArrayList<>();
        for (StandOut s : standOuts) {
            parts.add((s.blade() ? "blade " : "hub position ") + s.name() + " ("
                    + String.format(
                            Locale.ROOT,
                            "%+.1f ± %.1f mm",
                            s.offset().valueMm(),
                            s.offset().highMm() - s.offset().valueMm())
                    + ")");
        }
        return parts.stream().collect(Collectors.joining(" and "));
    }

    static String mm(double millimetres) {
        return String.format(Locale.ROOT, "%.1f mm", millimetres);
    }
}
