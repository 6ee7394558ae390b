package evenblade.input.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.logging.Logger;
import net.sourceforge.jaad.aac.Decoder;

/** AAC in an MP4 file: a voice memo, or the sound track of a video. */
final class Mp4Form implements CodedForm {
    /** The decoder writes a line for each damaged frame; kept by name, or the silence would be collected. */
    private static final Logger DECODER_LOG = Logger.getLogger("jaad");

    static {
        // Its loggers set levels of their own, so no level of this one holds them; what they write goes no further than
        // here.
        DECODER_LOG.setUseParentHandlers(false);
    }

    /** The decoder gives numbers on the scale of 16-bit samples. */
    private static final float SCALE = 1 / 32768f;

    /** Some 4 s of sound lost in a row: the file is no sound from here on. */
    private static final int MOST_DAMAGED_ON_END = 200;

    private final Path file;

    Mp4Form(Path file) {
        this.file = file;
    }

    @Override
    public void decode(InputStream bytes, Taker taker) throws IOException {
        try (FileChannel channel = FileChannel.open(file)) {
            Mp4Track track = Mp4Track.ofSound(channel);
            Decoder decoder = Decoder.create(track.decoderSetting());
            Told told = new Told(track, taker);
            int damagedOnEnd = 0;
            for (Mp4Track.Sample sample : track.samples()) {
                ByteBuffer frame = ByteBuffer.allocate(sample.bytes());
                while (frame.hasRemaining() && channel.read(frame, sample.offset() + frame.position()) > 0) {
                    // until it is whole
                }
                try {
                    if (frame.hasRemaining()) {
                        throw new IOException("the file ends inside the sound");
                    }
                    told.failure = null;
                    decoder.decodeFrame(frame.array(), told::accept);
                    damagedOnEnd = 0;
                } catch (IOException | RuntimeException e) {
                    if (told.failure != null) {
                        throw told.failure;
                    }
                    taker.damaged();
                    if (++damagedOnEnd > MOST_DAMAGED_ON_END) {
                        throw new IOException("damaged throughout", e);
                    }
                }
                if (told.failure != null) {
                    throw told.failure;
                }
                // Counts what was read and ends where nobody waits any more; the bytes are hashed on the way.
                FlacForm.skip(bytes, Math.min(sample.bytes(), bytes.available()));
            }
        }
    }

    /** Hands on what the decoder gives; a trouble on the other side is kept, for its interface can't throw it. */
    private static final class Told {
        private final Mp4Track track;
        private final Taker taker;
        private Format format;
        private int lanes;
        private IOException failure;

        Told(Mp4Track track, Taker taker) {
            this.track = track;
            this.taker = taker;
        }

        void accept(List<float[]> channels, int frames, int rateHz) {
            try {
                if (format == null) {
                    // One stored channel comes out of the decoder twice.
                    boolean twice = channels.size() == 2 && Arrays.equals(channels.get(0), channels.get(1));
                    lanes = twice && track.storedChannels() == 1 ? 1 : channels.size();
                    String kind = BitRate.named("aac", track.bitsPerSecond());
                    long totalFrames = Math.round(track.seconds() * rateHz);
                    format = new Format(kind, true, lanes, rateHz, 16, totalFrames);
                    taker.format(format);
                }
                if (channels.size() < lanes || rateHz != format.rateHz()) {
                    taker.damaged();
                    return;
                }
                float[] shares = new float[frames * lanes];
                for (int channel = 0; channel < lanes; channel++) {
                    float[] samples = channels.get(channel);
                    for (int i = 0; i < frames; i++) {
                        shares[i * lanes + channel] = samples[i] * SCALE;
                    }
                }
                taker.frames(shares);
            } catch (IOException e) {
                failure = e;
            }
        }
    }
}
