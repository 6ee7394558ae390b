package evenblade.measure.speed;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The hum of the mains in a stretch: lines that stand still at multiples of one frequency near 50 or 60 Hz. The grid's own
 * frequency is taken from all its harmonics together, so that a machine's line beside one isn't taken for hum.
 */
public final class MainsSeries {
    private static final double[] NOMINAL_HZ = {50, 60}; // the two mains of the world
    /** A supply strays no further in ordinary times (common practice, no source). */
    private static final double STRAY_HZ = 0.25;

    private static final double SEARCH_STEP_HZ = 0.01; // ours: the twentieth harmonic moves by a fifth of a hertz
    private static final int HIGHEST = 20; // ours: 1000 Hz, the end of what is looked at
    /** Hum that shows in one line shows in the first or the second: nothing else rectifies or magnetises alone. */
    private static final double ALONE_UP_TO_HZ = 121;

    /** Share of a resolution within which a peak lies of its place. */
    private static final double PLACED = 0.2;

    /** Ours: hum comes to 1.0 and less, runs whose speed wanders by a tenth of a percent and more to 1.1 and more. */
    private static final double CLEARER = 1.05;

    private MainsSeries() {}

    /**
     * Hum in a stretch.
     *
     * @param hz its frequencies: all multiples of the grid's where two of them stand, else the one that does; none where no
     *     series stands
     * @param seenHz lines that stand there
     */
    record Hum(double[] hz, double[] seenHz) {
        private static final Hum NONE = new Hum(new double[0], new double[0]);
    }

    /**
     * Looks for hum.
     *
     * @param standing spectrum of the stretch at constant frequencies
     * @param along spectrum of the same stretch along the machine's path: what gains by it moves with the machine
     */
    static Hum in(WhitenedLines standing, WhitenedLines along) {
        Fit fit = fit(standing.peaksHz(), PLACED * standing.resolutionHz());
        if (movesWith(along, standing, fit.linesHz())) {
            return Hum.NONE;
        }
        return fit.linesHz().length > 1
                ? new Hum(
                        IntStream.rangeClosed(1, HIGHEST)
                                .mapToDouble(k -> k * fit.gridHz())
                                .toArray(),
                        fit.linesHz())
                : new Hum(fit.alone(), fit.alone());
    }

    /**
     * Those of some lines that stand at multiples of one frequency that a grid may have: two or more, or a single low one.
     *
     * @param linesHz lines that don't move with a machine's speed
     * @param reachHz how far from its place a line may lie
     */
    public static double[] among(double[] linesHz, double reachHz) {
        Fit fit = fit(linesHz, reachHz);
        return fit.linesHz().length > 1 ? fit.linesHz() : fit.alone();
    }

    /** The grid's frequency that most lines fit, and those lines. */
    private record Fit(double gridHz, double[] linesHz) {
        double[] alone() {
            return Arrays.stream(linesHz).filter(hz -> hz < ALONE_UP_TO_HZ).toArray();
        }
    }

    private static Fit fit(double[] peaksHz, double reachHz) {
        Fit best = new Fit(0, new double[0]);
        for (double nominal : NOMINAL_HZ) {
            for (double hz = nominal - STRAY_HZ; hz <= nominal + STRAY_HZ; hz += SEARCH_STEP_HZ) {
                double grid = hz;
                double[] fitting = Arrays.stream(peaksHz)
                        .filter(peak -> isHarmonic(peak, grid, reachHz))
                        .toArray();
                if (fitting.length > best.linesHz().length) {
                    best = new Fit(grid, fitting);
                }
            }
        }
        return best;
    }

    /** Whether lines are clearer along the path than at constant frequencies: no grid follows the throttle. */
    private static boolean movesWith(WhitenedLines along, WhitenedLines standing, double[] lines) {
        double followed = Arrays.stream(lines)
                .map(hz -> along.mostEvidence(hz, along.resolutionHz()))
                .sum();
        double still = Arrays.stream(lines)
                .map(hz -> standing.mostEvidence(hz, standing.resolutionHz()))
                .sum();
        return followed > CLEARER * still;
    }

    private static boolean isHarmonic(double peakHz, double gridHz, double reachHz) {
        double multiple = Math.rint(peakHz / gridHz);
        return multiple >= 1 && multiple <= HIGHEST && Math.abs(peakHz - multiple * gridHz) < reachHz;
    }
}
