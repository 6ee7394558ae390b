package evenblade.face.app;

import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import java.util.Locale;

/** Figures with no more digits than their error leaves meaning, so that every face shows the same. */
public final class FigureText {
    private static final int MOST_DECIMALS = 9;
    /** Half the width of a 95 % interval in standard errors. */
    private static final double NINETY_FIVE = 1.96;

    private FigureText() {}

    /** Decimals that show two figures of the error. */
    public static int decimals(double error) {
        if (!(error > 0) || Double.isInfinite(error)) {
            return 3;
        }
        int lead = (int) Math.floor(Math.log10(error));
        return Math.max(0, Math.min(MOST_DECIMALS, 1 - lead));
    }

    /** With that many decimals. */
    public static String fixed(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    /** Four figures, without a power of ten unless it is very small. */
    public static String plain(double value) {
        return fixed(value, decimals(Math.abs(value) / 100));
    }

    /** A dwell's engine speed with its 95 % interval and range. */
    public static String engineRpm(Dwell dwell, RunOrders run) {
        return rpm(dwell, run, run.ratio());
    }

    /** A dwell's propeller speed with its 95 % interval and range. */
    public static String propellerRpm(Dwell dwell, RunOrders run) {
        return rpm(dwell, run, 1);
    }

    private static String rpm(Dwell dwell, RunOrders run, double factor) {
        double error = NINETY_FIVE * 60 * run.standardErrorHz(dwell) * factor;
        int decimals = Math.min(4, decimals(error));
        return String.format(
                Locale.ROOT,
                "%s ± %s rpm (95 %%), from %.0f to %.0f",
                fixed(60 * dwell.propellerHz() * factor, decimals),
                fixed(error, decimals),
                60 * dwell.minHz() * factor,
                60 * dwell.maxHz() * factor);
    }
}
