package evenblade.judge.balance;

import evenblade.base.fact.Code;

/** Why no correction is given, or what has to be said beside one. Stable names for programs. */
public enum ObjectionCode implements Code {
    /** Nothing to start from. */
    NO_RUN_WITHOUT_WEIGHTS,
    /** No run with a weight on, or none whose sum of weights differs from that of the others. */
    NO_TRIAL,
    /** Runs without a phase, of how many. */
    PHASES_MISSING,
    /** Without phase: fewer than three trials that differ, or angles and weights that leave the answer open. */
    TRIALS_TOO_FEW,
    /** The speed of a run rests on no agreement of lines and no mark. */
    SPEED_NOT_CONFIRMED,
    /** How far apart as a share, lowest, highest, the most. */
    SPEEDS_APART,
    /** Propeller 1× of a run shares its place with a line of the crank: its order, and whether both turn as one. */
    INSEPARABLE_FROM_CRANK,
    /** Track, pitch or run-out is past its limit: which, as read, the limit. */
    BEYOND_LIMIT_FIRST,
    /** Something else than the weight was changed before a run. */
    CHANGED_BETWEEN,
    /** The sensor of a run was not where or as it was in the first. */
    SENSOR_CHANGED,
    /** Standard deviations by which the weight moved the line, how many it takes, what weight would be seen. */
    TRIAL_TOO_LIGHT,
    /** Of a run between two speeds: turn of the phase and ratio of amplitudes. */
    NEAR_RESONANCE,
    /** Half orders of the propeller stand beside 1×, as a share of it. */
    LOOSE_MOUNT,
    /** Mass needed at a radius, and the most that the user allows. */
    BEYOND_LARGEST_MASS,
    /** The user hasn't said which way angles are counted. */
    SENSE_NOT_CONFIRMED,
    /** The runs agree well if angles of weights turn against phases, and don't as entered. */
    SENSE_LOOKS_OTHER,
    /** Readings without phase contradict each other too much. */
    CLOSURE_FAILED,
    /** Readings without phase don't quite agree: the closure, and the correction by both ways of reckoning. */
    CLOSURE_POOR,
    /** The runs scatter more than ground runs do. */
    RUNS_DISAGREE,
    /** Too few runs to show their scatter: the usual one was reckoned with. */
    SCATTER_ASSUMED,
    /** No weight at all fits the runs as well as the correction. */
    CORRECTION_WITHIN_ERROR,
    /** The places can't take the correction up: what is left. */
    PLACES_DONT_REACH,
    /** The weights in stock leave more than the correction's own error: both. */
    STOCK_COARSE
}
