package evenblade.judge.tracking;

import evenblade.base.fact.Worded;
import evenblade.base.problem.BadInput;
import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Blade angles read with a protractor, all at one station.
 *
 * @param at when
 * @param layout which blade sat where
 * @param readings for each hub position in order, what the protractor showed; one or more each
 * @param zero what the protractor showed on the reference; the blade angle is the reading less this
 * @param reference what the zero was taken on
 * @param station distance of the place of reading from the shaft's centre, where noted
 * @param sigma standard deviation of one reading, above 0
 */
public record PitchReadings(
        Instant at,
        Layout layout,
        List<List<Angle>> readings,
        Angle zero,
        Reference reference,
        Optional<Length> station,
        Angle sigma) {
    /** What a protractor's zero is taken on. */
    public enum Reference implements Worded {
        HUB,
        LEVEL
    }

    /** A bubble protractor read to a tenth of a degree. Common practice, no source. */
    public static final Angle USUAL_SIGMA = new Angle(0.1);

    /** A blade set farther is edge on to the air. */
    private static final double MOST_DEGREES = 90;

    public PitchReadings {
        readings = readings.stream().map(List::copyOf).toList();
        if (readings.size() != layout.positions() || readings.stream().anyMatch(List::isEmpty)) {
            throw BadInput.in("pitch readings")
                    .found(
                            readings.stream().filter(r -> !r.isEmpty()).count() + " hub position(s) with a reading",
                            layout.positions() + " as in the layout");
        }
        for (int p = 1; p <= readings.size(); p++) {
            for (Angle reading : readings.get(p - 1)) {
                if (Math.abs(reading.degrees() - zero.degrees()) > MOST_DEGREES) {
                    throw BadInput.in("reading at hub position " + p)
                            .found(
                                    reading.text() + " with a zero of " + zero.text(),
                                    "a blade angle of at most 90 deg off the zero");
                }
            }
        }
        if (!(sigma.degrees() > 0) || !Double.isFinite(sigma.degrees())) {
            throw BadInput.in("sigma").found(sigma.degrees() + " deg", "a reading error above 0");
        }
        if (station.isPresent() && !(station.get().metres() > 0)) {
            throw BadInput.in("station").found(station.get().millimetres() + " mm", "a radius above 0");
        }
    }

    /** Blade angle at each hub position in order, in degrees: mean reading less the zero. */
    public List<Double> bladeAnglesDeg() {
        return readings.stream()
                .map(repeats ->
                        repeats.stream().mapToDouble(Angle::degrees).average().orElseThrow() - zero.degrees())
                .toList();
    }

    /** Mean blade angle in degrees. */
    public double meanDeg() {
        return MarkStatistics.mean(bladeAnglesDeg());
    }

    /** Largest less smallest blade angle in degrees. */
    public double spreadDeg() {
        return MarkStatistics.spread(bladeAnglesDeg());
    }

    /** Each blade's angle less the mean, in degrees; the protractor's zero doesn't matter here. */
    public SortedMap<String, Double> deviationsDeg() {
        SortedMap<String, Double> deviations = new TreeMap<>();
        double mean = meanDeg();
        for (int p = 1; p <= layout.positions(); p++) {
            deviations.put(layout.at(p), bladeAnglesDeg().get(p - 1) - mean);
        }
        return deviations;
    }

    /** Standard error of one blade's deviation from the mean, in degrees, from the stated reading error. */
    public SortedMap<String, Double> standardErrorsDeg() {
        int n = layout.positions();
        double all = 0;
        List<Double> variances = new ArrayList<>();
        for (List<Angle> repeats : readings) {
            double variance = sigma.degrees() * sigma.degrees() / repeats.size();
            variances.add(variance);
            all += variance / (n * n);
        }
        SortedMap<String, Double> errors = new TreeMap<>();
        for (int p = 1; p <= n; p++) {
            double own = variances.get(p - 1);
            errors.put(layout.at(p), Math.sqrt(own * (1 - 2.0 / n) + all));
        }
        return errors;
    }
}
