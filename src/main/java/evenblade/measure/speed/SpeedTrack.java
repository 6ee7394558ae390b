package evenblade.measure.speed;

/** Propeller speed and angle over the whole of a recording. */
public interface SpeedTrack {
    double fromS();

    double toS();

    /** Propeller revolutions turned since the start of the track. */
    double revolutionsAt(double timeS);

    /** Propeller speed in revolutions per second. */
    double propellerHzAt(double timeS);
}
