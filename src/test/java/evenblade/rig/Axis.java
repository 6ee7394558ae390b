package evenblade.rig;

/** What a channel feels: along the propeller shaft (forward), across to the right, up; or the sound in the air. */
public enum Axis {
    FORWARD,
    RIGHT,
    UP,
    SOUND
}
