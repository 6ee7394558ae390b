package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;

/** How amplitudes are laid out on an axis. */
public enum AmplitudeScale {
    /** From zero: twice as high is twice as much. */
    LINEAR {
        @Override
        Axis axis(String title, double smallest, double largest) {
            return Axis.fromZero(title, 1.05 * largest);
        }
    },
    /** In decades: weak lines can be seen beside strong ones. */
    DECADES {
        @Override
        Axis axis(String title, double smallest, double largest) {
            return largest > 0
                    ? Axis.decades(title, Math.max(smallest, 1e-5 * largest), 1.3 * largest, MOST_DECADES)
                    : Axis.fromZero(title, largest);
        }
    };

    private static final int MOST_DECADES = 5; // 100 dB, more than any sensor spans

    abstract Axis axis(String title, double smallest, double largest);

    /** The title of an amplitude axis, with what is known of the unit. */
    static String title(SignalUnit unit) {
        return switch (unit) {
            case FULL_SCALE -> "amplitude, peak (share of full scale)";
            case UNSTATED -> "amplitude, peak (unit not stated)";
            default -> quantity(unit) + ", peak (" + unit.display() + ")";
        };
    }

    /** The title of an axis of momentary values. */
    static String momentTitle(SignalUnit unit) {
        return switch (unit) {
            case FULL_SCALE -> "signal (share of full scale)";
            case UNSTATED -> "signal (unit not stated)";
            default -> quantity(unit) + " (" + unit.display() + ")";
        };
    }

    private static String quantity(SignalUnit unit) {
        return switch (unit.quantity()) {
            case ACCELERATION -> "acceleration";
            case VELOCITY -> "velocity";
            case VOLTAGE -> "voltage";
            case UNCALIBRATED -> "amplitude";
        };
    }
}
