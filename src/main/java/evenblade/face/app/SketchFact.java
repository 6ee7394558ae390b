package evenblade.face.app;

import evenblade.base.fact.Code;

/** What static readings come to while they are typed. */
public enum SketchFact implements Code {
    ANGLES,
    ANGLE_OFF,
    NO_PITCH_LIMIT,
    DIAL_AT_TIPS,
    ENTER_DIAMETER,
    AGAINST_LIMIT,
    NO_TRACK_LIMIT
}
