package evenblade.measure.lines;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.EvenGrid;
import evenblade.measure.signal.Spectrum;
import java.util.List;

/**
 * The averaged spectrum of one stretch of one channel, and the steady lines in it.
 *
 * @param grid the samples at even steps
 * @param spectrum amplitudes, Hann window, half overlapped; its bins are the resolution
 * @param lines strongest first
 * @param fromHz lowest frequency at which a line can be told from the noise beside it
 * @param upToHz highest frequency looked at
 */
public record LineSpectrum(EvenGrid grid, Spectrum spectrum, List<SteadyLine> lines, double fromHz, double upToHz) {
    /** Less than this gives no spectrum worth a look. */
    public static final double LEAST_S = 1;
    /** Chance that noise alone shows a line anywhere in the band. */
    public static final double FALSE_ALARM = LineSearch.FALSE_ALARM;
    /** As written in JSON and in pictures. */
    public static final String WINDOW = "hann";

    /** Length of a stretch: a quarter of a hertz is fine enough for the lines of engines. Our own choice. */
    private static final double STRETCH_S = 4;
    /** Of a short recording at most this share, so that there is something to average. */
    private static final double STRETCH_SHARE = 0.25;

    public LineSpectrum {
        lines = List.copyOf(lines);
    }

    /** From bin to bin. */
    public double resolutionHz() {
        return spectrum.binHz();
    }

    /** Width of the band of noise that one bin takes in. */
    public double noiseBandwidthHz() {
        return spectrum.noiseBandwidthHz();
    }

    /** Stretches averaged. */
    public int averages() {
        return spectrum.segments();
    }

    /**
     * Looks at a stretch.
     *
     * @param time at least {@link #LEAST_S}
     * @param values one per stamp
     * @param upToHz highest frequency looked at
     */
    public static LineSpectrum of(TimeBase time, Series values, double upToHz) {
        EvenGrid grid = time.even()
                ? new EvenGrid(time.at(0), time.rateHz(), values)
                : EvenGrid.of(time, values, EvenGrid.Interpolation.CUBIC);
        double seconds = grid.values().size() / grid.rateHz();
        AveragedSpectrum average = AveragedSpectrum.hann(
                Math.min(STRETCH_S, STRETCH_SHARE * seconds), grid.rateHz(), Spectrum.Scaling.AMPLITUDE);
        Spectrum spectrum = average.of(grid.values(), grid.rateHz());
        List<LineSearch.Found> found = LineSearch.in(spectrum, upToHz);
        List<SteadyLine> lines = StretchByStretch.follow(time, values, 1 / spectrum.binHz(), found);
        return new LineSpectrum(grid, spectrum, lines, LineSearch.LOWEST_BIN * spectrum.binHz(), upToHz);
    }
}
