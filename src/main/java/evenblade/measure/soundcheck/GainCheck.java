package evenblade.measure.soundcheck;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Series;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Signs that the recorder turns its gain by itself. An engine gets far louder with speed, and the
 * noise between its lines with it; under automatic gain the level stays and the noise sinks as the engine
 * gets louder. Only a run over clearly different speeds can show it. Own limits.
 */
public final class GainCheck {
    private static final double MOMENT_S = 0.5; // ours
    private static final double LEAST_SPEED_RATIO = 1.2; // ours: with less the level says nothing
    /** Sound of a propeller rises by far more than this per doubling of speed. */
    private static final double LEAST_DB_PER_DOUBLING = 2;

    private static final double LEAST_PUMPING_DB = 3; // ours
    private static final double FLOOR_FROM_SHARE = 0.2; // of the rate: above the orders
    private static final double FLOOR_TO_SHARE = 0.42; // of the rate: below the converter's filter

    private GainCheck() {}

    /** Half-seconds of one channel along a speed track. */
    public static List<HalfSecond> moments(Series values, double rateHz, SpeedTrack track) {
        int length = (int) Math.round(MOMENT_S * rateHz);
        AveragedSpectrum look = AveragedSpectrum.hann(MOMENT_S, rateHz, Spectrum.Scaling.DENSITY);
        List<HalfSecond> moments = new ArrayList<>();
        double[] part = new double[length];
        for (int from = 0; from + length <= values.size(); from += length) {
            values.copyTo(from, part, length);
            Spectrum spectrum = look.of(part, rateHz);
            double power = Arrays.stream(part).map(v -> v * v).average().orElse(0);
            double[] between = band(spectrum, FLOOR_FROM_SHARE * rateHz, FLOOR_TO_SHARE * rateHz);
            if (power > 0 && between.length > 0 && between[between.length / 2] > 0) {
                moments.add(new HalfSecond(
                        track.propellerHzAt(track.fromS() + (from + length / 2.0) / rateHz),
                        10 * Math.log10(power),
                        10 * Math.log10(between[between.length / 2])));
            }
        }
        return moments;
    }

    private static double[] band(Spectrum spectrum, double fromHz, double toHz) {
        List<Double> values = new ArrayList<>();
        for (int i = 0; i < spectrum.frequenciesHz().size(); i++) {
            double hz = spectrum.frequenciesHz().at(i);
            if (hz >= fromHz && hz <= toHz) {
                values.add(spectrum.values().at(i));
            }
        }
        return values.stream().mapToDouble(x -> x).sorted().toArray();
    }

    /** Suspects automatic gain where level or noise floor don't go with speed. */
    public static Optional<Warning> of(List<HalfSecond> moments) {
        double slowest =
                moments.stream().mapToDouble(HalfSecond::propellerHz).min().orElse(1);
        double fastest =
                moments.stream().mapToDouble(HalfSecond::propellerHz).max().orElse(1);
        if (moments.size() < 10 || fastest / slowest < LEAST_SPEED_RATIO) {
            return Optional.empty();
        }
        double doublings = Math.log(fastest / slowest) / Math.log(2);
        double level = slope(moments, false);
        double floor = slope(moments, true);
        if (level < LEAST_DB_PER_DOUBLING || floor * doublings < -LEAST_PUMPING_DB) {
            return Optional.of(Warning.of(
                    WarningCode.AUTOMATIC_GAIN_SUSPECTED,
                    Subject.Whole.INPUT,
                    Measure.LEVEL.of(level * doublings),
                    Measure.LEVEL.of(floor * doublings)));
        }
        return Optional.empty();
    }

    /** Decibel per doubling of speed, by least squares. */
    private static double slope(List<HalfSecond> moments, boolean floor) {
        double meanX = moments.stream().mapToDouble(GainCheck::octave).average().orElse(0);
        double sxy = 0;
        double sxx = 0;
        for (HalfSecond moment : moments) {
            double x = octave(moment) - meanX;
            sxy += x * (floor ? moment.floorDb() : moment.levelDb());
            sxx += x * x;
        }
        return sxy / sxx;
    }

    private static double octave(HalfSecond moment) {
        return Math.log(moment.propellerHz()) / Math.log(2);
    }

    /**
     * Half a second of a run.
     *
     * @param propellerHz speed
     * @param levelDb of all that is heard
     * @param floorDb of the noise between the lines
     */
    public record HalfSecond(double propellerHz, double levelDb, double floorDb) {}
}
