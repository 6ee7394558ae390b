package evenblade.input.capture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * A serial line without a wire: what is written to one end is read at the other, as a sensor's lines are. Either end may be
 * closed and opened again.
 *
 * @param pair what joins the ends
 * @param near where the program reads
 * @param far where the sensor writes
 */
public record PseudoTerminals(Process pair, Path near, Path far) implements AutoCloseable {
    /** Makes a pair; skips the test where nothing here can. */
    public static PseudoTerminals in(Path folder) throws IOException, InterruptedException {
        Path near = folder.resolve("near");
        Path far = folder.resolve("far");
        String end = "pty,raw,echo=0,ignoreeof,link=";
        Process pair;
        try {
            pair = new ProcessBuilder("socat", end + near, end + far).start();
        } catch (IOException e) {
            Assumptions.abort("no socat here to make a pair of pseudo-terminals");
            throw e;
        }
        for (int i = 0; i < 100 && !(Files.exists(near) && Files.exists(far)); i++) {
            TimeUnit.MILLISECONDS.sleep(20);
        }
        return new PseudoTerminals(pair, near, far);
    }

    /** The port as the system calls it. */
    public String port() throws IOException {
        return near.toRealPath().toString();
    }

    /** Pulls it out. */
    @Override
    public void close() {
        pair.destroy();
    }
}
