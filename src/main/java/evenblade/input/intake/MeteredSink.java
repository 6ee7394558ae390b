package evenblade.input.intake;

import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.input.audio.AudioPath;
import evenblade.input.audio.FrameSource;
import evenblade.input.recording.BlockSink;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.QualityMeter;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/** Hands sound on to a sink and measures the quality of every channel on the way. */
final class MeteredSink {
    static final int FRAMES_PER_BLOCK = 1 << 15; // under a second of sound

    private final StreamHeader header;
    private final BlockSink sink;
    private final List<QualityMeter> meters = new ArrayList<>();

    MeteredSink(StreamHeader header, BlockSink sink) {
        this.header = header;
        this.sink = sink;
        double quantum = Math.scalb(1.0, 1 - Math.min(header.bitsPerSample(), 24));
        for (String channel : header.channels()) {
            meters.add(new QualityMeter(channel, quantum, SignalChecks.flatRun(header.sampleRateHz())));
        }
    }

    /** Delivers all frames of the source and returns their number. */
    long deliver(FrameSource source) throws IOException {
        try {
            return new AudioPath(source, FRAMES_PER_BLOCK).deliverTo(this::accept);
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private void accept(float[] interleaved, int frames) {
        for (int channel = 0; channel < meters.size(); channel++) {
            meters.get(channel).add(interleaved, channel, meters.size(), frames);
        }
        sink.accept(interleaved, frames);
    }

    /**
     * What there is to know after the last frame.
     *
     * @throws BadInput where there is less than a second of signal, or no signal at all
     */
    StreamSummary summary(long frames, FileHash sha256, List<Warning> readerWarnings) {
        BadInput.Place place = BadInput.in(header.file());
        SignalChecks.requireLength(place, frames / header.sampleRateHz());
        SignalChecks.requireChange(place, meters);
        List<ChannelQuality> quality = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>(readerWarnings);
        for (QualityMeter meter : meters) {
            ChannelQuality measured = meter.quality(header.fullScale(), 0);
            quality.add(measured);
            warnings.addAll(SignalChecks.warnings(measured, meter.constant(), header.unit(), header.sampleRateHz()));
        }
        return new StreamSummary(sha256, frames, quality, warnings);
    }
}
