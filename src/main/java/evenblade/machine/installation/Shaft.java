package evenblade.machine.installation;

/** The shaft an order is counted on. */
public enum Shaft {
    PROPELLER("propeller"),
    CRANK("crank");

    private final String word;

    Shaft(String word) {
        this.word = word;
    }

    /** As written in JSON. */
    public String word() {
        return word;
    }
}
