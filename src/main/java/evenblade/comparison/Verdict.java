package evenblade.comparison;

/** What a change comes to. */
public enum Verdict {
    LOWER("lower"),
    HIGHER("higher"),
    NO_CHANGE_SHOWN("no-change-shown");

    private final String word;

    Verdict(String word) {
        this.word = word;
    }

    /** As written in JSON. */
    public String word() {
        return word;
    }
}
