package evenblade.tell.document;

import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;

/** How fast a run was, and how sure that is, in words. */
public final class SpeedWords {
    private static final double SECONDS_PER_MINUTE = 60; // exact
    /** Smaller shares are shown in millionths: 0.1 % is the least that one decimal shows. */
    private static final double LEAST_SHOWN_IN_PER_CENT = 1e-3;

    private static final double PPM = 1e6; // exact

    private SpeedWords() {}

    /** Whether a speed is known, and from what: the first thing to say of a run. */
    public static String known(RunOrders run) {
        SpeedResult speed = run.speed();
        if (speed.main().isEmpty()) {
            return "Speed NOT FOUND, and none was entered: no order can be measured";
        }
        if (!speed.confirmed()) {
            return "Speed NOT CONFIRMED: nothing is measured";
        }
        return speed.origin() == SpeedResult.Origin.MARK
                ? "Speed CONFIRMED by the mark"
                : "Speed CONFIRMED by the signal";
    }

    /** Engine speed in the longest dwell with its 95 % interval and range, or as entered where nothing confirms it. */
    public static String engine(RunOrders run, Dwell main) {
        return speed(run, main, run.ratio());
    }

    /** Speed of the propeller. */
    public static String propeller(RunOrders run, Dwell main) {
        return speed(run, main, 1);
    }

    private static String speed(RunOrders run, Dwell main, double ratio) {
        if (!run.speed().confirmed()) {
            return FigureFormat.rpm(main.propellerRpm() * ratio) + " rpm as entered";
        }
        return FigureFormat.rpm(main, run.standardErrorHz(main), ratio) + " (95 %), from "
                + FigureFormat.rpm(SECONDS_PER_MINUTE * main.minHz() * ratio) + " to "
                + FigureFormat.rpm(SECONDS_PER_MINUTE * main.maxHz() * ratio);
    }

    /** What the error of a speed contains beside that of the signal: how large the clock's was taken. */
    static String clock(RunOrders run) {
        return "of the recording, taken as good to "
                + (run.clockShare() < LEAST_SHOWN_IN_PER_CENT
                        ? FigureFormat.fixed(PPM * run.clockShare(), 0) + " ppm"
                        : FigureFormat.fixed(100 * run.clockShare(), 1) + " %");
    }

    /** One dwell: {@code 0.0 to 6.1 s, engine 3982 rpm, propeller 1640 rpm}. */
    public static String dwell(RunOrders run, Dwell dwell) {
        return FigureFormat.fixed(dwell.fromS(), 1) + " to " + FigureFormat.fixed(dwell.toS(), 1) + " s, engine "
                + FigureFormat.fixed(dwell.propellerRpm() * run.ratio(), 1) + " rpm, propeller "
                + FigureFormat.fixed(dwell.propellerRpm(), 1) + " rpm"
                + (run.speed().confirmed() ? "" : " (NOT CONFIRMED)");
    }

    static String dwells(RunOrders run) {
        int dwells = run.speed().dwells().size();
        return dwells == 0 ? "no dwell" : FigureFormat.count(dwells, "dwell");
    }
}
