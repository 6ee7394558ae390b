package evenblade.tell.chart;

import evenblade.tell.chart.Spot.Reading;
import evenblade.tell.chart.Spot.What;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Reads figures off a spectrum: at a marked line what was measured, with its interval; elsewhere the curve.
 *
 * @param data curves and marks in the unit that is shown
 * @param unit of the amplitudes, in words
 */
record SpectrumReader(SpectrumPicture.Data data, String unit) {
    private static final int MOST_PEAKS = 10; // more labels hide the curve
    /** A line's foot is as wide as the window's main lobe: two bins to each side, and one to spare. */
    private static final int FOOT_BINS = 3;
    /** What lies nearer to a higher peak than the speed of a ground run wanders belongs to it. */
    private static final double FOOT_SHARE = 0.01;
    /** Noise averaged over a handful of stretches seldom stands twice above its middle. Our own choice, for a table to look at. */
    private static final double STANDS_OUT = 2;

    private static final int AROUND_BINS = 20; // far enough from a peak to see the floor

    /** The line or the peak next to a frequency, or the curve where there is none within reach. */
    Spot snapped(double hz, double reachHz) {
        Optional<Spot> marked = data.marks().stream()
                .filter(mark -> stands(mark) && Math.abs(mark.frequencyHz() - hz) <= reachHz)
                .max(Comparator.comparingDouble(mark -> mark.amplitude().getAsDouble()))
                .map(this::spot);
        return marked.orElseGet(() -> at(summit(hz, reachHz)));
    }

    /** What stands at a frequency: a line measured there, else the curve. */
    Spot at(double hz) {
        double bin = binHz();
        return data.marks().stream()
                .filter(mark -> stands(mark) && Math.abs(mark.frequencyHz() - hz) < bin / 100)
                .findFirst()
                .map(this::spot)
                .orElseGet(() -> onCurve(curve().nearest(hz)));
    }

    /** The ten highest in a stretch, the highest first. */
    List<Spot> peaks(Zoom.Range range) {
        List<Spot> found = new ArrayList<>();
        data.marks().stream()
                .filter(mark -> stands(mark) && within(mark.frequencyHz(), range))
                .map(this::spot)
                .forEach(found::add);
        int marked = found.size();
        Curve curve = curve();
        int from = Math.max(1, curve.nearest(range.from()));
        int to = Math.min(curve.x().size() - 1, curve.nearest(range.to()) + 1);
        for (int i = from; i < to; i++) {
            if (summit(i) && outstanding(i)) {
                found.add(onCurve(i));
            }
        }
        List<Spot> kept = new ArrayList<>(found.subList(0, marked));
        for (Spot spot : found.subList(marked, found.size()).stream()
                .sorted(highestFirst())
                .toList()) {
            if (kept.size() < marked + MOST_PEAKS && kept.stream().noneMatch(other -> near(spot.x(), other.x()))) {
                kept.add(spot);
            }
        }
        return kept.stream().sorted(highestFirst()).limit(MOST_PEAKS).toList();
    }

    private boolean near(double hz, double peakHz) {
        return Math.abs(hz - peakHz) <= Math.max(FOOT_BINS * binHz(), FOOT_SHARE * peakHz);
    }

    private static Comparator<Spot> highestFirst() {
        return Comparator.comparingDouble((Spot spot) -> -spot.y());
    }

    private static boolean stands(OrderMark mark) {
        return mark.detected() && mark.amplitude().isPresent();
    }

    private static boolean within(double hz, Zoom.Range range) {
        return hz >= range.from() && hz <= range.to();
    }

    private Curve curve() {
        return data.curves().get(0).curve();
    }

    private double binHz() {
        return curve().x().size() < 2 ? 1 : curve().x().at(1) - curve().x().at(0);
    }

    private boolean summit(int i) {
        double here = curve().y().at(i);
        boolean highest = here > 0;
        for (int k = Math.max(0, i - FOOT_BINS); k <= Math.min(curve().y().size() - 1, i + FOOT_BINS); k++) {
            highest &= curve().y().at(k) <= here;
        }
        return highest;
    }

    /** Whether a summit is more than the ups and downs of noise: twice as high as half the bins around it. */
    private boolean outstanding(int i) {
        int from = Math.max(0, i - AROUND_BINS);
        double[] around = new double[Math.min(curve().y().size(), i + AROUND_BINS + 1) - from];
        for (int k = 0; k < around.length; k++) {
            around[k] = curve().y().at(from + k);
        }
        java.util.Arrays.sort(around);
        return curve().y().at(i) > STANDS_OUT * around[around.length / 2];
    }

    private double summit(double hz, double reachHz) {
        Curve curve = curve();
        int best = curve.nearest(hz);
        boolean found = false;
        for (int i = curve.nearest(hz - reachHz); i <= curve.nearest(hz + reachHz); i++) {
            if (summit(i) && (!found || curve.y().at(i) > curve.y().at(best))) {
                best = i;
                found = true;
            }
        }
        return curve.x().at(best);
    }

    private Spot spot(OrderMark mark) {
        return spot(mark.name(), mark.frequencyHz(), mark.amplitude().getAsDouble(), mark.half());
    }

    private Spot onCurve(int index) {
        return spot("", curve().x().at(index), curve().y().at(index), 0);
    }

    private Spot spot(String name, double hz, double amplitude, double half) {
        List<Reading> readings = new ArrayList<>();
        readings.add(Reading.of(What.FREQUENCY, hz));
        data.turning().ifPresent(turning -> readings.addAll(turning.orders(hz)));
        readings.add(new Reading(What.AMPLITUDE, amplitude, half, unit, ""));
        for (SpectrumCurve other : data.curves().subList(1, data.curves().size())) {
            double there = other.curve().y().at(other.curve().nearest(hz));
            readings.add(new Reading(What.AMPLITUDE, there, 0, unit, other.name()));
        }
        return new Spot(0, hz, amplitude, name, readings);
    }
}
