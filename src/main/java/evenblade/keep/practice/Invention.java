package evenblade.keep.practice;

/** The words that mark everything made here as invented. */
public final class Invention {
    /** Stands in every file; plain ASCII, so that it fits the comment of a WAV file. */
    public static final String NOTE =
            "INVENTED for practice: computed by Evenblade, nothing here was measured on a real machine.";

    private Invention() {}
}
