package evenblade.bench;

import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.StreamSummary;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Times how long a sound file takes from opening to its last sample, with hash and quality: first in
 * a cold virtual machine, then warmed. Argument: the file.
 */
public final class DecodeTiming {
    private DecodeTiming() {}

    public static void main(String[] args) {
        Path file = Path.of(args[0]);
        int rounds = args.length > 1 ? Integer.parseInt(args[1]) : 8;
        for (int round = 0; round < rounds; round++) {
            long start = System.nanoTime();
            double[] sum = {0};
            StreamSummary summary = ((Intake.Streamed) RecordingReader.open(file, IntakeOptions.NONE))
                    .sound()
                    .deliverTo((samples, frames) -> sum[0] += samples[0]);
            System.out.printf(
                    Locale.ROOT,
                    "round %d: %.3f s, %d frames, %s, clipped %.4g, memory %d MB%n",
                    round + 1,
                    (System.nanoTime() - start) * 1e-9,
                    summary.frames(),
                    summary.sha256().hex().substring(0, 8),
                    summary.quality().get(0).clippedShare(),
                    Runtime.getRuntime().totalMemory() >> 20);
        }
    }
}
