package evenblade.measure.soundcheck;

import evenblade.input.recording.Series;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.Spectrum;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Estimates below which frequency a microphone or input loses what it hears, from the noise between the
 * lines.
 *
 * <p>Model: even noise through a first-order high-pass, power (f/c)² / (1 + (f/c)²). Medians of
 * third-octave bands from {@value #LOWEST_HZ} to {@value #HIGHEST_HZ} Hz are fitted over c by search.
 *
 * <p>It is wrong where the noise itself isn't even: wind and handling raise the low end and hide a cut.
 */
public final class LowCut {
    static final double LOWEST_HZ = 8; // below 1× of any propeller
    static final double HIGHEST_HZ = 400; // ours
    private static final double THIRD_OCTAVE = Math.pow(2, 1 / 3.0); // by its definition
    private static final double LEAST_DROP_DB = 6; // ours: less is the sound's own slope
    /** The model must leave at most this share of the scatter that even noise leaves. */
    private static final double MOST_LEFT = 0.25;

    private LowCut() {}

    private record Band(double hz, double db) {}

    /** The corner frequency in hertz; empty where no cut shows. */
    public static Optional<Double> cornerHz(Series values, double rateHz) {
        Spectrum spectrum =
                AveragedSpectrum.hann(2, rateHz, Spectrum.Scaling.DENSITY).of(values, rateHz);
        // Above, the filter before the converter may take some away.
        List<Band> bands = bands(spectrum, Math.min(HIGHEST_HZ, 0.4 * rateHz));
        if (bands.size() < 8) {
            return Optional.empty();
        }
        double even = scatter(bands, 0);
        double best = Double.POSITIVE_INFINITY;
        double corner = 0;
        // Corners a twentieth of an octave apart, as far up as some bands lie above.
        for (double c = LOWEST_HZ; c < 0.6 * HIGHEST_HZ; c *= 1.03) {
            double left = scatter(bands, c);
            if (left < best) {
                best = left;
                corner = c;
            }
        }
        boolean drops = -loss(bands.get(0).hz(), corner) >= LEAST_DROP_DB;
        return drops && best < MOST_LEFT * even ? Optional.of(corner) : Optional.empty();
    }

    /** What a cut takes away, decibel, 0 or less. */
    private static double loss(double hz, double cornerHz) {
        double ratio = cornerHz / hz;
        return -10 * Math.log10(1 + ratio * ratio);
    }

    private static double scatter(List<Band> bands, double cornerHz) {
        double mean = bands.stream()
                .mapToDouble(b -> b.db() - loss(b.hz(), cornerHz))
                .average()
                .orElse(0);
        return bands.stream()
                .mapToDouble(b -> Math.pow(b.db() - loss(b.hz(), cornerHz) - mean, 2))
                .sum();
    }

    private static List<Band> bands(Spectrum spectrum, double upToHz) {
        List<Band> bands = new ArrayList<>();
        for (double from = LOWEST_HZ; from * THIRD_OCTAVE <= upToHz; from *= THIRD_OCTAVE) {
            List<Double> inside = new ArrayList<>();
            for (int i = 0; i < spectrum.frequenciesHz().size(); i++) {
                double hz = spectrum.frequenciesHz().at(i);
                if (hz >= from && hz < from * THIRD_OCTAVE && spectrum.values().at(i) > 0) {
                    inside.add(spectrum.values().at(i));
                }
            }
            if (inside.size() >= 3) {
                double median = inside.stream().sorted().toList().get(inside.size() / 2);
                bands.add(new Band(from * Math.sqrt(THIRD_OCTAVE), 10 * Math.log10(median)));
            }
        }
        return bands;
    }
}
