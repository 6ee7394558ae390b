package evenblade.input.intake;

import java.io.IOException;
import java.io.InputStream;

/** A way to turn the bytes of a coded sound file into frames. What it throws counts as damage of the file. */
interface CodedForm {
    /** Reads to the end and hands on what it finds; {@link Taker#format} comes first. */
    void decode(InputStream bytes, Taker taker) throws IOException;

    /** Who takes what was decoded. */
    interface Taker {
        /** Says how the sound is made, once, before any frame. */
        void format(Format format) throws IOException;

        /** Takes frames, shares of full scale, interleaved; the array is the taker's from then on. */
        void frames(float[] interleaved) throws IOException;

        /** One place was damaged and left out. */
        void damaged();

        /** All samples together aren't those that the checksum in the file was made of. */
        void otherChecksum();
    }

    /**
     * How the sound is made.
     *
     * @param kind short name; with the bit rate where the kind throws away part of the signal
     * @param lossy whether it does
     * @param channels samples per frame
     * @param rateHz frames per second
     * @param bitsPerSample as decoded
     * @param totalFrames by the header; 0 where it doesn't say
     */
    record Format(String kind, boolean lossy, int channels, double rateHz, int bitsPerSample, long totalFrames) {}
}
