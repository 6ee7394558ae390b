package evenblade.input.intake;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.recording.BlockSink;
import evenblade.input.recording.SampleStream;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Sound of an uncompressed file. */
final class PcmSound implements SampleStream {
    private static final double MOST_NOT_NUMBERS = 0.01; // ours: more is damage, not a few lost samples

    private final StreamHeader header;
    private final PcmLayout layout;

    PcmSound(StreamHeader header, PcmLayout layout) {
        this.header = header;
        this.layout = layout;
    }

    @Override
    public StreamHeader header() {
        return header;
    }

    @Override
    public StreamSummary deliverTo(BlockSink sink) {
        try (HashedFile bytes = new HashedFile(header.file())) {
            bytes.skipTo(layout.dataOffset());
            PcmSource source = new PcmSource(layout, bytes);
            MeteredSink metered = new MeteredSink(header, sink);
            long frames = metered.deliver(source);
            List<Warning> warnings = new ArrayList<>(layout.warnings());
            if (source.notNumbers() > 0) {
                warnings.add(notNumbers(source.notNumbers(), frames * layout.channels()));
            }
            return metered.summary(frames, bytes.hashOfAll(), warnings);
        } catch (IOException e) {
            throw Unreadable.because(header.file(), e);
        }
    }

    private Warning notNumbers(long count, long samples) {
        if (count > MOST_NOT_NUMBERS * samples) {
            throw BadInput.in(header.file())
                    .found(
                            String.format(Locale.ROOT, "%d of %d samples are NaN or infinite", count, samples),
                            "numbers in at least 99 % of the samples");
        }
        return Warning.of(WarningCode.NOT_A_NUMBER, Subject.Whole.RECORDING, new Count(count));
    }
}
