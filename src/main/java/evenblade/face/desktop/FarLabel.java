package evenblade.face.desktop;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.font.FontRenderContext;
import javax.swing.JLabel;

/** Words to be read from afar: as large as wanted, smaller only where they would be cut off otherwise. */
final class FarLabel extends JLabel {
    /** From the other seat of a cockpit, or from beside a wing; ours. */
    private static final double READ_AT_MM = 2000;
    /** Across a screen of 14 inches, the smallest that a run should be led by; ours. */
    private static final double SCREEN_MM = 14 * 25.4;
    /** A window flatter than this isn't a whole screen, and its width says nothing about its letters. */
    private static final double FLATTEST = 2;
    /** Nobody has to read smaller letters than this. */
    private static final float LEAST_PX = 11;

    private static final int PER_DEGREE = 60; // minutes of arc
    private static final FontRenderContext FINE = new FontRenderContext(null, true, true);

    private float wantedPx;

    FarLabel(String text, int style) {
        super(text);
        setFont(getFont().deriveFont(style));
    }

    /**
     * How high a figure is that is seen under so many minutes of arc from two metres, in points of a window that fills a
     * screen of 14 inches: the same share of the diagonal, however many points that screen has.
     */
    static double figurePx(Dimension window, double minutes) {
        double height = READ_AT_MM * Math.tan(Math.toRadians(minutes / PER_DEGREE));
        double across = Math.hypot(Math.min(window.width, FLATTEST * window.height), window.height);
        return across * height / SCREEN_MM;
    }

    /** Makes figures so high, where there is room for the words. */
    void figures(double heightPx) {
        Font font = getFont();
        double share = font.createGlyphVector(FINE, "1").getVisualBounds().getHeight() / font.getSize2D();
        wantedPx = (float) Math.max(LEAST_PX, Math.ceil(heightPx / share));
        fit();
    }

    /** The room that words take at the size that is wanted. */
    Dimension room(String words) {
        java.awt.FontMetrics letters = getFontMetrics(getFont().deriveFont(wantedPx));
        return new Dimension(letters.stringWidth(words), letters.getHeight());
    }

    @Override
    public void setText(String text) {
        if (!text.equals(getText())) {
            super.setText(text);
            fit();
        }
    }

    @Override
    public void setBounds(int x, int y, int width, int height) {
        super.setBounds(x, y, width, height);
        fit();
    }

    private int width(float px) {
        return getFontMetrics(getFont().deriveFont(px)).stringWidth(getText());
    }

    private void fit() {
        if (wantedPx == 0) {
            return;
        }
        float px = wantedPx;
        while (getWidth() > 0 && px > LEAST_PX && width(px) > getWidth()) {
            px--;
        }
        if (px != getFont().getSize2D()) {
            setFont(getFont().deriveFont(px));
        }
    }
}
