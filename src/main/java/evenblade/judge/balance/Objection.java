package evenblade.judge.balance;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Why no correction is given, or what has to be said before one. Runs are counted from 1 in the order of the readings.
 */
public sealed interface Objection {
    default Code code() {
        return Stream.of(Code.values())
                .filter(code -> code.kind.isInstance(this))
                .findFirst()
                .orElseThrow();
    }

    /** Names for programs; stable. */
    enum Code {
        NO_RUN_WITHOUT_WEIGHTS(NoRunWithoutWeights.class),
        NO_TRIAL(NoTrial.class),
        PHASES_MISSING(PhasesMissing.class),
        TRIALS_TOO_FEW(TrialsTooFew.class),
        SPEED_NOT_CONFIRMED(SpeedNotConfirmed.class),
        SPEEDS_APART(SpeedsApart.class),
        INSEPARABLE_FROM_CRANK(InseparableFromCrank.class),
        BEYOND_LIMIT_FIRST(BeyondLimitFirst.class),
        CHANGED_BETWEEN(ChangedBetween.class),
        SENSOR_CHANGED(SensorChanged.class),
        TRIAL_TOO_LIGHT(TrialTooLight.class),
        NEAR_RESONANCE(NearResonance.class),
        LOOSE_MOUNT(LooseMount.class),
        BEYOND_LARGEST_MASS(BeyondLargestMass.class),
        SENSE_NOT_CONFIRMED(SenseNotConfirmed.class),
        SENSE_LOOKS_OTHER(SenseLooksOther.class),
        CLOSURE_FAILED(ClosureFailed.class),
        CLOSURE_POOR(ClosurePoor.class),
        RUNS_DISAGREE(RunsDisagree.class),
        SCATTER_ASSUMED(ScatterAssumed.class),
        CORRECTION_WITHIN_ERROR(CorrectionWithinError.class),
        PLACES_DONT_REACH(PlacesDontReach.class),
        STOCK_COARSE(StockCoarse.class);

        private final Class<? extends Objection> kind;

        Code(Class<? extends Objection> kind) {
            this.kind = kind;
        }

        /** As programs read it: {@code trial-too-light}. */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
        }
    }

    /** What a limit is about; pitch in degrees, the rest in mm. */
    enum Property {
        TRACK,
        PITCH,
        RUN_OUT
    }

    /** What about the sensor was another. */
    enum SensorAspect {
        PLACE,
        DIRECTION,
        GAIN
    }

    /** No run without weights, to start from. */
    record NoRunWithoutWeights() implements Objection {}

    /** No run with a weight on, or none whose sum of weights differs from that of the others. */
    record NoTrial() implements Objection {}

    /** Some runs have a phase and some have none. */
    record PhasesMissing(int without, int runs) implements Objection {}

    /** Without phase: fewer than three trials, or angles and weights that leave the answer open. */
    record TrialsTooFew(int differentTrials) implements Objection {}

    /** The speed of a run rests on no agreement of lines and no mark. */
    record SpeedNotConfirmed(int run) implements Objection {}

    /** Runs at different speeds. */
    record SpeedsApart(double lowestRpm, double highestRpm, double mostApartPercent) implements Objection {
        /** How far the speeds are apart, as a share of their middle. */
        public double apartPercent() {
            return 200 * (highestRpm - lowestRpm) / (highestRpm + lowestRpm);
        }
    }

    /** Propeller 1× shares its place with a line of the crank. */
    record InseparableFromCrank(int run, double crankOrder, boolean directDrive) implements Objection {}

    /** Track, pitch or run-out is past its limit; that has to be put right first. */
    record BeyondLimitFirst(Property property, double measured, double allowed) implements Objection {}

    /** Something else than the weight was changed before a run. */
    record ChangedBetween(int beforeRun, String what) implements Objection {}

    /** The sensor of a run was not where or as it was in the first. */
    record SensorChanged(int run, SensorAspect aspect) implements Objection {}

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
        /** The useful weight at the radius of the trial. */
        public double usefulG() {
            return usefulGmm / radiusMm;
        }
    }

    /** Phase turns or amplitude falls between dwells as near a resonance. */
    record NearResonance(int run, double fromRpm, double toRpm, double phaseTurnDeg, double amplitudeRatio)
            implements Objection {}

    /** Half orders of the propeller stand beside 1×, as from a loose mount. */
    record LooseMount(int run, double shareOfOnce) implements Objection {}

    /** More than the user allows. */
    record BeyondLargestMass(double neededG, double radiusMm, double largestG) implements Objection {}

    /** The user hasn't said which way angles are counted. */
    record SenseNotConfirmed() implements Objection {}

    /** The runs agree well if angles of weights turn against phases, and don't as entered. */
    record SenseLooksOther(double misfitAsEntered, double misfitTurned) implements Objection {}

    /** Readings without phase contradict each other too much. */
    record ClosureFailed(Optional<Double> closure) implements Objection {}

    /** Readings without phase don't quite agree; both ways of reckoning, in g·mm. */
    record ClosurePoor(double closure, double bySumGmm, double byCosinesGmm) implements Objection {}

    /** The runs scatter more than ground runs do. */
    record RunsDisagree(double scatterShare) implements Objection {}

    /**
     * Too few runs to show their scatter: the usual one was reckoned with.
     *
     * @param scatterShare as a share of the line
     * @param seenInPart whether what the runs do show is in it
     */
    record ScatterAssumed(double scatterShare, boolean seenInPart) implements Objection {}

    /** No weight at all fits the runs as well as the correction. */
    record CorrectionWithinError() implements Objection {}

    /** The places can't take the correction up: this much is left. */
    record PlacesDontReach(double leftGmm) implements Objection {}

    /** The weights in stock leave more than the correction's own error. */
    record StockCoarse(double leftGmm, double errorGmm) implements Objection {}
}
