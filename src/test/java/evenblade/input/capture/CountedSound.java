package evenblade.input.capture;

import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Sound that never ends and tells of every lost sample: an invented run on the first channel, on the second
 * a count from 0 that begins anew after 65 536.
 */
public final class CountedSound implements Runnable {
    private static final int RATE_HZ = 48_000;
    private static final int ROUND_S = 20;
    private static final int BLOCK = 4800;

    private final OutputStream to;
    private final short[] run;

    /** @param to takes 48 kHz, two channels, 16 bit, little-endian, as fast as it likes */
    public CountedSound(OutputStream to) {
        this.to = new BufferedOutputStream(to, 4 * BLOCK);
        // 33 whole revolutions a second, so that rounds join without a jump.
        SyntheticRun invented = SyntheticRun.at(SpeedProfile.steady(33, ROUND_S))
                .withLine(1, 0.05, 20)
                .withLine(3, 0.2, 100)
                .withLine(6, 0.08, 40)
                .withNoise(new Noise(0.005, 0))
                .withSeed(4);
        double[] samples = invented.samples(invented.evenClock(RATE_HZ));
        this.run = new short[ROUND_S * RATE_HZ];
        for (int i = 0; i < run.length; i++) {
            run[i] = (short) Math.round(samples[i] * Short.MAX_VALUE);
        }
    }

    /** Sends until nobody takes it any more. */
    @Override
    public void run() {
        ByteBuffer block = ByteBuffer.allocate(4 * BLOCK).order(ByteOrder.LITTLE_ENDIAN);
        try {
            for (long n = 0; true; ) {
                block.clear();
                for (int i = 0; i < BLOCK; i++, n++) {
                    block.putShort(run[(int) (n % run.length)]);
                    block.putShort((short) n);
                }
                to.write(block.array());
            }
        } catch (IOException e) {
            // Nobody listens any more: the test is over.
            Thread.currentThread().interrupt();
        }
    }

    /** The count that a sample of the second channel stands for, 0 to 65 535. */
    public static int count(float sample) {
        return Math.round(sample * 32_768) & 0xFFFF;
    }
}
