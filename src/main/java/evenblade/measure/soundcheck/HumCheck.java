package evenblade.measure.soundcheck;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Series;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.Spectrum;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Mains hum in a take made while the engine stands, five seconds or more. */
public final class HumCheck {
    private static final double LEAST_OVER_FLOOR_DB = 12; // ours: chance lines of so short an average stay below
    private static final double NEIGHBOURS_HZ = 8; // ours: where the floor is taken from
    private static final int MOST_MULTIPLE = 8; // ours

    private HumCheck() {}

    /** Lines at multiples of the mains frequency that shows more of them, lowest first. */
    public static List<HumLine> lines(Series quiet, double rateHz) {
        Spectrum spectrum =
                AveragedSpectrum.hann(1, rateHz, Spectrum.Scaling.AMPLITUDE).of(quiet, rateHz);
        // Mains turn at 50 or 60 Hz.
        List<HumLine> fifty = lines(spectrum, 50, rateHz);
        List<HumLine> sixty = lines(spectrum, 60, rateHz);
        return fifty.size() >= sixty.size() ? fifty : sixty;
    }

    private static List<HumLine> lines(Spectrum spectrum, double mainsHz, double rateHz) {
        List<HumLine> lines = new ArrayList<>();
        // Above, the filter before the converter may have taken it.
        for (int k = 1; k <= MOST_MULTIPLE && k * mainsHz < 0.45 * rateHz; k++) {
            double hz = k * mainsHz;
            double peak = 0;
            List<Double> around = new ArrayList<>();
            for (int i = 0; i < spectrum.frequenciesHz().size(); i++) {
                double apart = Math.abs(spectrum.frequenciesHz().at(i) - hz);
                double value = spectrum.values().at(i);
                // A line lies within half a bin of one; the bins beside that hold the rest of it.
                if (apart <= 1.5 * spectrum.binHz()) {
                    peak = Math.max(peak, value);
                } else if (apart > 3 * spectrum.binHz() && apart < NEIGHBOURS_HZ) {
                    around.add(value);
                }
            }
            double[] sorted = around.stream().mapToDouble(x -> x).sorted().toArray();
            double floor = sorted.length == 0 ? 0 : sorted[sorted.length / 2];
            // Digital silence has no floor.
            double over = 20 * Math.log10(peak / Math.max(floor, 1e-15));
            if (peak > 0 && over > LEAST_OVER_FLOOR_DB) {
                lines.add(new HumLine(hz, peak, over));
            }
        }
        return lines;
    }

    /**
     * What the quiet take says about the run.
     *
     * @param channel its name
     * @param runRms of the same channel while the engine ran
     */
    public static List<Warning> of(String channel, Series quiet, double rateHz, double runRms) {
        List<Warning> warnings = new ArrayList<>();
        List<HumLine> hum = lines(quiet, rateHz);
        if (!hum.isEmpty()) {
            warnings.add(Warning.of(
                    WarningCode.MAINS_HUM,
                    new Subject.Channel(channel),
                    new Quoted(channel),
                    new Listed(hum.stream()
                            .<Value>map(line -> Measure.FREQUENCY.of(line.frequencyHz()))
                            .toList())));
        }
        lift(quiet, runRms)
                // Noise ten times below the run adds half a per cent to what is measured.
                .filter(db -> db < 20)
                .ifPresent(db -> warnings.add(Warning.of(
                        WarningCode.LITTLE_OVER_QUIET,
                        new Subject.Channel(channel),
                        new Quoted(channel),
                        Measure.LEVEL.of(db))));
        return warnings;
    }

    private static Optional<Double> lift(Series quiet, double runRms) {
        double[] values = quiet.toArray();
        double mean = Arrays.stream(values).average().orElse(0);
        double rms = Math.sqrt(Arrays.stream(values)
                .map(v -> (v - mean) * (v - mean))
                .average()
                .orElse(0));
        return rms > 0 && runRms > 0 ? Optional.of(20 * Math.log10(runRms / rms)) : Optional.empty();
    }

    /**
     * A line of mains hum.
     *
     * @param frequencyHz a multiple of 50 or 60 Hz
     * @param amplitude peak, in the channel's unit
     * @param overFloorDb over the noise around it
     */
    public record HumLine(double frequencyHz, double amplitude, double overFloorDb) {}
}
