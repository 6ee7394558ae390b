package evenblade.tell.chart;

import java.awt.Color;

/**
 * Colours for levels, from weak to strong, in even steps of perceived lightness, so that no level
 * looks like an edge that isn't there, and grey print keeps the order. The hue goes from blue to
 * yellow, the one pair that people with either red-green weakness tell apart.
 *
 * <p>Computed in the Oklab space (Ottosson 2020, from memory), where lightness is one coordinate. On paper weak
 * is light and strong is dark, like ink; on a dark screen it is the other way round.
 */
record ColourRamp(boolean strongIsDark) {
    private static final double DARKEST = 0.25; // lettering stays readable on it
    private static final double LIGHTEST = 0.985; // just seen against white paper

    static ColourRamp of(Palette palette) {
        return new ColourRamp(palette == Palette.LIGHT);
    }

    /** The colour of a level, 0 weakest to 1 strongest; levels beyond take the end's colour. */
    Color at(double level) {
        double held = Math.min(1, Math.max(0, level));
        double light = strongIsDark ? 1 - held : held;
        double lightness = DARKEST + (LIGHTEST - DARKEST) * light;
        // From indigo over a greyed green and straw to near white.
        double turn = Math.sin(Math.PI * light);
        double a = 0.035 * (1 - light) - 0.055 * turn - 0.004 * light;
        double b = -0.125 * (1 - light) + 0.075 * turn * light + 0.025 * light;
        return oklab(lightness, a, b);
    }

    /** Its colours in so many even steps that the eye sees none, as {@link Color#getRGB}. */
    int[] steps() {
        int[] colours = new int[256];
        java.util.Arrays.setAll(colours, i -> at(i / (colours.length - 1.0)).getRGB());
        return colours;
    }

    private static Color oklab(double lightness, double a, double b) {
        double l = cube(lightness + 0.3963377774 * a + 0.2158037573 * b);
        double m = cube(lightness - 0.1055613458 * a - 0.0638541728 * b);
        double s = cube(lightness - 0.0894841775 * a - 1.2914855480 * b);
        return new Color(
                channel(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
                channel(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
                channel(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s));
    }

    private static double cube(double x) {
        return x * x * x;
    }

    /** From linear light to an sRGB channel (IEC 61966-2-1). */
    private static int channel(double linear) {
        double held = Math.min(1, Math.max(0, linear));
        double coded = held <= 0.0031308 ? 12.92 * held : 1.055 * Math.pow(held, 1 / 2.4) - 0.055;
        return (int) Math.round(255 * coded);
    }
}
