package evenblade.measure.lines;

import evenblade.base.fact.Warning;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Source;
import java.util.List;

/**
 * What one channel of a recording shows through a stretch of it, no speed known.
 *
 * @param source the file
 * @param channel as the file names it
 * @param unit of the amplitudes
 * @param others names of the file's other channels
 * @param fromS start of the stretch, seconds from the recording's start
 * @param toS its end
 * @param measured spectrum and lines
 * @param warnings from reading
 */
public record ChannelSpectrum(
        Source source,
        String channel,
        SignalUnit unit,
        List<String> others,
        double fromS,
        double toS,
        LineSpectrum measured,
        List<Warning> warnings) {
    public ChannelSpectrum {
        others = List.copyOf(others);
        warnings = List.copyOf(warnings);
    }
}
