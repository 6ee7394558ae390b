package evenblade.judge.comparison;

import evenblade.base.fact.Warning;
import evenblade.base.units.SignalUnit;
import java.util.List;
import java.util.Optional;

/**
 * One channel over all runs of a job that were measured alike.
 *
 * @param channel its name
 * @param unit of the amplitudes
 * @param basis what can be compared
 * @param runs all runs of the job, in order of time
 * @param speeds by dwell speed, slowest first
 * @param warnings what to keep in mind
 */
public record Trend(
        String channel,
        SignalUnit unit,
        Basis basis,
        List<RunEntry> runs,
        List<SpeedGroup> speeds,
        List<Warning> warnings) {
    public Trend {
        runs = List.copyOf(runs);
        speeds = List.copyOf(speeds);
        warnings = List.copyOf(warnings);
    }

    /**
     * A run of the job.
     *
     * @param name of the run
     * @param changesBefore what was changed since the run before it
     * @param leftOut why it isn't part of the trend; empty where it is
     */
    public record RunEntry(String name, List<String> changesBefore, List<Warning> leftOut) {
        public RunEntry {
            changesBefore = List.copyOf(changesBefore);
            leftOut = List.copyOf(leftOut);
        }
    }

    /**
     * All dwells at one speed.
     *
     * @param engineRpm of the first of them
     * @param lines one per figure
     * @param without names of the runs that have no dwell at this speed
     */
    public record SpeedGroup(double engineRpm, List<FigureLine> lines, List<String> without) {
        public SpeedGroup {
            lines = List.copyOf(lines);
            without = List.copyOf(without);
        }
    }

    /**
     * One figure over the runs.
     *
     * @param figure which
     * @param points in order of time
     */
    public record FigureLine(Figure figure, List<Point> points) {
        public FigureLine {
            points = List.copyOf(points);
        }
    }

    /**
     * One run's figure.
     *
     * @param run its name
     * @param engineRpm of its dwell
     * @param value as measured, in the trend's unit
     * @param ciLow lower end of the 95 % interval, within-run error and run-to-run scatter together; 0 where
     *     noise hides the figure
     * @param ciHigh upper end
     * @param sinceLast change from the run before it; empty for the first
     * @param sinceFirst change from the first; empty for the first
     */
    public record Point(
            String run,
            double engineRpm,
            ComparedValue value,
            double ciLow,
            double ciHigh,
            Optional<Change> sinceLast,
            Optional<Change> sinceFirst) {}
}
