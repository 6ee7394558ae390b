package evenblade.input.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AudioPathTest {
    /** Gives numbered frames, a random few at a time. */
    private static final class Numbered implements FrameSource {
        private final int channels;
        private final int frames;
        private final Random random;
        private int next;

        Numbered(int channels, int frames, long seed) {
            this.channels = channels;
            this.frames = frames;
            this.random = new Random(seed);
        }

        static float sample(int frame, int channel) {
            return Float.intBitsToFloat(0x3000_0000 + 16 * frame + channel);
        }

        @Override
        public int channels() {
            return channels;
        }

        @Override
        public double rateHz() {
            return 8000;
        }

        @Override
        public int read(float[] into, int wanted) throws IOException {
            if (next == frames) {
                return -1;
            }
            int count = Math.min(frames - next, 1 + random.nextInt(wanted));
            for (int i = 0; i < count * channels; i++) {
                into[i] = sample(next + i / channels, i % channels);
            }
            next += count;
            return count;
        }
    }

    @ParameterizedTest
    @CsvSource({
        "1, 1, 64",
        "1, 63, 64",
        "1, 64, 64",
        "1, 65, 64",
        "2, 128, 64",
        "2, 1000, 64",
        "3, 1001, 7",
        "6, 10000, 1024",
        "1, 5, 1"
    })
    void everyFrameArrivesOnceInOrderBitForBitInWholeBlocks(int channels, int frames, int block) {
        for (long seed = 1; seed <= 5; seed++) {
            List<Integer> blocks = new ArrayList<>();
            int[] at = {0};
            long delivered = new AudioPath(new Numbered(channels, frames, seed), block).deliverTo((samples, count) -> {
                blocks.add(count);
                for (int i = 0; i < count * channels; i++) {
                    if (samples[i] != Numbered.sample(at[0] + i / channels, i % channels)) {
                        throw new AssertionError("frame " + (at[0] + i / channels) + " is not itself");
                    }
                }
                at[0] += count;
            });
            assertThat(delivered).isEqualTo(frames);
            assertThat(at[0]).isEqualTo(frames);
            assertThat(blocks.subList(0, blocks.size() - 1)).allMatch(count -> count == block);
            assertThat(blocks.get(blocks.size() - 1)).isBetween(1, block);
        }
    }

    @Test
    void anEmptySourceDeliversNothing() {
        assertThat(new AudioPath(new Numbered(2, 0, 1), 64).deliverTo((samples, frames) -> {}))
                .isZero();
    }

    @Test
    void aStopEndsTheDelivery() {
        AudioPath path = new AudioPath(new Numbered(1, Integer.MAX_VALUE / 32, 1), 64);
        int[] blocks = {0};
        path.deliverTo((samples, frames) -> {
            if (++blocks[0] == 10) {
                path.stop();
            }
        });
        assertThat(blocks[0]).isBetween(10, 11);
    }

    private static FrameSource failing(RuntimeException unchecked, IOException checked) {
        return new FrameSource() {
            @Override
            public int channels() {
                return 1;
            }

            @Override
            public double rateHz() {
                return 8000;
            }

            @Override
            public int read(float[] into, int frames) throws IOException {
                if (unchecked != null) {
                    throw unchecked;
                }
                throw checked;
            }
        };
    }

    @Test
    void failuresOfTheSourceComeOutAndAreNotTakenForTheEnd() {
        assertThatThrownBy(() -> new AudioPath(failing(null, new IOException("disk gone")), 64)
                        .deliverTo((samples, frames) -> {}))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessageContaining("disk gone");
        assertThatThrownBy(() -> new AudioPath(failing(new IndexOutOfBoundsException("fault"), null), 64)
                        .deliverTo((samples, frames) -> {}))
                .isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void failuresOfTheSinkComeOut() {
        assertThatThrownBy(() -> new AudioPath(new Numbered(1, 100, 1), 64).deliverTo((samples, frames) -> {
                    throw new IllegalArgumentException("sink");
                }))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void fullScaleIsThePowerOfTwoInEveryWholeNumberFormat() {
        float[] into = new float[2];
        SampleCoding.SIGNED_16_LITTLE.decode(new byte[] {0, (byte) 0x80, (byte) 0xff, 0x7f}, 0, into, 2);
        assertThat(into).containsExactly(-1f, 32767f / 32768f);
        SampleCoding.UNSIGNED_8.decode(new byte[] {0, (byte) 0xff}, 0, into, 2);
        assertThat(into).containsExactly(-1f, 127f / 128f);
        SampleCoding.SIGNED_24_BIG.decode(new byte[] {(byte) 0x80, 0, 0, 0x40, 0, 0}, 0, into, 2);
        assertThat(into).containsExactly(-1f, 0.5f);
        SampleCoding.SIGNED_32_BIG.decode(new byte[] {(byte) 0x80, 0, 0, 0, 0x40, 0, 0, 0}, 0, into, 2);
        assertThat(into).containsExactly(-1f, 0.5f);
    }

    @ParameterizedTest
    @CsvSource({"8", "16", "24", "32"})
    void byteOrdersMirrorEachOther(int bits) {
        byte[] little = new byte[bits / 8 * 500];
        new Random(bits).nextBytes(little);
        byte[] big = little.clone();
        int width = bits / 8;
        for (int i = 0; i < little.length; i++) {
            big[i] = little[i / width * width + width - 1 - i % width];
        }
        float[] a = new float[500];
        float[] b = new float[500];
        SampleCoding.signed(bits, java.nio.ByteOrder.LITTLE_ENDIAN).decode(little, 0, a, 500);
        SampleCoding.signed(bits, java.nio.ByteOrder.BIG_ENDIAN).decode(big, 0, b, 500);
        assertThat(a).isEqualTo(b);
        assertThat(Arrays.equals(a, new float[500])).isFalse();
    }
}
