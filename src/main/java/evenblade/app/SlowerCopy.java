package evenblade.app;

import evenblade.recording.Channel;
import evenblade.recording.Recording;
import evenblade.recording.StreamHeader;
import evenblade.recording.StreamSummary;
import evenblade.signal.Decimator;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** A recording with an even clock at a lower rate, for work that looks at its lower frequencies only. */
final class SlowerCopy {
    private static final int FRAMES_PER_BLOCK = 1 << 12;
    /** A copy that is not at least this many times slower isn't worth making. */
    private static final int LEAST_FACTOR = 2;

    private SlowerCopy() {}

    /**
     * The recording at about the lowest rate that keeps the band; itself where its stamps are not even
     * or its rate is low already.
     */
    static Recording of(Recording recording, double keepUpToHz) {
        double rateHz = recording.time().rateHz();
        if (!recording.time().even() || keepUpToHz * LEAST_FACTOR > Recording.USABLE_SHARE_OF_RATE * rateHz) {
            return recording;
        }
        List<Channel> channels = new ArrayList<>();
        Recording slower = recording;
        for (int i = 0; i < recording.channels().size(); i++) {
            slower = slower(recording, i, keepUpToHz);
            channels.addAll(slower.channels());
        }
        return new Recording(
                recording.source(),
                slower.time(),
                channels,
                recording.quality(),
                recording.stamps(),
                recording.warnings());
    }

    private static Recording slower(Recording recording, int index, double keepUpToHz) {
        Channel channel = recording.channels().get(index);
        double rateHz = recording.time().rateHz();
        Decimator decimator = Decimator.plan(rateHz, keepUpToHz, 1, 0);
        int size = channel.values().size();
        double[] values = new double[FRAMES_PER_BLOCK];
        float[] block = new float[FRAMES_PER_BLOCK];
        for (int from = 0; from < size; from += FRAMES_PER_BLOCK) {
            int frames = Math.min(FRAMES_PER_BLOCK, size - from);
            channel.values().copyTo(from, values, frames);
            for (int i = 0; i < frames; i++) {
                block[i] = (float) values[i];
            }
            decimator.accept(block, frames);
        }
        StreamHeader header = new StreamHeader(
                recording.source().file(),
                recording.source().kind(),
                recording.source().lossy(),
                rateHz,
                Float.SIZE,
                OptionalLong.of(size),
                List.of(channel.name()),
                channel.unit(),
                1);
        return decimator.recording(
                header,
                new StreamSummary(
                        recording.source().sha256(),
                        size,
                        List.of(recording.quality().get(index)),
                        List.of()));
    }
}
