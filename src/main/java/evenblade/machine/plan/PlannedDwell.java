package evenblade.machine.plan;

import evenblade.machine.installation.Beat;
import java.util.List;

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
}
