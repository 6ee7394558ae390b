package evenblade.judge.findings;

/** What may be behind the shaking. */
public enum Cause {
    MASS("mass", "a mass imbalance of the propeller"),
    TRACK("track", "a blade out of track"),
    PITCH("pitch", "a blade out of pitch"),
    FLANGE("hub-or-flange", "the hub or the flange"),
    WEAK_CYLINDER("weak-cylinder", "a weak cylinder"),
    CRANK("crank", "a mass imbalance of crank or flywheel"),
    CARBURETTORS("carburettors", "carburettors out of step"),
    DRIVE("drive", "the reduction drive"),
    RESONANCE("resonance", "a resonance on the mounts"),
    LOOSE_MOUNT("loose-mount", "a loose mount"),
    RECORDING("recording", "trouble with sensor or recording"),
    INSEPARABLE("inseparable-lines", "lines that can't be told apart"),
    UNTOLD("untold", "something that nothing measured yet tells"),
    NOTHING("nothing", "nothing that stands out");

    private final String word;
    private final String phrase;

    Cause(String word, String phrase) {
        this.word = word;
        this.phrase = phrase;
    }

    /** As written in JSON. */
    public String word() {
        return word;
    }

    /** As said in a sentence. */
    public String phrase() {
        return phrase;
    }
}
