package evenblade.measure.signal;

import evenblade.input.recording.Channel;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Recording;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import evenblade.input.recording.TimeBase;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** Brings a recording in memory down to the lowest rate that still holds a band. */
public final class BandLimit {
    private static final int BLOCK = 1 << 14; // 128 KiB: fits the processor's cache

    private BandLimit() {}

    /**
     * The given channels at a lower rate; at their own where they are stamped, or where the band fills
     * the rate already.
     *
     * @param recording the recording
     * @param channels of that recording
     * @param keepUpToHz highest frequency that stays true, see {@link Decimator#plan}
     */
    public static Recording of(Recording recording, List<Channel> channels, double keepUpToHz) {
        boolean possible = recording.time().even()
                && Decimator.plan(recording.time().rateHz(), keepUpToHz, 1, 0).factor() > 1;
        if (!possible) {
            return with(recording, recording.time(), channels);
        }
        List<Channel> narrowed = new ArrayList<>();
        TimeBase time = recording.time();
        for (Channel channel : channels) {
            Recording one = narrowed(recording, channel, keepUpToHz);
            narrowed.add(new Channel(
                    channel.name(), channel.unit(), one.channels().get(0).values(), channel.axis()));
            time = new TimeBase.Even(
                    recording.time().at(0), one.time().rateHz(), one.time().size());
        }
        return with(recording, time, narrowed);
    }

    private static Recording narrowed(Recording recording, Channel channel, double keepUpToHz) {
        Decimator decimator = Decimator.plan(recording.time().rateHz(), keepUpToHz, 1, 0);
        int size = channel.values().size();
        double[] block = new double[BLOCK];
        float[] single = new float[BLOCK];
        for (int from = 0; from < size; from += BLOCK) {
            int n = Math.min(BLOCK, size - from);
            channel.values().copyTo(from, block, n);
            toSingle(block, single, n);
            decimator.accept(single, n);
        }
        StreamHeader header = new StreamHeader(
                recording.source().file(),
                recording.source().kind(),
                recording.source().lossy(),
                recording.time().rateHz(),
                32,
                OptionalLong.of(size),
                List.of(channel.name()),
                channel.unit(),
                1);
        ChannelQuality unasked = new ChannelQuality(channel.name(), 0, 1, 0, 0, 0);
        return decimator.recording(
                header, new StreamSummary(recording.source().sha256(), size, List.of(unasked), List.of()));
    }

    private static void toSingle(double[] values, float[] into, int count) {
        for (int i = 0; i < count; i++) {
            into[i] = (float) values[i];
        }
    }

    private static Recording with(Recording recording, TimeBase time, List<Channel> channels) {
        return new Recording(
                recording.source(),
                time,
                channels,
                recording.quality(),
                recording.stamps(),
                recording.warnings(),
                recording.stretches());
    }
}
