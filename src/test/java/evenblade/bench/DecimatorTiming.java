package evenblade.bench;

import evenblade.recording.ChannelQuality;
import evenblade.recording.StreamHeader;
import evenblade.recording.StreamSummary;
import evenblade.signal.Decimator;
import evenblade.units.SignalUnit;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.Random;

/** Times the reduction of ten minutes of 48 kHz mono, first run (fresh JVM) and later ones. */
final class DecimatorTiming {
    private DecimatorTiming() {}

    public static void main(String[] args) {
        double keepHz = args.length > 0 ? Double.parseDouble(args[0]) : 1000;
        int block = 4096;
        float[] samples = new float[block];
        Random random = new Random(1);
        for (int i = 0; i < block; i++) {
            samples[i] = random.nextFloat();
        }
        for (int run = 0; run < 6; run++) {
            long start = System.nanoTime();
            Decimator decimator = Decimator.plan(48000, keepHz, 1, 0);
            for (int n = 0; n < 28_800_000; n += block) {
                decimator.accept(samples, block);
            }
            int size = decimator
                    .recording(
                            new StreamHeader(
                                    Path.of("-"),
                                    "wav",
                                    false,
                                    48000,
                                    16,
                                    OptionalLong.empty(),
                                    List.of("mono"),
                                    SignalUnit.FULL_SCALE,
                                    1),
                            new StreamSummary(
                                    "", 28_800_000, List.of(new ChannelQuality("mono", 0, 0, 0, 0, 0)), List.of()))
                    .time()
                    .size();
            System.out.printf(
                    Locale.ROOT,
                    "decimator factor %d kept %d run %d: %.1f ms%n",
                    decimator.factor(),
                    size,
                    run,
                    (System.nanoTime() - start) / 1e6);
        }
    }
}
