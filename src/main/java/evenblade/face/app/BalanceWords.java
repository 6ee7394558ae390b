package evenblade.face.app;

import evenblade.judge.balance.Objection;
import evenblade.judge.balance.Objection.Property;
import evenblade.tell.document.FigureFormat;
import java.util.Locale;

/** Why there is no correction, or what to know beside it, in a technician's words. */
public final class BalanceWords {
    private BalanceWords() {}

    /** One or two sentences, in metric units. */
    public static String sentence(Objection objection) {
        return sentence(objection, WeightFigures.METRIC);
    }

    /** One or two sentences. */
    static String sentence(Objection objection, WeightFigures figures) {
        if (objection instanceof Objection.NoRunWithoutWeights) {
            return "There is no run without weights. Make one at the same speed.";
        } else if (objection instanceof Objection.NoTrial) {
            return "No run has another weight on than the rest. Put a trial weight on and run again.";
        } else if (objection instanceof Objection.PhasesMissing o) {
            return text("%d of %d runs have no phase. All of them need one, or none.", o.without(), o.runs());
        } else if (objection instanceof Objection.TrialsTooFew o) {
            return text(
                    "Without phase it takes three or more trials at different angles, well spread round the hub;"
                            + " %d can be used here.",
                    o.differentTrials());
        } else if (objection instanceof Objection.TrialTooLight o) {
            return tooLight(o, figures);
        } else if (objection instanceof Objection.BeyondLargestMass o) {
            return text(
                    "It would take %s at one place, and %s is the most that you allow. So much unbalance has a cause: look"
                            + " for it before you add weight.",
                    figures.massAt(o.neededG(), o.radiusMm()), figures.mass(o.largestG()));
        } else if (objection instanceof Objection.ClosureFailed o) {
            return o.closure()
                            .map(c -> text(
                                    "The readings contradict each other: the closure is %.2f and must be near 1. ", c))
                            .orElse("The readings contradict each other: no unbalance gives these amplitudes. ")
                    + "Check the angles, then repeat the runs.";
        } else if (objection instanceof Objection.ClosurePoor o) {
            return text(
                    "The readings don't quite agree: the closure is %.3f and must be 1. One way of reckoning gives"
                            + " %s, the other %s. A repeated run helps.",
                    o.closure(), figures.unbalance(o.bySumGmm()), figures.unbalance(o.byCosinesGmm()));
        }
        return ofWeightsOrRuns(objection, figures);
    }

    private static String ofWeightsOrRuns(Objection objection, WeightFigures figures) {
        if (objection instanceof Objection.RunsDisagree o) {
            return text(
                    "The runs scatter by %.0f %% from one to the next; 3 to 8 %% is usual. Look for what changes"
                            + " between them.",
                    100 * o.scatterShare());
        } else if (objection instanceof Objection.ScatterAssumed o) {
            return text(
                    "Too few runs to see how they scatter: %.1f %% was reckoned with, %s. Repeat a run to know it.",
                    100 * o.scatterShare(),
                    o.seenInPart() ? "from these runs and from what is usual" : "as is usual for ground runs");
        } else if (objection instanceof Objection.CorrectionWithinError) {
            return "The line without weights is within its own error: no weight at all would do as well.";
        } else if (objection instanceof Objection.PlacesDontReach o) {
            return "The places can't take all of it up: " + figures.unbalance(o.leftGmm()) + " would be left.";
        } else if (objection instanceof Objection.StockCoarse o) {
            return text(
                    "The weights in stock leave %s, more than the error of the correction (%s). A finer weight would help.",
                    figures.unbalance(o.leftGmm()), figures.unbalance(o.errorGmm()));
        } else if (objection instanceof Objection.SenseNotConfirmed) {
            return "Nobody has said yet which way angles are counted on the hub. Answer that first: a wrong sense puts"
                    + " the weight on the wrong side.";
        } else if (objection instanceof Objection.SenseLooksOther) {
            return "The runs agree well if the angles of the weights turn the other way, and not as entered. Check"
                    + " which way you counted them.";
        }
        return ofConditions(objection, figures.lengths());
    }

    private static String ofConditions(Objection objection, FigureFormat lengths) {
        if (objection instanceof Objection.SpeedNotConfirmed o) {
            return text("The speed of run %d is not confirmed.", o.run());
        } else if (objection instanceof Objection.SpeedsApart o) {
            return text(
                    "The runs are %.1f %% apart in speed (%.0f to %.0f propeller rpm); %.0f %% is the most.",
                    o.apartPercent(), o.lowestRpm(), o.highestRpm(), o.mostApartPercent());
        } else if (objection instanceof Objection.InseparableFromCrank o) {
            return text("In run %d propeller 1× can't be told from crank %s×.", o.run(), order(o.crankOrder()))
                    + (o.directDrive()
                            ? " Propeller and crank turn as one: a weight on the hub would also balance away what the"
                                    + " engine does, and fit this engine only."
                            : "");
        } else if (objection instanceof Objection.BeyondLimitFirst o) {
            boolean angle = o.property() == Property.PITCH;
            return text(
                    "%s is %s and its limit is %s: put that right first. Mass must not hide it.",
                    property(o.property()),
                    angle ? text("%.2f°", o.measured()) : lengths.both(o.measured()),
                    angle ? text("%.2f°", o.allowed()) : lengths.both(o.allowed()));
        } else if (objection instanceof Objection.ChangedBetween o) {
            return text(
                    "Something else than the weight was changed before run %d: %s. Make the run without weights"
                            + " again.",
                    o.beforeRun(), o.what());
        } else if (objection instanceof Objection.SensorChanged o) {
            String what =
                    switch (o.aspect()) {
                        case PLACE -> "at another place";
                        case DIRECTION -> "in another direction";
                        case GAIN -> "at another gain";
                    };
            return text("In run %d the sensor was %s than in the first.", o.run(), what);
        } else if (objection instanceof Objection.NearResonance o) {
            return text(
                    "In run %d the 1× line behaves as near a resonance between %.0f and %.0f propeller rpm (phase"
                            + " %+.0f°, amplitude ×%.2f). Balance at another speed.",
                    o.run(), o.fromRpm(), o.toRpm(), o.phaseTurnDeg(), o.amplitudeRatio());
        } else if (objection instanceof Objection.LooseMount o) {
            return text(
                    "In run %d half orders stand beside 1× (%.0f %% of it), as from a loose mount. Check the mounts"
                            + " first.",
                    o.run(), 100 * o.shareOfOnce());
        }
        throw new IllegalArgumentException("no words for " + objection.code());
    }

    private static String tooLight(Objection.TrialTooLight o, WeightFigures figures) {
        String seen = text(
                "The trial weight is lost in the scatter: it moved the line by %.1f standard deviations, and it takes"
                        + " %.1f. ",
                o.effect(), o.needed());
        return o.largestG().isPresent()
                ? seen
                        + text(
                                "About %s would be seen, but %s is the most that you allow: repeat each run a few times.",
                                figures.massAt(o.usefulG(), o.radiusMm()),
                                figures.mass(o.largestG().getAsDouble()))
                : seen + "Take about " + figures.massAt(o.usefulG(), o.radiusMm()) + ", if the maker allows it.";
    }

    private static String property(Property property) {
        return switch (property) {
            case TRACK -> "The track spread";
            case PITCH -> "The pitch spread";
            case RUN_OUT -> "The run-out";
        };
    }

    private static String order(double order) {
        return order == Math.rint(order) ? text("%.0f", order) : text("%.1f", order);
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
