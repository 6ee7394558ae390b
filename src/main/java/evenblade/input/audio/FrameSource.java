package evenblade.input.audio;

import java.io.IOException;

/** Where frames of sound come from: a file being read or a live input. */
public interface FrameSource {
    /** Samples per frame. */
    int channels();

    /** Frames per second. */
    double rateHz();

    /**
     * Takes the next frames.
     *
     * @param into filled from its start with interleaved samples as shares of full scale
     * @param frames how many are wanted; {@code into} has room for them
     * @return how many were put in, at least 1; or -1 at the end
     */
    int read(float[] into, int frames) throws IOException;
}
