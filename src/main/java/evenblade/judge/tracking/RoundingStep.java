package evenblade.judge.tracking;

import evenblade.base.units.Length;
import java.util.List;

/**
 * The step to which marks were read, as the readings themselves show it: the coarsest usual division of a rule, in
 * millimetres or in fractions of an inch, of which every reading is a whole multiple. A reading rounded to a step q is
 * off by anything up to q/2 either way, evenly, which has the standard deviation q/√12.
 */
final class RoundingStep {
    private static final double MM_PER_INCH = 25.4; // exact by definition

    /** Divisions in use, coarsest first, in mm. Coarser ones are tried only where many readings show them. */
    private static final List<Double> DIVISIONS = List.of(
            MM_PER_INCH / 8,
            MM_PER_INCH / 16,
            1.0,
            MM_PER_INCH / 32,
            0.5,
            MM_PER_INCH / 64,
            MM_PER_INCH / 100,
            0.2,
            0.1,
            MM_PER_INCH / 1000,
            0.02,
            0.01);

    /** Coarser than this, few readings fall on the same step by chance too easily. */
    private static final double COARSE_MM = MM_PER_INCH / 16;

    /** So many readings off zero must fall on a coarse step: by chance half of each would, (1/2)⁴ = 6 %. */
    private static final int SHOWN_BY = 4;

    /** Share of a step by which typed decimals may miss it. */
    private static final double EXACT = 1e-4;

    private RoundingStep() {}

    /** The step in mm; 0 where none is seen. */
    static double seenMm(List<TrackingSession> sessions) {
        List<Double> offZero = sessions.stream()
                .flatMap(s -> s.readings().stream())
                .flatMap(List::stream)
                .map(Length::millimetres)
                .filter(mm -> mm != 0)
                .toList();
        if (offZero.isEmpty()) {
            return 0;
        }
        return DIVISIONS.stream()
                .filter(step -> step <= COARSE_MM || offZero.size() >= SHOWN_BY)
                .filter(step -> offZero.stream().allMatch(mm -> Math.abs(mm / step - Math.rint(mm / step)) < EXACT))
                .findFirst()
                .orElse(0.0);
    }

    /** Standard deviation in mm of one reading of a session: the pencil's and the rounding's together. */
    static double readingErrorMm(TrackingSession session, double stepMm) {
        // A reading lies anywhere within its step: an even distribution of width w has the deviation w/√12.
        return Math.hypot(session.sigma().millimetres(), stepMm / Math.sqrt(12));
    }
}
