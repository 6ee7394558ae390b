package evenblade.measure.soundcheck;

/** Where the level of an input should be set while the engine runs at the highest dwell speed. Own limits. */
public enum LevelAim {
    /** Nothing at all comes in. */
    SILENT("silent"),
    /** So low that noise counts. */
    TURN_UP("turn up"),
    /** Between {@value #LOW_DB} and {@value #HIGH_DB} dB. */
    GOOD("good"),
    /** So high that a louder moment would clip. */
    TURN_DOWN("turn down");

    private static final double SILENT_DB = -90; // below any microphone's own noise
    /** Lower end of the good zone. */
    public static final double LOW_DB = -20;
    /** Upper end of the good zone. */
    public static final double HIGH_DB = -6;

    private final String words;

    LevelAim(String words) {
        this.words = words;
    }

    /** What to do, in few letters. */
    public String words() {
        return words;
    }

    /**
     * Judges the highest peak of the last seconds.
     *
     * @param peakDb 0 for a sine that just reaches full scale
     */
    public static LevelAim of(double peakDb) {
        if (peakDb <= SILENT_DB) {
            return SILENT;
        }
        if (peakDb < LOW_DB) {
            return TURN_UP;
        }
        return peakDb > HIGH_DB ? TURN_DOWN : GOOD;
    }
}
