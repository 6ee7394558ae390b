package evenblade.judge.tie;

/**
 * Whether the shaking that goes with track is of a size that track can make. A blade out of track turns a couple with the
 * propeller; an engine that hangs free answers it at the sensor with a = M·r/J, where J is its moment of inertia about an
 * axis across the shaft and r the sensor's distance from the centre of gravity. Neither is known here, so only J/r as
 * it follows from the measured k, M/k, is held against what light engines can have.
 *
 * @param newtonMetresPerMm couple for each mm of track once a turn, estimated from the blade's mass and centre of gravity
 * @param kilogramMetres J/r that the measured vibration per mm asks for
 * @param answer what that says
 */
public record CoupleCheck(double newtonMetresPerMm, double kilogramMetres, Answer answer) {
    /**
     * Range of J/r of light engines with their propellers: 30 kg at a radius of gyration of 0.15 m, felt 1 m away, give
     * 0.7 kg·m; 200 kg at 0.4 m, felt 0.1 m away, 320 kg·m. This program's own choice, no published figure.
     */
    private static final double LEAST = 0.7;

    private static final double MOST = 320;

    /** What the size says. */
    public enum Answer {
        FITS,
        /** More shaking than the couple can make: something else was changed along with the track. */
        TOO_MUCH,
        /** Less: track is not the cause, or the sensor sits where the couple isn't felt. */
        TOO_LITTLE
    }

    /**
     * Checks.
     *
     * @param newtonMetresPerMm above 0
     * @param perMillimetre measured vibration per mm of track as an acceleration in m/s²
     */
    public static CoupleCheck of(double newtonMetresPerMm, Size perMillimetre) {
        double middle = newtonMetresPerMm / Math.max(Double.MIN_NORMAL, perMillimetre.value());
        // Only where the whole interval lies outside is it called too much or too little.
        Answer answer = newtonMetresPerMm < LEAST * perMillimetre.low()
                ? Answer.TOO_MUCH
                : newtonMetresPerMm > MOST * perMillimetre.high() ? Answer.TOO_LITTLE : Answer.FITS;
        return new CoupleCheck(newtonMetresPerMm, middle, answer);
    }
}
