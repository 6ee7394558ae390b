package evenblade.measure.speed;

/** Why the speed of a stretch isn't confirmed. */
public enum SpeedDoubt {
    NOTHING_STANDS("no line of this machine stands out of the noise"),
    ONLY_MAINS("all that stands out belongs to the mains hum"),
    ONE_LINE("only one line of this machine stands out, and one line fits many speeds"),
    ONE_SERIES("all lines that stand out are multiples of one, which any other machine may make"),
    ONE_SHAFT("only one shaft's lines stand out, and the other's would have to agree"),
    CHANCE("the lines of this machine agree no better than lines by chance would in this recording"),
    OTHER_SPEED("lines are explained as well by another speed"),
    OTHER_RATIO("the lines agree with another reduction ratio than the entered one"),
    OTHER_BLADES("the lines agree with another number of blades than the entered one"),
    NOTHING_DETECTED("no line is detected in any dwell at the speed that the search came to"),
    NEVER_STEADY("the throttle never stays where it is for 5 s");

    private final String words;

    SpeedDoubt(String words) {
        this.words = words;
    }

    /** One sentence without its full stop. */
    public String words() {
        return words;
    }
}
