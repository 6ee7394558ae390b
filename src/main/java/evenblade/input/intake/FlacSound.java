package evenblade.input.intake;

import evenblade.base.fact.Count;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.recording.BlockSink;
import evenblade.input.recording.SampleStream;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import java.io.EOFException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Sound of a FLAC file. */
final class FlacSound implements SampleStream {
    private final StreamHeader header;

    FlacSound(StreamHeader header) {
        this.header = header;
    }

    @Override
    public StreamHeader header() {
        return header;
    }

    @Override
    public StreamSummary deliverTo(BlockSink sink) {
        try (HashedFile bytes = new HashedFile(header.file())) {
            FlacSource source = new FlacSource(bytes);
            MeteredSink metered = new MeteredSink(header, sink);
            long frames = metered.deliver(source);
            return metered.summary(frames, bytes.sha256OfAll(), repairs(source, frames));
        } catch (EOFException e) {
            throw BadInput.in(header.file()).found("the file ends inside the FLAC stream", "a whole FLAC file");
        } catch (IOException e) {
            throw Unreadable.because(header.file(), e);
        }
    }

    private List<Warning> repairs(FlacSource source, long frames) {
        List<Warning> warnings = new ArrayList<>();
        if (source.damagedPlaces() > 0) {
            warnings.add(
                    Warning.of(WarningCode.DAMAGED_BLOCKS, Subject.Whole.RECORDING, new Count(source.damagedPlaces())));
        }
        if (source.totalFrames() > 0 && source.totalFrames() != frames) {
            warnings.add(Warning.of(
                    WarningCode.LENGTH_REPAIRED,
                    Subject.Whole.RECORDING,
                    Fact.of(
                            IntakeFact.LENGTH_CUT,
                            Measure.TIME.of(source.totalFrames() / header.sampleRateHz()),
                            Measure.TIME.of(frames / header.sampleRateHz()))));
        }
        return warnings;
    }
}
