package evenblade.machine.plan;

import evenblade.machine.installation.Beat;
import evenblade.machine.installation.OrderLine;
import java.util.List;
import java.util.Optional;

/**
 * One speed to hold.
 *
 * @param engineRpm engine speed
 * @param propellerRpm propeller speed
 * @param lengthS how long to hold it
 * @param lines every line of the order table, in its order
 * @param close what lies near each other at this speed
 */
public record PlannedDwell(
        double engineRpm, double propellerRpm, double lengthS, List<PlannedLine> lines, List<ClosePair> close) {
    public PlannedDwell {
        lines = List.copyOf(lines);
        close = List.copyOf(close);
    }

    /** Slow throbs between lines that are strong on most machines. */
    public List<Beat> beats() {
        return Beat.among(
                lines.stream()
                        .map(PlannedLine::line)
                        .filter(Beat::usuallyStrong)
                        .toList(),
                propellerHz());
    }

    /** Propeller revolutions per second. */
    public double propellerHz() {
        return propellerRpm / 60;
    }

    /**
     * Where one line lies at a dwell.
     *
     * @param line the line
     * @param frequencyHz its frequency
     * @param fold where a sensor too slow for it would show it; empty where it is seen as it is
     */
    public record PlannedLine(OrderLine line, double frequencyHz, Optional<Fold> fold) {
        /**
         * Where a line beyond range turns up.
         *
         * @param toHz the false frequency, |f − round(f/fs)·fs|
         * @param near names of lines in range that it would be taken for
         */
        public record Fold(double toHz, List<String> near) {
            public Fold {
                near = List.copyOf(near);
            }
        }
    }

    /**
     * Two places that are near each other but not the same: a run long enough splits them, once the
     * wander of the speed is taken out.
     *
     * @param lower the lower one
     * @param upper the upper one
     * @param apartHz their distance at the dwell's speed, above zero
     */
    public record ClosePair(Place lower, Place upper, double apartHz) {
        /** A run of this many periods of the difference splits two lines (a rule of thumb, no source). */
        static final double PERIODS_TO_SPLIT = 1.5;

        /** Lines nearer than this share of their frequency run into one where speed wanders by ± 1 %. */
        static final double WANDER_SHARE = 0.02;

        /** Lines that need a run longer than this, in seconds, are near whatever their frequency. */
        static final double SHORT_RUN_S = 1;

        /** How long the dwell must last to split them: 1.5 / |Δf| seconds. */
        public double splitAfterS() {
            return PERIODS_TO_SPLIT / apartHz;
        }

        /** Whether the distance is worth a word. */
        boolean near() {
            double share = (upper.propellerOrder() - lower.propellerOrder()) / upper.propellerOrder();
            return share <= WANDER_SHARE || splitAfterS() > SHORT_RUN_S;
        }
    }
}
