package evenblade.measure.speed;

/** Propeller speed and angle over the whole of a recording. */
public interface SpeedTrack {
    double fromS();

    double toS();

    /** Propeller revolutions turned since the start of the track. */
    double revolutionsAt(double timeS);

    /** Propeller speed in revolutions per second. */
    double propellerHzAt(double timeS);

    /** The crank's angle and speed over the reduction ratio; apart from the propeller's only where a belt creeps. */
    default SpeedTrack ofCrank() {
        return this;
    }
}
