package evenblade.keep.practice;

/** Directions in which a sensor on the engine feels it shake. */
public enum SensorAxis {
    ALONG("along shaft"),
    ACROSS("across, level"),
    UP("across, upright");

    private final String word;

    SensorAxis(String word) {
        this.word = word;
    }

    /** As written in column headers and truth files. */
    public String word() {
        return word;
    }
}
