package evenblade.measure.signal;

import evenblade.input.recording.BlockSink;
import evenblade.input.recording.Channel;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Recording;
import evenblade.input.recording.SeriesBuilder;
import evenblade.input.recording.Source;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import evenblade.input.recording.TimeBase;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Takes sound block by block and keeps the wanted channels at a lower rate.
 *
 * <p>Kept sample n lies exactly at n / {@link #rateHz} seconds of the input: the filters are symmetric
 * and centred, so no tone is shifted in phase. From 0 Hz to the frequency given to {@link #plan}
 * amplitudes are true within 0.005 dB, and anything that would fold into that band is held back by
 * at least 80 dB. Near both ends of the recording (some {@code 30 / rateHz} seconds) the
 * filter sees the signal mirrored about its first or last sample.
 *
 * <p>Filters: {@link LowPass}. Used by one thread, for one stream.
 */
public final class Decimator implements BlockSink {
    private final DecimationPlan plan;
    private final int channels;
    private final int[] wanted;
    private final List<SeriesBuilder> kept = new ArrayList<>();
    private final List<List<DecimationStage>> stages = new ArrayList<>();
    private float[] single = new float[0];

    private Decimator(DecimationPlan plan, int channels, int[] wanted) {
        this.plan = plan;
        this.channels = channels;
        this.wanted = wanted.clone();
        for (int i = 0; i < wanted.length; i++) {
            SeriesBuilder builder = new SeriesBuilder();
            kept.add(builder);
            stages.add(plan.stages((values, count) -> builder.append(values, 0, count)));
        }
    }

    /**
     * Plans the cheapest decimation that keeps the band.
     *
     * @param fromHz rate of the stream
     * @param keepUpToHz highest frequency to be kept true; it lies at or below 0.45 of the new rate,
     *     unless the stream's own rate is too low for that, which is then left as it is
     * @param channels channels in the stream
     * @param wantedChannels indices, from 0, of the channels to keep, in the order they are kept
     * @throws IllegalArgumentException where a rate isn't positive or a channel doesn't exist
     */
    public static Decimator plan(double fromHz, double keepUpToHz, int channels, int... wantedChannels) {
        for (int channel : wantedChannels) {
            if (channel < 0 || channel >= channels) {
                throw new IllegalArgumentException("no channel " + channel + " among " + channels);
            }
        }
        return new Decimator(DecimationPlan.cheapest(fromHz, keepUpToHz), channels, wantedChannels);
    }

    /** Samples per second that are kept. */
    public double rateHz() {
        return plan.toHz();
    }

    /** How many samples of the stream stand behind one that is kept; 1 where nothing is reduced. */
    public int factor() {
        return plan.factor();
    }

    @Override
    public void accept(float[] interleaved, int frames) {
        for (int i = 0; i < wanted.length; i++) {
            List<DecimationStage> chain = stages.get(i);
            if (chain.isEmpty()) {
                keepAll(interleaved, frames, i);
            } else {
                chain.get(0).accept(interleaved, wanted[i], channels, frames);
            }
        }
    }

    private void keepAll(float[] interleaved, int frames, int i) {
        if (channels == 1) {
            kept.get(i).append(interleaved, 0, frames);
            return;
        }
        if (single.length < frames) {
            single = new float[frames];
        }
        for (int n = 0; n < frames; n++) {
            single[n] = interleaved[n * channels + wanted[i]];
        }
        kept.get(i).append(single, 0, frames);
    }

    /**
     * Ends the stream and gives what was kept, in the stream's unit, with the quality that was measured
     * on the samples as they came. May be called once.
     *
     * @param header of the stream, as many channels as planned for
     * @param summary of the stream
     */
    public Recording recording(StreamHeader header, StreamSummary summary) {
        List<Channel> series = new ArrayList<>();
        List<ChannelQuality> quality = new ArrayList<>();
        int size = 0;
        for (int i = 0; i < wanted.length; i++) {
            for (DecimationStage stage : stages.get(i)) {
                stage.finish();
            }
            Channel channel = new Channel(
                    header.channels().get(wanted[i]), header.unit(), kept.get(i).build(header.fullScale()));
            size = channel.values().size();
            series.add(channel);
            quality.add(summary.quality().get(wanted[i]));
        }
        Source source = new Source(
                header.file(),
                summary.sha256(),
                header.kind(),
                header.lossy(),
                header.sampleRateHz(),
                summary.frames() / header.sampleRateHz(),
                header.channels());
        TimeBase time = new TimeBase.Even(0, rateHz(), size);
        return new Recording(source, time, series, quality, Optional.empty(), summary.warnings());
    }
}
