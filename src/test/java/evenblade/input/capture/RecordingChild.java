package evenblade.input.capture;

import evenblade.input.audio.SampleCoding;
import java.nio.file.Path;
import java.util.OptionalDouble;

/** A process that records 48 kHz stereo in real time until it is killed, and tells how far it has come. */
public final class RecordingChild {
    private RecordingChild() {}

    /** Records into the file named first. */
    public static void main(String[] args) {
        InputFormat format = new InputFormat(48_000, 2, SampleCoding.SIGNED_16_LITTLE);
        long[] given = {0};
        long began = System.nanoTime();
        ScriptedInput input = new ScriptedInput(format, (read, most) -> {
            long due = (long) ((System.nanoTime() - began) / 1e9 * 48_000) - given[0];
            int frames = (int) Math.max(0, Math.min(most, due));
            given[0] += frames;
            if (frames == 0) {
                try {
                    Thread.sleep(5);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            }
            return frames;
        });
        long[] heard = {0};
        Recorder.prepare(
                        input,
                        Path.of(args[0]),
                        Recorder.Room.of(Path.of(args[0]).getParent()),
                        OptionalDouble.empty(),
                        1)
                .record((block, frames) -> {
                    heard[0] += frames;
                    System.out.println(heard[0]);
                    System.out.flush();
                });
    }
}
