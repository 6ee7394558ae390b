package evenblade.judge.tie;

import evenblade.base.fact.Code;

/** Why runs can't tell yet what goes with track, what would settle it, and what hides in the answer. */
public enum TieFact implements Code {
    TOO_FEW_WITHOUT_PHASE,
    ONE_RUN,
    ALL_IN_TRACK,
    SAME_TRACK,
    TRACKS_ALIKE,
    NO_SINGLE_TIE,
    MOVE_AND_MARK,
    MARK_OR_MORE_RUNS,
    LOOK_AT_OTHERS,
    ANOTHER_TRACK_OR_MARK,
    REPEAT,
    ANGLES_HIDDEN,
    ANGLES_NOT_ALWAYS_READ,
    ANGLES_NEED_RUNS,
    ANGLES_NEED_RUNS_WITHOUT_PHASE
}
