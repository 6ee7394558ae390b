package evenblade.measure.speed;

/**
 * A track of which the crank has its own, as a belt between both creeps.
 *
 * @param ofPropeller propeller's angle and speed
 * @param ofCrank the crank's over the mean ratio of both
 */
record BeltTrack(SpeedTrack ofPropeller, SpeedTrack ofCrank) implements SpeedTrack {
    /** Wander of the ratio that is told: below it no line of an engine is moved by a tenth of a hertz. Ours. */
    static final double WORTH_SAYING = 5e-4;

    /** Standard errors that the mean ratio must lie off the entered one to count as another. */
    private static final double CERTAIN = 4;

    private static final int PLACES = 200; // ours: a belt creeps slowly
    /** Another track, its angle and speed so many times as large. */
    private record Scaled(SpeedTrack whole, double factor) implements SpeedTrack {
        @Override
        public double fromS() {
            return whole.fromS();
        }

        @Override
        public double toS() {
            return whole.toS();
        }

        @Override
        public double revolutionsAt(double timeS) {
            return factor * whole.revolutionsAt(timeS);
        }

        @Override
        public double propellerHzAt(double timeS) {
            return factor * whole.propellerHzAt(timeS);
        }
    }

    /**
     * Of two tracks.
     *
     * @param crank angle of the crank over the ratio entered
     * @param ratioCorrection share by which the mean ratio is larger than that
     */
    static BeltTrack of(SpeedTrack propeller, SpeedTrack crank, double ratioCorrection) {
        return new BeltTrack(propeller, new Scaled(crank, 1 / (1 + ratioCorrection)));
    }

    /**
     * Share by which the mean ratio of a dwell is larger than entered; 0 where it can't be told from none.
     *
     * @param crank speed of the crank over the ratio entered
     */
    static double ratioCorrection(Dwell propeller, Dwell crank) {
        double share = crank.propellerHz() / propeller.propellerHz() - 1;
        double error = Math.hypot(propeller.standardErrorHz(), crank.standardErrorHz()) / propeller.propellerHz();
        return Math.abs(share) > CERTAIN * error ? share : 0;
    }

    /** Standard deviation of the ratio through a dwell, as a share of it. */
    double wander(Dwell dwell) {
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < PLACES; i++) {
            double t = dwell.fromS() + (i + 0.5) * dwell.durationS() / PLACES;
            double apart = ofCrank.propellerHzAt(t) / ofPropeller.propellerHzAt(t) - 1;
            sum += apart;
            squares += apart * apart;
        }
        return Math.sqrt(Math.max(0, squares / PLACES - sum * sum / PLACES / PLACES));
    }

    @Override
    public double fromS() {
        return ofPropeller.fromS();
    }

    @Override
    public double toS() {
        return ofPropeller.toS();
    }

    @Override
    public double revolutionsAt(double timeS) {
        return ofPropeller.revolutionsAt(timeS);
    }

    @Override
    public double propellerHzAt(double timeS) {
        return ofPropeller.propellerHzAt(timeS);
    }
}
