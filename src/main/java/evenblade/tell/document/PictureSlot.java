package evenblade.tell.document;

/**
 * Which picture belongs at a place in a document.
 *
 * @param shows what is drawn
 * @param index which of several: of tracking sessions, or of stretches without a change; 0 where there is one
 */
public record PictureSlot(Shows shows, int index) {
    /** What is drawn. */
    public enum Shows {
        /** Of one run: bars, spectrum, waterfall, speed. */
        RUN,
        /** Of two runs: bars and spectra over each other. */
        COMPARISON,
        /** Tip marks of one session. */
        TIPS,
        /** What goes with each blade and each hub position. */
        DEVIATIONS,
        /** Propeller 1× against track. */
        TIE
    }

    public static PictureSlot of(Shows shows) {
        return new PictureSlot(shows, 0);
    }
}
