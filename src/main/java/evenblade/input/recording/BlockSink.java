package evenblade.input.recording;

/** Takes sound block by block. */
@FunctionalInterface
public interface BlockSink {
    /**
     * Takes the next block.
     *
     * @param interleaved samples as a share of full scale (-1 to 1), frame after frame, channels in
     *     file order; {@link StreamHeader#fullScale} times that is the value. The array is reused by
     *     the sender, so what is kept must be copied
     * @param frames number of frames in it
     */
    void accept(float[] interleaved, int frames);
}
