package evenblade.tell.chart;

/** Whose line a mark stands for; each kind has its own colour, shape and dash. */
public enum MarkKind {
    PROPELLER(Ink.PROPELLER, Glyph.TRIANGLE, Dash.SOLID, "propeller order"),
    CRANK(Ink.CRANK, Glyph.SQUARE, Dash.LONG, "crank order"),
    BOTH(Ink.BOTH, Glyph.DIAMOND, Dash.LONG_SHORT, "both on one line"),
    OTHER(Ink.OTHER, Glyph.CROSS, Dash.DOTS, "no order explains it"),
    /** Where no order was looked for. */
    STEADY(Ink.OTHER, Glyph.CROSS, Dash.DOTS, "steady line");

    private final Ink ink;
    private final Glyph glyph;
    private final Dash dash;
    private final String words;

    MarkKind(Ink ink, Glyph glyph, Dash dash, String words) {
        this.ink = ink;
        this.glyph = glyph;
        this.dash = dash;
        this.words = words;
    }

    /** Whether it is an order of a shaft, which moves with the speed. */
    boolean order() {
        return this == PROPELLER || this == CRANK || this == BOTH;
    }

    public Ink ink() {
        return ink;
    }

    Glyph glyph() {
        return glyph;
    }

    Dash dash() {
        return dash;
    }

    /** As written in a picture's key. */
    public String words() {
        return words;
    }
}
