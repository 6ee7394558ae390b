package evenblade.tell.chart;

import java.awt.Color;

/** CIE 1976 L*a*b* of a colour under daylight D65 (IEC 61966-2-1 for sRGB; coefficients from memory). */
record Lab(double lightness, double a, double b) {
    static double[] linear(Color colour) {
        return new double[] {linear(colour.getRed()), linear(colour.getGreen()), linear(colour.getBlue())};
    }

    static double luminance(Color colour) {
        double[] rgb = linear(colour);
        return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
    }

    static Lab of(double[] rgb) {
        double x = root((0.4124564 * rgb[0] + 0.3575761 * rgb[1] + 0.1804375 * rgb[2]) / 0.95047);
        double y = root(0.2126729 * rgb[0] + 0.7151522 * rgb[1] + 0.0721750 * rgb[2]);
        double z = root((0.0193339 * rgb[0] + 0.1191920 * rgb[1] + 0.9503041 * rgb[2]) / 1.08883);
        return new Lab(116 * y - 16, 500 * (x - y), 200 * (y - z));
    }

    static double difference(double[] first, double[] second) {
        Lab p = of(first);
        Lab q = of(second);
        return Math.sqrt(Math.pow(p.lightness - q.lightness, 2) + Math.pow(p.a - q.a, 2) + Math.pow(p.b - q.b, 2));
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static double root(double t) {
        return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }
}
