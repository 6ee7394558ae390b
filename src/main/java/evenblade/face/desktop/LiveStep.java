package evenblade.face.desktop;

/** The steps of a ground run in the window, in the order of their doing; any of them may be gone to at any time. */
enum LiveStep {
    INPUT("Input and scale", "live input step"),
    QUIET("Quiet take", "quiet take"),
    LEVEL("Level", "listen"),
    RECORD("Record", "record"),
    RESULT("Result", "live result");

    private final String words;
    private final String button;

    LiveStep(String words, String button) {
        this.words = words;
        this.button = button;
    }

    /** What it is called on its button. */
    String words() {
        return words;
    }

    /** Name of its button, for hands that look for it. */
    String button() {
        return button;
    }
}
