package evenblade.judge.comparison;

/** What a change comes to. */
public enum ChangeVerdict {
    LOWER("lower"),
    HIGHER("higher"),
    NO_CHANGE_SHOWN("no-change-shown");

    private final String word;

    ChangeVerdict(String word) {
        this.word = word;
    }

    /** As written in JSON. */
    public String word() {
        return word;
    }
}
