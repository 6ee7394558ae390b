package evenblade.judge.findings;

/** Which way a channel feels, against the propeller shaft. */
public enum Direction {
    ALONG("along"),
    /** Across the shaft, level. */
    ACROSS("across"),
    /** Across the shaft, upright. */
    UP("up"),
    UNKNOWN("in a direction not named");

    private final String word;

    Direction(String word) {
        this.word = word;
    }

    /** As said in a sentence. */
    public String word() {
        return word;
    }

    /** Whether it lies across the shaft, level or upright. */
    public boolean acrossShaft() {
        return this == ACROSS || this == UP;
    }
}
