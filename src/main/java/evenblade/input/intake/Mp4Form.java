package evenblade.input.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.logging.Level;
import java.util.logging.Logger;
import net.sourceforge.jaad.aac.Decoder;

/** AAC in an MP4 file: a voice memo, or the sound track of a video. */
final class Mp4Form implements CodedForm {
    /** The decoder writes a line for each damaged frame; kept by name, or the silence would be collected. */
    private static final Logger DECODER_LOG = Logger.getLogger("net.sourceforge.jaad");

    static {
        DECODER_LOG.setLevel(Level.OFF);
    }

    /** The decoder gives numbers on the scale of 16-bit samples. */
    private static final float SCALE = 1 / 32768f;

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
        private IOException failure;

        Told(Mp4Track track, Taker taker) {
            this.track = track;
            this.taker = taker;
        }

        void accept(java.util.List<float[]> channels, int frames, int rateHz) {
            try {
                if (format == null) {
                    String kind = BitRate.named("aac", track.bitsPerSecond());
                    format = new Format(kind, true, channels.size(), rateHz, 16, 0);
                    taker.format(format);
                }
                if (channels.size() != format.channels() || rateHz != format.rateHz()) {
                    taker.damaged();
                    return;
                }
                float[] shares = new float[frames * channels.size()];
                for (int channel = 0; channel < channels.size(); channel++) {
                    float[] samples = channels.get(channel);
                    for (int i = 0; i < frames; i++) {
                        shares[i * channels.size() + channel] = samples[i] * SCALE;
                    }
                }
                taker.frames(shares);
            } catch (IOException e) {
                failure = e;
            }
        }
    }
}
