package evenblade.judge.balance;

import evenblade.base.numeric.Phasor;
import java.util.List;

/**
 * How the readings of runs follow from V₀ (the line without weights) and α (what one g·mm adds to it): V = V₀ + α·W.
 * With a mark both parts of V are read, without one only |V|; then V₀ is laid along 0°.
 *
 * <p>Errors across V (variance {@code across}) lengthen it: the length read is √(|V|² + across) on average. It matters
 * where a weight nearly stills the line.
 */
enum LineModel {
    WITH_PHASE(2, 4),
    WITHOUT_PHASE(1, 3);

    /** Figures read in one run. */
    final int parts;
    /** Unknowns: the parts of V₀, then those of α. */
    final int unknowns;

    LineModel(int parts, int unknowns) {
        this.parts = parts;
        this.unknowns = unknowns;
    }

    Phasor atRest(double[] p) {
        return this == WITH_PHASE ? new Phasor(p[0], p[1]) : new Phasor(p[0], 0);
    }

    Phasor perGmm(double[] p) {
        return new Phasor(p[unknowns - 2], p[unknowns - 1]);
    }

    Phasor line(double[] p, WeightedReading run) {
        return atRest(p).plus(perGmm(p).times(run.weightGmm()));
    }

    /** What an error of the line does to the figures of a run. */
    double[] figures(Phasor error, Phasor line, double across) {
        if (this == WITH_PHASE) {
            return new double[] {error.re(), error.im()};
        }
        double size = length(line, across);
        return new double[] {size > 0 ? (line.re() * error.re() + line.im() * error.im()) / size : error.re()};
    }

    private static double length(Phasor line, double across) {
        return Math.sqrt(line.re() * line.re() + line.im() * line.im() + across);
    }

    /** Read less expected, run by run. */
    double[] rest(double[] p, List<WeightedReading> runs, double[] across) {
        double[] all = new double[parts * runs.size()];
        for (int i = 0; i < runs.size(); i++) {
            Phasor line = line(p, runs.get(i));
            if (this == WITH_PHASE) {
                Phasor rest = runs.get(i).vector().minus(line);
                all[2 * i] = rest.re();
                all[2 * i + 1] = rest.im();
            } else {
                all[i] = runs.get(i).amplitude() - length(line, across[i]);
            }
        }
        return all;
    }

    /** Change of the line of a run with every unknown. */
    List<Phasor> changes(WeightedReading run) {
        Phasor weight = run.weightGmm();
        Phasor turned = new Phasor(-weight.im(), weight.re());
        return this == WITH_PHASE
                ? List.of(new Phasor(1, 0), new Phasor(0, 1), weight, turned)
                : List.of(new Phasor(1, 0), weight, turned);
    }

    /** Change of every figure with every unknown. */
    double[][] slopes(double[] p, List<WeightedReading> runs, double[] across) {
        double[][] all = new double[parts * runs.size()][unknowns];
        for (int i = 0; i < runs.size(); i++) {
            Phasor line = line(p, runs.get(i));
            List<Phasor> changes = changes(runs.get(i));
            for (int k = 0; k < unknowns; k++) {
                double[] figures = figures(changes.get(k), line, across[i]);
                for (int part = 0; part < parts; part++) {
                    all[parts * i + part][k] = figures[part];
                }
            }
        }
        return all;
    }
}
