package evenblade.judge.tracking;

import evenblade.base.problem.BadInput;
import evenblade.base.units.Length;
import java.time.Instant;
import java.util.List;

/**
 * One time that the tips were marked: where each blade sat and where its mark lies.
 *
 * <p>Marks are measured from one zero along the shaft; which way is plus is the technician's choice and must stay the
 * same through a job.
 *
 * @param at when
 * @param layout which blade sat where
 * @param readings for each hub position in order, its readings; one or more each, repeats as further ones
 * @param sigma standard deviation of one reading, above 0
 */
public record TrackingSession(Instant at, Layout layout, List<List<Length>> readings, Length sigma) {
    /** A pencil line read with a rule: about half a millimetre. Common practice, no source. */
    public static final Length USUAL_SIGMA = Length.ofMillimetres(0.5);

    private static final String SOURCE = "readings";

    public TrackingSession {
        readings = readings.stream().map(List::copyOf).toList();
        if (readings.size() != layout.positions()) {
            throw BadInput.in(SOURCE)
                    .found(
                            "readings for " + readings.size() + " hub position(s)",
                            layout.positions() + " as in the layout");
        }
        for (int i = 0; i < readings.size(); i++) {
            if (readings.get(i).isEmpty()) {
                throw BadInput.in(SOURCE).found("no reading for hub position " + (i + 1), "at least one");
            }
            for (Length reading : readings.get(i)) {
                if (!Double.isFinite(reading.metres())) {
                    throw BadInput.in(SOURCE)
                            .found(reading.metres() + " at hub position " + (i + 1), "a length that is a number");
                }
            }
        }
        if (!(sigma.metres() > 0) || !Double.isFinite(sigma.metres())) {
            throw BadInput.in("sigma").found(sigma.millimetres() + " mm", "a reading error above 0");
        }
    }

    /** A session with one reading per hub position. */
    public static TrackingSession of(Instant at, Layout layout, List<Length> marks, Length sigma) {
        return new TrackingSession(at, layout, marks.stream().map(List::of).toList(), sigma);
    }

    /** The mark at each hub position in order, in mm: the mean of its readings. */
    public List<Double> marksMm() {
        return readings.stream()
                .map(repeats -> repeats.stream()
                        .mapToDouble(Length::millimetres)
                        .average()
                        .orElseThrow())
                .toList();
    }

    /** Largest less smallest mark in mm. */
    public double spreadMm() {
        return MarkStatistics.spread(marksMm());
    }
}
