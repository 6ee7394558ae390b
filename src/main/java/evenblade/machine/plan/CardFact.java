package evenblade.machine.plan;

import evenblade.base.fact.Code;

/** What stands on a run card. */
public enum CardFact implements Code {
    CONTROLLER_OFF,
    IGNITION_OFF,
    TIE_DOWN,
    KEEP_CLEAR,
    NOTHING_LOOSE,
    PROTECT_EARS,
    THROTTLE_BACK,
    MAKERS_LIMITS,
    AS_MAKERS_ALLOW,
    LICENSED_PERSON,
    FIX_SENSOR,
    MICROPHONE,
    NOTE_CONDITIONS,
    WARM_UP,
    START_RECORDING,
    HOLD_TABLE,
    HOLD_EACH_SPEED,
    SHUT_DOWN,
    CHANGE_ONE_THING
}
