package evenblade.measure.orders;

import evenblade.input.recording.Recording;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Lines above the range that fold down into it at the file's own rate: those that can be fitted along,
 * so that they disturb neither the orders nor the search for other lines, and those that lie on a line
 * of the table and can't be told from it.
 *
 * @param along to fit along
 * @param hiddenUnder the lines that lie on each fitted line, by its place among them
 */
record FoldedLines(List<FittedLine> along, Map<Integer, List<OrderLine>> hiddenUnder) {
    /** Two columns that agree to more than this are taken for one. */
    private static final double SAME = 0.9;

    private static final int SAMPLES_LOOKED_AT = 4000; // ours: enough for a share

    FoldedLines {
        along = List.copyOf(along);
        hiddenUnder = Map.copyOf(hiddenUnder);
    }

    /**
     * Looks for them.
     *
     * @param fitting the recording fitted; where it was brought down from a higher rate nothing folds
     * @param lines those fitted
     * @param upToHz highest frequency measured
     */
    static FoldedLines of(
            Recording fitting,
            OrderTable table,
            SpeedResult speed,
            Dwell dwell,
            List<FittedLine> lines,
            double upToHz) {
        double rate = fitting.source().sampleRateHz();
        List<FittedLine> along = new ArrayList<>();
        Map<Integer, List<OrderLine>> hidden = new TreeMap<>();
        // Brought down to a lower rate than the file's: the filter before that took what could fold.
        if (fitting.time().rateHz() < 0.99 * rate) {
            return new FoldedLines(along, hidden);
        }
        List<FittedLine> present = new ArrayList<>(lines);
        for (FittedLine line : FittedLine.group(
                table,
                speed.ratioCorrection(),
                dwell.propellerHz(),
                dwell.durationS(),
                Double.MAX_VALUE,
                FittedLine.RESOLVED)) {
            double hz = line.frequencyHz(dwell.propellerHz());
            double at = appearsAtHz(hz, rate);
            if (hz <= upToHz || hz >= rate || at * dwell.durationS() <= 2 * FittedLine.RESOLVED) {
                continue;
            }
            int on = -1;
            for (int k = 0; k < present.size(); k++) {
                FittedLine other = present.get(k);
                double otherHz = other.frequencyHz(dwell.propellerHz());
                boolean near = Math.abs(appearsAtHz(otherHz, rate) - at) * dwell.durationS() <= FittedLine.RESOLVED;
                on = near && agree(fitting.time(), speed, dwell, line, other) > SAME ? k : on;
            }
            if (on < 0) {
                FittedLine folded = new FittedLine(List.of(), line.order(), 0, line.ofCrank());
                along.add(folded);
                present.add(folded);
            } else if (on < lines.size()) {
                List<OrderLine> lying = hidden.computeIfAbsent(on, k -> new ArrayList<>());
                line.members().forEach(m -> lying.add(table.lines().get(m)));
            }
        }
        return new FoldedLines(along, hidden);
    }

    /** Where a frequency appears once sampled at a rate: |f − round(f/fs)·fs|. */
    static double appearsAtHz(double hz, double rateHz) {
        return Math.abs(hz - Math.rint(hz / rateHz) * rateHz);
    }

    /**
     * How nearly two lines are one at the samples there are: |mean e^{i(θ₁ ∓ θ₂)}|. Uneven stamps and a
     * speed that wanders tell a folded line from the one it lies on.
     */
    private static double agree(TimeBase time, SpeedResult speed, Dwell dwell, FittedLine one, FittedLine other) {
        int first = time.firstFrom(dwell.fromS());
        int end = time.firstFrom(dwell.toS());
        int every = Math.max(1, (end - first) / SAMPLES_LOOKED_AT);
        double[] sums = new double[4];
        int n = 0;
        for (int i = first; i < end; i += every) {
            double revolutions = speed.track().revolutionsAt(time.at(i));
            double difference = 2 * Math.PI * (one.order() - other.order()) * revolutions;
            double sum = 2 * Math.PI * (one.order() + other.order()) * revolutions;
            sums[0] += Math.cos(difference);
            sums[1] += Math.sin(difference);
            sums[2] += Math.cos(sum);
            sums[3] += Math.sin(sum);
            n++;
        }
        return Math.max(Math.hypot(sums[0], sums[1]), Math.hypot(sums[2], sums[3])) / Math.max(1, n);
    }
}
