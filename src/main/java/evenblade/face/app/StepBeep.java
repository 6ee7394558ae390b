package evenblade.face.app;

import evenblade.base.problem.BadInput;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.Clip;
import javax.sound.sampled.LineUnavailableException;

/**
 * Tells through the machine's loudspeaker that a step of a stepped run is done: one beep, and three once all are. It
 * sounds after the dwell, never during it, but a microphone hears it.
 */
record StepBeep(Clip one, Clip three) implements AutoCloseable {
    private static final int RATE_HZ = 16_000; // every sound card plays it, and it is ample for a beep
    /** Where small loudspeakers are loud. */
    private static final double TONE_HZ = 1500;

    private static final double AMPLITUDE = 0.6; // well heard, far from clipping
    private static final double BEEP_S = 0.25; // ours
    private static final double PAUSE_S = 0.15; // ours: short beeps that can still be counted
    private static final double EDGE_S = 0.01; // soft enough not to click
    private static final int AT_THE_END = 3; // told from the single beep of a step

    private static final long MOST_NANOS = 2_000_000_000L; // the last three beeps take 1.2 s

    /**
     * Makes ready to beep.
     *
     * @throws BadInput where the machine has no loudspeaker that can be used
     */
    static StepBeep open() {
        return new StepBeep(
                clip(sound(1), RATE_HZ, "beep", "one, or steps without a beep"),
                clip(sound(AT_THE_END), RATE_HZ, "beep", "one, or steps without a beep"));
    }

    /** Sounds, without waiting for its end. */
    void stepDone(boolean last) {
        Clip clip = last ? three : one;
        clip.setFramePosition(0);
        clip.start();
    }

    /** Lets a beep under way sound out. */
    @Override
    public void close() {
        long deadline = System.nanoTime() + MOST_NANOS;
        try {
            while ((one.isRunning() || three.isRunning()) && System.nanoTime() < deadline) {
                Thread.sleep(20);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        one.close();
        three.close();
    }

    /**
     * Sound of one channel, 16 bit little-endian, ready to be heard.
     *
     * @throws BadInput about what was asked for, where the machine has no loudspeaker that can be used
     */
    static Clip clip(byte[] sound, int rateHz, String asked, String cure) {
        AudioFormat format = new AudioFormat(rateHz, 16, 1, true, false);
        try {
            Clip clip = AudioSystem.getClip();
            clip.open(format, sound, 0, sound.length);
            return clip;
        } catch (LineUnavailableException | IllegalArgumentException e) {
            throw BadInput.in(asked).found("this machine shows no loudspeaker that can be used", cure);
        }
    }

    /** So many beeps with pauses between, 16 bit little-endian; soft edges, so that nothing clicks. */
    static byte[] sound(int beeps) {
        int period = (int) Math.round((BEEP_S + PAUSE_S) * RATE_HZ);
        byte[] sound = new byte[2 * period * beeps];
        for (int i = 0; i < period * beeps; i++) {
            double t = (double) (i % period) / RATE_HZ;
            double edge = Math.max(0, Math.min(1, Math.min(t, BEEP_S - t) / EDGE_S));
            int value = (int) Math.round(Short.MAX_VALUE * AMPLITUDE * edge * Math.sin(2 * Math.PI * TONE_HZ * t));
            sound[2 * i] = (byte) value;
            sound[2 * i + 1] = (byte) (value >> 8);
        }
        return sound;
    }
}
