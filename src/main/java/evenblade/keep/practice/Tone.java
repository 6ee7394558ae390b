package evenblade.keep.practice;

/**
 * A tone that stands still while the engine's speed changes: mains hum, a fan in the room, a pump.
 *
 * @param frequencyHz where it stands
 * @param amplitude peak value
 * @param phaseDeg at time zero, ahead of the cosine
 */
public record Tone(double frequencyHz, double amplitude, double phaseDeg) {
    double at(double timeS) {
        return amplitude * Math.cos(2 * Math.PI * frequencyHz * timeS + Math.toRadians(phaseDeg));
    }
}
