package evenblade.tell.chart;

import java.awt.Color;

/**
 * The colours of all pictures, for paper and for a dark screen.
 *
 * <p>Chosen so that inks which stand side by side stay apart for people who don't see red, green or
 * blue well, and so that each stands out from the paper by at least 3 to 1. Colour never tells a
 * thing alone: marks differ in shape and dash too.
 */
public enum Palette {
    LIGHT {
        @Override
        public Color of(Ink ink) {
            return switch (ink) {
                case PAPER -> new Color(0xFFFFFF);
                case TEXT -> new Color(0x1D2327);
                case QUIET_TEXT -> new Color(0x56616B);
                case GRID -> new Color(0xDDE2E6);
                case PROPELLER -> new Color(0x0B5FA8);
                case CRANK -> new Color(0xC25E00);
                case BOTH -> new Color(0x4A1942);
                case OTHER -> new Color(0x3F8F7B);
                case BEFORE -> new Color(0x9A6B1E);
                case AFTER -> new Color(0x7A1FD6);
                case SHADE -> new Color(0xE9F0F4);
                case LIMIT -> new Color(0x8E1B3A);
            };
        }
    },
    DARK {
        @Override
        public Color of(Ink ink) {
            return switch (ink) {
                case PAPER -> new Color(0x14191E);
                case TEXT -> new Color(0xE8ECEF);
                case QUIET_TEXT -> new Color(0x9DA9B3);
                case GRID -> new Color(0x2E3840);
                case PROPELLER -> new Color(0x58ACF0);
                case CRANK -> new Color(0xE8963A);
                case BOTH -> new Color(0xF2D6F7);
                case OTHER -> new Color(0x2F8C79);
                case BEFORE -> new Color(0xE3BB6B);
                case AFTER -> new Color(0x9A6BFF);
                case SHADE -> new Color(0x222C35);
                case LIMIT -> new Color(0xF08BA0);
            };
        }
    };

    /** The colour for one use. */
    public abstract Color of(Ink ink);

    /** The colour thinned towards the paper, for what is there but doesn't stand out. */
    public Color pale(Ink ink) {
        return blend(of(ink), of(Ink.PAPER), 0.5);
    }

    private static Color blend(Color a, Color b, double shareOfB) {
        return new Color(
                mix(a.getRed(), b.getRed(), shareOfB),
                mix(a.getGreen(), b.getGreen(), shareOfB),
                mix(a.getBlue(), b.getBlue(), shareOfB));
    }

    private static int mix(int a, int b, double shareOfB) {
        return (int) Math.round(a + (b - a) * shareOfB);
    }
}
