package evenblade.measure.speed;

/**
 * A stretch of a run at steady speed.
 *
 * @param fromS start, seconds into the recording
 * @param toS end
 * @param propellerHz mean propeller speed
 * @param standardErrorHz of that mean
 * @param minHz slowest in the stretch
 * @param maxHz fastest in the stretch
 */
public record Dwell(double fromS, double toS, double propellerHz, double standardErrorHz, double minHz, double maxHz) {
    public double durationS() {
        return toS - fromS;
    }

    public double propellerRpm() {
        return 60 * propellerHz;
    }
}
