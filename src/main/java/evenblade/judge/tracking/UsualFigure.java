package evenblade.judge.tracking;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.machine.installation.Limit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A figure for the track that people use where the propeller maker's isn't at hand. Never the maker's.
 *
 * @param figure which one
 * @param measuredMm the number of the marks that it is held against
 * @param allowedMm the figure
 */
public record UsualFigure(Yardstick figure, double measuredMm, double allowedMm) {
    /** 1/16 in. */
    static final double ACCEPTED_MM = 25.4 / 16;

    /** 1/8 in. */
    static final double MOST_MM = 25.4 / 8;

    /** Which figure, and where it comes from. */
    public enum Yardstick implements Code {
        /** 1/16 in of spread is acceptable: common practice with ground-adjustable propellers, no published source. */
        ACCEPTED_IN_PRACTICE(Limit.Statistic.SPREAD, ACCEPTED_MM),
        /** 1/8 in of spread is the most: common practice, no published source. */
        MOST_IN_PRACTICE(Limit.Statistic.SPREAD, MOST_MM),
        /**
         * Each blade within 1/16 in of the opposite blade's track: FAA-H-8083-32, Aviation Maintenance Technician
         * Handbook – Powerplant, blade tracking (read in a public restatement). The maker's figure governs there too.
         */
        HANDBOOK_OPPOSITE_BLADE(Limit.Statistic.OPPOSITE_BLADE, ACCEPTED_MM);

        private final Limit.Statistic statistic;
        private final double mm;

        Yardstick(Limit.Statistic statistic, double mm) {
            this.statistic = statistic;
            this.mm = mm;
        }
    }

    /** Whether the marks keep to it; exactly on it counts as kept. */
    public boolean kept() {
        return measuredMm <= allowedMm * (1 + 1e-9); // so much may be rounding of inches to millimetres
    }

    /** Marks and figure, and whether they keep to it. */
    public Fact fact() {
        return Fact.of(
                figure,
                Measure.LENGTH.of(measuredMm / 1000),
                Fact.of(kept() ? TrackingFact.KEEPS_TO : TrackingFact.IS_MORE_THAN),
                Measure.LENGTH.of(allowedMm / 1000));
    }

    /** The figures that these marks can be held against. */
    public static List<UsualFigure> of(TrackingSession session) {
        List<UsualFigure> figures = new ArrayList<>();
        for (Yardstick figure : Yardstick.values()) {
            OptionalDouble measured = MarkStatistics.measure(figure.statistic, session.marksMm());
            measured.ifPresent(mm -> figures.add(new UsualFigure(figure, mm, figure.mm)));
        }
        return figures;
    }
}
