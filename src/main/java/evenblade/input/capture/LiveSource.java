package evenblade.input.capture;

import java.io.Closeable;
import java.io.IOException;
import java.util.Optional;

/** Bytes of sound as they come in. */
public interface LiveSource extends Closeable {
    /** What it is called, for people and for the record. */
    String name();

    InputFormat format();

    /** Begins; what comes in from now on is kept for {@link #read} for a while. */
    void start() throws IOException;

    /**
     * Takes what has come in, or waits a little for it.
     *
     * @param into filled from its start
     * @param mostFrames how many at most; {@code into} has room for them
     * @return how many frames were put in; 0 where nothing came in the meantime; -1 where nothing will
     *     come any more
     */
    int read(byte[] into, int mostFrames) throws IOException;

    /** Where the system takes it from right now, where it can be asked; may take a second. */
    default Optional<String> comesFrom() {
        return Optional.empty();
    }

    @Override
    void close();
}
