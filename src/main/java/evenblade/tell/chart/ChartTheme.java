package evenblade.tell.chart;

/**
 * How all pictures look: their colours and the size of their text. Every distance in a picture is a
 * multiple of the text size.
 *
 * @param palette the colours
 * @param textPx height of ordinary text in pixels, at least 6
 * @param leastPx no text of many rows gets smaller than this, at least 6
 */
public record ChartTheme(Palette palette, double textPx, double leastPx) {
    /** Nobody can read less, on paper neither. */
    private static final double LEAST_PX = 6;

    /** A picture this many times as wide as its text is high prints at 8 points across a page of 170 mm. */
    private static final double TEXTS_PER_WIDTH = 60;

    private static final double TEXTS_PER_HEIGHT = 34; // rows of text that a picture holds

    public ChartTheme {
        if (!(textPx >= LEAST_PX && leastPx >= LEAST_PX)) {
            throw new IllegalArgumentException("text of " + textPx + " px can't be read; at least 6 is needed");
        }
    }

    /** With rows of text as small as can be read at all. */
    public ChartTheme(Palette palette, double textPx) {
        this(palette, textPx, LEAST_PX);
    }

    /** For a picture of that size in pixels that will be printed across a page. */
    public static ChartTheme forPage(int width, int height) {
        double textPx = Math.min(width / TEXTS_PER_WIDTH, height / TEXTS_PER_HEIGHT);
        return new ChartTheme(Palette.LIGHT, Math.max(LEAST_PX, textPx));
    }

    /** For a picture that is shown on a telephone, that many pixels wide: half as many letters on a line. */
    public static ChartTheme forPhone(int width) {
        return new ChartTheme(Palette.LIGHT, 2 * width / TEXTS_PER_WIDTH);
    }

    /** This text size in other colours. */
    public ChartTheme in(Palette other) {
        return new ChartTheme(other, textPx, leastPx);
    }
}
