package evenblade.judge.tracking;

import evenblade.base.units.Length;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Marks as hands make them, invented from their own chain of causes and not from the fit's model: a tip stands where its
 * blade and its place on the hub put it, the pencil wanders, the rule is read to the nearest division from the first
 * blade's mark as zero, and now and then one reading is written down wrong.
 */
final class PencilMarks {
    final int blades;
    final double[] bladeMm;
    final double[] placeMm;
    double pencilMm = 0.5;
    double statedMm = 0.5;
    double divisionMm;
    boolean firstIsZero = true;
    private final SplittableRandom chance;
    private final List<TrackingSession> sessions = new ArrayList<>();

    PencilMarks(int blades, long seed) {
        this.blades = blades;
        bladeMm = new double[blades];
        placeMm = new double[blades];
        chance = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + blades);
    }

    int any(int bound) {
        return chance.nextInt(bound);
    }

    double between(double low, double high) {
        return low + (high - low) * chance.nextDouble();
    }

    /** Blades put on in any order. */
    PencilMarks markedInAnyOrder() {
        List<Integer> order = new ArrayList<>();
        for (int b = 0; b < blades; b++) {
            order.add(b);
        }
        for (int b = blades - 1; b > 0; b--) {
            Collections.swap(order, b, chance.nextInt(b + 1));
        }
        return marked(order);
    }

    /** All blades moved on by so many places. */
    PencilMarks markedMovedOn(int by) {
        List<Integer> order = new ArrayList<>();
        for (int p = 0; p < blades; p++) {
            order.add(Math.floorMod(p - by, blades));
        }
        return marked(order);
    }

    private PencilMarks marked(List<Integer> order) {
        List<Double> tips = new ArrayList<>();
        for (int p = 0; p < blades; p++) {
            tips.add(bladeMm[order.get(p)] + placeMm[p] + pencilMm * gauss());
        }
        double zero = firstIsZero ? tips.get(0) : 0;
        List<List<Length>> readings = new ArrayList<>();
        for (double tip : tips) {
            double off = tip - zero;
            readings.add(List.of(
                    Length.ofMillimetres(divisionMm > 0 ? Math.floor(off / divisionMm + 0.5) * divisionMm : off)));
        }
        sessions.add(new TrackingSession(
                Instant.parse("2026-04-02T09:00:00Z").plusSeconds(7200L * sessions.size()),
                new Layout(order.stream().map(b -> "" + (char) ('A' + b)).toList()),
                readings,
                Length.ofMillimetres(statedMm)));
        return this;
    }

    /** One reading of one session is written down wrong. */
    PencilMarks slipped(int session, int place, double byMm) {
        TrackingSession right = sessions.get(session);
        List<List<Length>> readings = new ArrayList<>(right.readings());
        readings.set(
                place, List.of(Length.ofMillimetres(readings.get(place).get(0).millimetres() + byMm)));
        sessions.set(session, new TrackingSession(right.at(), right.layout(), readings, right.sigma()));
        return this;
    }

    List<TrackingSession> sessions() {
        return List.copyOf(sessions);
    }

    TrackVerdict verdict() {
        return TrackVerdict.of(SwapFit.of(sessions));
    }

    /** Box and Muller 1958, Annals of Mathematical Statistics 29(2):610. */
    private double gauss() {
        return Math.sqrt(-2 * Math.log(1 - chance.nextDouble())) * Math.cos(2 * Math.PI * chance.nextDouble());
    }
}
