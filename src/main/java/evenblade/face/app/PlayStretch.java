package evenblade.face.app;

import evenblade.input.recording.Series;
import evenblade.measure.signal.EvenGrid;
import javax.sound.sampled.Clip;

/**
 * Plays a stretch of a recording through the machine's loudspeaker, as loud as goes without clipping. What is heard is the band that was
 * analysed, not the whole of the file.
 */
public final class PlayStretch implements AutoCloseable {
    private static final int RATE_HZ = 48_000; // every sound card plays it
    /** Half of full scale: loud enough, and nothing overshoots between samples. */
    private static final double LOUDEST = 0.5;
    /** Longer is looked at, not listened to; and it all has to fit into memory. */
    private static final double MOST_S = 120;

    private static final double EDGE_S = 0.01; // soft enough not to click

    private final Clip clip;

    private PlayStretch(Clip clip) {
        this.clip = clip;
    }

    /**
     * Begins to play and doesn't wait for the end.
     *
     * @throws evenblade.base.problem.BadInput where the machine has no loudspeaker that can be used
     */
    static PlayStretch of(EvenGrid grid, double fromS, double toS) {
        Clip clip = StepBeep.clip(
                sound(grid, fromS, Math.min(toS, fromS + MOST_S)), RATE_HZ, "playing", "a loudspeaker or headphones");
        clip.start();
        return new PlayStretch(clip);
    }

    /** Whether it is still to be heard. */
    public boolean playing() {
        return clip.isRunning();
    }

    @Override
    public void close() {
        clip.close();
    }

    /** 16 bit little-endian; soft at both ends, so that nothing clicks. */
    static byte[] sound(EvenGrid grid, double fromS, double toS) {
        Series values = grid.values();
        int size = (int) Math.max(0, Math.round((toS - fromS) * RATE_HZ));
        double[] heard = new double[size];
        double largest = 0;
        for (int i = 0; i < size; i++) {
            heard[i] = at(values, (fromS + (double) i / RATE_HZ - grid.startS()) * grid.rateHz());
            largest = Math.max(largest, Math.abs(heard[i]));
        }
        byte[] sound = new byte[2 * size];
        for (int i = 0; i < size; i++) {
            double edge = Math.min(1, Math.min(i, size - 1.0 - i) / (EDGE_S * RATE_HZ));
            double share = largest > 0 ? LOUDEST * edge * heard[i] / largest : 0;
            int value = (int) Math.round(Short.MAX_VALUE * share);
            sound[2 * i] = (byte) value;
            sound[2 * i + 1] = (byte) (value >> 8);
        }
        return sound;
    }

    /** Between samples on the cubic through the four around (Catmull and Rom 1974, from memory). */
    private static double at(Series values, double place) {
        int i = (int) Math.floor(place);
        if (i < 1 || i + 2 >= values.size()) {
            return i < 0 || i >= values.size() ? 0 : values.at(i);
        }
        double t = place - i;
        double a = values.at(i - 1);
        double b = values.at(i);
        double c = values.at(i + 1);
        double d = values.at(i + 2);
        return b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
    }
}
