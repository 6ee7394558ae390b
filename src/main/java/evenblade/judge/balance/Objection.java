package evenblade.judge.balance;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Why no correction is given, or what has to be said before one. Runs are counted from 1 in the order of the readings.
 */
public sealed interface Objection {
    Code code();

    /** Whether it stands in the way of a correction; else it is a warning beside it. */
    default boolean refuses() {
        return code().refuses;
    }

    /** Names for programs; stable. */
    enum Code {
        NO_RUN_WITHOUT_WEIGHTS(true),
        NO_TRIAL(true),
        PHASES_MISSING(true),
        TRIALS_TOO_FEW(true),
        SPEED_NOT_CONFIRMED(true),
        SPEEDS_APART(true),
        INSEPARABLE_FROM_CRANK(true),
        BEYOND_LIMIT_FIRST(true),
        CHANGED_BETWEEN(true),
        SENSOR_CHANGED(true),
        TRIAL_TOO_LIGHT(true),
        NEAR_RESONANCE(true),
        LOOSE_MOUNT(true),
        BEYOND_LARGEST_MASS(true),
        SENSE_NOT_CONFIRMED(true),
        SENSE_LOOKS_OTHER(true),
        CLOSURE_FAILED(true),
        CLOSURE_POOR(false),
        RUNS_DISAGREE(false),
        SCATTER_ASSUMED(false),
        CORRECTION_WITHIN_ERROR(false),
        PLACES_DONT_REACH(false),
        STOCK_COARSE(false);

        private final boolean refuses;

        Code(boolean refuses) {
            this.refuses = refuses;
        }

        /** As programs read it: {@code trial-too-light}. */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
        }

        public boolean refuses() {
            return refuses;
        }
    }

    /** What a limit is about. */
    enum Property {
        TRACK("mm"),
        PITCH("°"),
        RUN_OUT("mm");

        private final String unit;

        Property(String unit) {
            this.unit = unit;
        }

        /** The unit that its figures are in. */
        public String unit() {
            return unit;
        }
    }

    /** What about the sensor was another. */
    enum SensorAspect {
        PLACE,
        DIRECTION,
        GAIN
    }

    /** No run without weights, to start from. */
    record NoRunWithoutWeights() implements Objection {
        @Override
        public Code code() {
            return Code.NO_RUN_WITHOUT_WEIGHTS;
        }
    }

    /** No run with a weight on, or none whose sum of weights differs from that of the others. */
    record NoTrial() implements Objection {
        @Override
        public Code code() {
            return Code.NO_TRIAL;
        }
    }

    /** Some runs have a phase and some have none. */
    record PhasesMissing(int without, int runs) implements Objection {
        @Override
        public Code code() {
            return Code.PHASES_MISSING;
        }
    }

    /** Without phase: fewer than three trials, or angles and weights that leave the answer open. */
    record TrialsTooFew(int differentTrials) implements Objection {
        @Override
        public Code code() {
            return Code.TRIALS_TOO_FEW;
        }
    }

    /** The speed of a run rests on no agreement of lines and no mark. */
    record SpeedNotConfirmed(int run) implements Objection {
        @Override
        public Code code() {
            return Code.SPEED_NOT_CONFIRMED;
        }
    }

    /** Runs at different speeds. */
    record SpeedsApart(double lowestRpm, double highestRpm, double mostApartPercent) implements Objection {
        @Override
        public Code code() {
            return Code.SPEEDS_APART;
        }

        /** How far the speeds are apart, as a share of their middle. */
        public double apartPercent() {
            return 200 * (highestRpm - lowestRpm) / (highestRpm + lowestRpm);
        }
    }

    /** Propeller 1× shares its place with a line of the crank. */
    record InseparableFromCrank(int run, double crankOrder, boolean directDrive) implements Objection {
        @Override
        public Code code() {
            return Code.INSEPARABLE_FROM_CRANK;
        }
    }

    /** Track, pitch or run-out is past its limit; that has to be put right first. */
    record BeyondLimitFirst(Property property, double measured, double allowed) implements Objection {
        @Override
        public Code code() {
            return Code.BEYOND_LIMIT_FIRST;
        }
    }

    /** Something else than the weight was changed before a run. */
    record ChangedBetween(int beforeRun, String what) implements Objection {
        @Override
        public Code code() {
            return Code.CHANGED_BETWEEN;
        }
    }

    /** The sensor of a run was not where or as it was in the first. */
    record SensorChanged(int run, SensorAspect aspect) implements Objection {
        @Override
        public Code code() {
            return Code.SENSOR_CHANGED;
        }
    }

    /**
     * The weight moved the line by less than three standard deviations.
     *
     * @param effect what the weight changed, in standard deviations
     * @param needed how many it takes here
     * @param usefulGmm a weight that would be seen
     * @param largestG the most that is allowed at one place, where it stops short of that
     */
    record TrialTooLight(double effect, double needed, double usefulGmm, double radiusMm, OptionalDouble largestG)
            implements Objection {
        @Override
        public Code code() {
            return Code.TRIAL_TOO_LIGHT;
        }

        /** The useful weight at the radius of the trial. */
        public double usefulG() {
            return usefulGmm / radiusMm;
        }
    }

    /** Phase turns or amplitude falls between dwells as near a resonance. */
    record NearResonance(int run, double fromRpm, double toRpm, double phaseTurnDeg, double amplitudeRatio)
            implements Objection {
        @Override
        public Code code() {
            return Code.NEAR_RESONANCE;
        }
    }

    /** Half orders of the propeller stand beside 1×, as from a loose mount. */
    record LooseMount(int run, double shareOfOnce) implements Objection {
        @Override
        public Code code() {
            return Code.LOOSE_MOUNT;
        }
    }

    /** More than the user allows. */
    record BeyondLargestMass(double neededG, double radiusMm, double largestG) implements Objection {
        @Override
        public Code code() {
            return Code.BEYOND_LARGEST_MASS;
        }
    }

    /** The user hasn't said which way angles are counted. */
    record SenseNotConfirmed() implements Objection {
        @Override
        public Code code() {
            return Code.SENSE_NOT_CONFIRMED;
        }
    }

    /** The runs agree well if angles of weights turn against phases, and don't as entered. */
    record SenseLooksOther(double misfitAsEntered, double misfitTurned) implements Objection {
        @Override
        public Code code() {
            return Code.SENSE_LOOKS_OTHER;
        }
    }

    /** Readings without phase contradict each other too much. */
    record ClosureFailed(Optional<Double> closure) implements Objection {
        @Override
        public Code code() {
            return Code.CLOSURE_FAILED;
        }
    }

    /** Readings without phase don't quite agree; both ways of reckoning, in g·mm. */
    record ClosurePoor(double closure, double bySumGmm, double byCosinesGmm) implements Objection {
        @Override
        public Code code() {
            return Code.CLOSURE_POOR;
        }
    }

    /** The runs scatter more than ground runs do. */
    record RunsDisagree(double scatterShare) implements Objection {
        @Override
        public Code code() {
            return Code.RUNS_DISAGREE;
        }
    }

    /**
     * Too few runs to show their scatter: the usual one was reckoned with.
     *
     * @param scatterShare as a share of the line
     * @param seenInPart whether what the runs do show is in it
     */
    record ScatterAssumed(double scatterShare, boolean seenInPart) implements Objection {
        @Override
        public Code code() {
            return Code.SCATTER_ASSUMED;
        }
    }

    /** No weight at all fits the runs as well as the correction. */
    record CorrectionWithinError() implements Objection {
        @Override
        public Code code() {
            return Code.CORRECTION_WITHIN_ERROR;
        }
    }

    /** The places can't take the correction up: this much is left. */
    record PlacesDontReach(double leftGmm) implements Objection {
        @Override
        public Code code() {
            return Code.PLACES_DONT_REACH;
        }
    }

    /** The weights in stock leave more than the correction's own error. */
    record StockCoarse(double leftGmm, double errorGmm) implements Objection {
        @Override
        public Code code() {
            return Code.STOCK_COARSE;
        }
    }
}
