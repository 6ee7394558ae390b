package evenblade.input.capture;

import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Sound that never ends and tells of every lost sample: an invented run on the first channel, on the second
 * a count from 0 that begins anew after 65 536. The count is shuffled, so that it is noise to whoever looks for lines:
 * a plain one is a sawtooth, whose lines hide the run's.
 */
public final class CountedSound implements Runnable {
    /** The teeth of the samples' engine. */
    public static final double RATIO = 51 / 21.0;

    public static final double PROPELLER_HZ = 33.6;
    /** Amplitude of propeller once-per-revolution, of full scale. */
    public static final double ONCE = 0.05;

    public static final double BLADE_PASS = 0.2;

    private static final int RATE_HZ = 48_000;
    private static final int ROUND_S = 20;
    private static final int BLOCK = 4800;
    private static final int COUNTS = 65_536;
    private static final int[] SHUFFLED = shuffled();
    private static final int[] IN_ORDER = inOrder();

    private final OutputStream to;
    private final short[] run;

    /** @param to takes 48 kHz, two channels, 16 bit, little-endian, as fast as it likes */
    public CountedSound(OutputStream to) {
        this.to = new BufferedOutputStream(to, 4 * BLOCK);
        // Whole revolutions of propeller and crank in a round, so that rounds join without a jump.
        SyntheticRun invented = SyntheticRun.at(SpeedProfile.steady(PROPELLER_HZ, ROUND_S))
                .withLine(1, ONCE, 20)
                .withLine(3, BLADE_PASS, 100)
                .withLine(6, 0.08, 40)
                .withLine(RATIO, 0.03, 10)
                .withLine(2 * RATIO, 0.1, 200)
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
                    block.putShort((short) SHUFFLED[(int) (n % COUNTS)]);
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
        return IN_ORDER[Math.round(sample * 32_768) & 0xFFFF];
    }

    /** Silence stays a count of 0. */
    private static int[] shuffled() {
        int[] order = IntStream.range(0, COUNTS).toArray();
        Random lot = new Random(7);
        for (int i = COUNTS - 1; i > 1; i--) {
            int other = 1 + lot.nextInt(i);
            int moved = order[i];
            order[i] = order[other];
            order[other] = moved;
        }
        return order;
    }

    private static int[] inOrder() {
        int[] counts = new int[COUNTS];
        IntStream.range(0, COUNTS).forEach(n -> counts[SHUFFLED[n]] = n);
        return counts;
    }
}
