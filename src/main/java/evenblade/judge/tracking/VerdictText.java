package evenblade.judge.tracking;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The sentences of a {@link TrackVerdict}. */
final class VerdictText {
    private VerdictText() {}

    static String oneLayout(SwapFit fit, boolean uneven, boolean beyond) {
        String spread = mm(fit.latest().spreadMm());
        String cannot =
                "The blades have always sat in the same order, so a blade and its hub position can't be told apart.";
        if (beyond && !uneven) {
            return cannot + " The marks spread over " + spread
                    + ", more than may stay, though reading error may have a part in it: mark again, then move the blades"
                    + " round the hub.";
        }
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

    static String beyondButUnclear(SwapFit fit) {
        return "The marks spread over up to "
                + mm(fit.sessions().stream()
                        .mapToDouble(TrackingSession::spreadMm)
                        .max()
                        .orElseThrow())
                + ", more than may stay. But they scatter so much that neither a blade nor a hub position can be named: mark"
                + " again, two rounds or more, with a block that can't move, and say how good a reading is.";
    }

    static String contradict(SwapFit fit) {
        return "The marks contradict each other: no blade and no hub position explains them together (one reading is"
                + " taken as good to " + mm(fit.readingSigmaMm())
                + "). Something moved, or a mark was misread. Mark again before anything is moved or shimmed.";
    }

    static String slipped(SwapFit fit, Suspect suspect, List<StandOut> others) {
        String mark = "The marks contradict each other. The one at hub position " + suspect.position()
                + " in session " + suspect.session() + " fits worst: "
                + String.format(Locale.ROOT, "%+.1f mm", suspect.offMm())
                + " off where the others would have it. Look it up, or mark that layout again.";
        return others.isEmpty() ? mark + " The others are alike." : mark + " The others point to " + list(others) + ".";
    }

    static String usual(UsualFigure figure) {
        String size = figure.allowedMm() == UsualFigure.MOST_MM ? "1/8 in (3.2 mm)" : "1/16 in (1.6 mm)";
        String against = mm2(figure.measuredMm()) + (figure.kept() ? " keeps to " : " is more than ") + size;
        return switch (figure.figure()) {
            case ACCEPTED_IN_PRACTICE ->
                "Spread " + against + ", accepted in common practice (no source; not the maker's figure).";
            case MOST_IN_PRACTICE ->
                "Spread " + against + ", the most in common practice (no source; not the maker's figure).";
            case HANDBOOK_OPPOSITE_BLADE ->
                "Against the opposite blade " + against
                        + ", the general figure of FAA-H-8083-32 (read in a restatement; the maker's figure governs).";
        };
    }

    private static String mm2(double millimetres) {
        return String.format(Locale.ROOT, "%.2f mm", millimetres);
    }

    static String one(
            boolean goesWithBlade, List<StandOut> standOuts, List<StandOut> perhaps, TrackLimits limits, double odds) {
        String who = list(standOuts);
        String what = goesWithBlade
                ? "The track error goes with the blade when the blades are moved, which points to " + who + "."
                : "The track error stays on the hub when the blades are moved, which points to " + who
                        + ": the hub, its sockets or the flange.";
        if (standOuts.size() == 2 && mirrored(standOuts)) {
            what += " With two, the marks alone can't say which of them is wrong.";
        }
        if (!perhaps.isEmpty()) {
            boolean small = perhaps.stream().allMatch(s -> Math.abs(s.offset().valueMm()) < limits.mattersMm());
            what += " Perhaps " + list(perhaps) + " too" + (small ? ", below what matters." : ".");
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
