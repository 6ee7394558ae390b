package evenblade.measure.soundcheck;

/** Where the level of an input should be set while the engine runs at the highest dwell speed. Own limits. */
public enum LevelAim {
    /** Nothing at all comes in. */
    SILENT,
    /** So low that noise counts. */
    TURN_UP,
    /** Between {@value #LOW_DB} and {@value #HIGH_DB} dB. */
    GOOD,
    /** So high that a louder moment would clip. */
    TURN_DOWN,
    /** Tops are flat below full scale: turning down makes them smaller, and as flat. */
    OVERDRIVEN;

    private static final double SILENT_DB = -90; // below any microphone's own noise
    /** Lower end of the good zone. */
    public static final double LOW_DB = -20;
    /** Upper end of the good zone. */
    public static final double HIGH_DB = -6;

    /** Judges the highest peak of the last seconds, and whether tops are flat below full scale, which goes before it. */
    public static LevelAim of(double peakDb, boolean flatBelowFullScale) {
        return flatBelowFullScale ? OVERDRIVEN : of(peakDb);
    }

    /**
     * Judges the highest peak of the last seconds.
     *
     * @param peakDb 0 for a sine that just reaches full scale
     */
    private static LevelAim of(double peakDb) {
        if (peakDb <= SILENT_DB) {
            return SILENT;
        }
        if (peakDb < LOW_DB) {
            return TURN_UP;
        }
        return peakDb > HIGH_DB ? TURN_DOWN : GOOD;
    }
}
