package evenblade.input.recording;

import evenblade.base.fact.Warning;
import java.util.List;

/**
 * What is known of sound once its last sample has been delivered.
 *
 * @param sha256 of the file's bytes
 * @param frames frames delivered
 * @param quality per channel, in file order
 * @param warnings what the reader had to assume or repair
 */
public record StreamSummary(FileHash sha256, long frames, List<ChannelQuality> quality, List<Warning> warnings) {
    public StreamSummary {
        quality = List.copyOf(quality);
        warnings = List.copyOf(warnings);
    }
}
