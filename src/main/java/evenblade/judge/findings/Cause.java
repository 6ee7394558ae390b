package evenblade.judge.findings;

import evenblade.base.fact.Code;

/** What may be behind the shaking. */
public enum Cause implements Code {
    MASS("mass"),
    TRACK("track"),
    PITCH("pitch"),
    FLANGE("hub-or-flange"),
    WEAK_CYLINDER("weak-cylinder"),
    CRANK("crank"),
    CARBURETTORS("carburettors"),
    DRIVE("drive"),
    BLADE("one-blade"),
    RESONANCE("resonance"),
    LOOSE_MOUNT("loose-mount"),
    RECORDING("recording"),
    INSEPARABLE("inseparable-lines"),
    THROB("slow-throb"),
    UNTOLD("untold"),
    NOTHING("nothing");

    private final String word;

    Cause(String word) {
        this.word = word;
    }

    /** As written in JSON. */
    @Override
    public String word() {
        return word;
    }
}
