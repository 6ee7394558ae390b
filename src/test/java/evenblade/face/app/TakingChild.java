package evenblade.face.app;

import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import java.io.IOException;
import java.io.InputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** A program of its own that records lines into a job as they come, says how many it sent, and may be killed. */
public final class TakingChild {
    private static final int RATE_HZ = 200;

    private TakingChild() {}

    /** @param args the job folder, and how many seconds of lines to send */
    public static void main(String[] args) throws IOException {
        int seconds = Integer.parseInt(args[1]);
        PipedOutputStream out = new PipedOutputStream();
        InputStream in = new PipedInputStream(out, 1 << 16);
        Thread sender = new Thread(() -> send(out, seconds));
        sender.setDaemon(true);
        RecordLines run = RecordLines.prepare(new RecordLines.Request(
                Path.of(args[0]),
                in,
                "invented sensor",
                OptionalDouble.empty(),
                NewRun.labelled("killed", RunSettings.NONE),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
        sender.start();
        run.record();
        System.out.println("kept");
        System.out.flush();
    }

    private static void send(PipedOutputStream out, int seconds) {
        try (out) {
            out.write("time (s),x (g)\n".getBytes(StandardCharsets.US_ASCII));
            long began = System.nanoTime();
            for (int i = 0; i < seconds * RATE_HZ; i++) {
                while (System.nanoTime() - began < 1_000_000_000L / RATE_HZ * i) {
                    Thread.sleep(1);
                }
                double t = (double) i / RATE_HZ;
                String line = String.format(Locale.ROOT, "%.4f,%.4f\n", t, Math.sin(60 * t));
                out.write(line.getBytes(StandardCharsets.US_ASCII));
                out.flush();
                System.out.println(i + 1);
                System.out.flush();
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
