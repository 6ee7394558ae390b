package evenblade.input.intake;

import com.jcraft.jogg.Packet;
import com.jcraft.jorbis.Block;
import com.jcraft.jorbis.Comment;
import com.jcraft.jorbis.DspState;
import com.jcraft.jorbis.Info;
import io.github.jaredmdobson.concentus.OpusDecoder;
import io.github.jaredmdobson.concentus.OpusException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/** Vorbis and Opus in Ogg. Comments are skipped here, since decoders believe the counts in them. */
final class OggForm implements CodedForm {
    /** Opus always plays at this rate (RFC 6716, 2.1.3, from memory). */
    private static final int OPUS_HZ = 48_000;
    /** The longest packet of Opus is 120 ms (RFC 6716, 2.1.4, from memory). */
    private static final int OPUS_MOST_FRAMES = OPUS_HZ * 120 / 1000;

    private static final int VORBIS_NOMINAL_AT = 20; // Vorbis I, 4.2.2
    /** Bytes of the file, from which an average comes where the format states no bit rate. */
    private final long fileBytes;
    /** Frames by the last page; 0 where it can't be found. */
    private final long lastFrame;

    OggForm(long fileBytes, long lastFrame) {
        this.fileBytes = fileBytes;
        this.lastFrame = lastFrame;
    }

    @Override
    public void decode(InputStream bytes, Taker taker) throws IOException {
        OggPackets packets = new OggPackets(bytes, taker);
        byte[] first = packets.next().orElseThrow(() -> new IOException("an Ogg file without a packet"));
        if (starts(first, "OpusHead") && first.length >= 19) {
            opus(first, packets, taker);
        } else if (starts(first, "\u0001vorbis") && first.length >= 30) {
            vorbis(first, packets, taker);
        } else {
            throw new IOException("an Ogg file with neither Vorbis nor Opus");
        }
    }

    private void opus(byte[] head, OggPackets packets, Taker taker) throws IOException {
        int channels = head[9] & 0xFF;
        if (head[18] != 0 || channels < 1 || channels > 2) {
            throw new IOException("an Opus file of " + channels + " channels");
        }
        int preSkip = (head[10] & 0xFF) | (head[11] & 0xFF) << 8;
        packets.next(); // comments
        double seconds = (double) Math.max(0, lastFrame - preSkip) / OPUS_HZ;
        taker.format(new Format(
                BitRate.named("opus", 8 * fileBytes / seconds), true, channels, OPUS_HZ, 16, lastFrame - preSkip));
        try {
            OpusDecoder decoder = new OpusDecoder(OPUS_HZ, channels);
            short[] samples = new short[OPUS_MOST_FRAMES * channels];
            int skip = preSkip;
            long left = lastFrame > preSkip ? lastFrame - preSkip : Long.MAX_VALUE;
            for (Optional<byte[]> each = packets.next(); each.isPresent() && left > 0; each = packets.next()) {
                byte[] packet = each.get();
                try {
                    int frames = decoder.decode(packet, 0, packet.length, samples, 0, OPUS_MOST_FRAMES, false);
                    int from = Math.min(skip, frames);
                    skip -= from;
                    int count = (int) Math.min(left, frames - from);
                    left -= count;
                    float[] shares = new float[count * channels];
                    for (int i = 0; i < shares.length; i++) {
                        shares[i] = samples[from * channels + i] / 32768f;
                    }
                    taker.frames(shares);
                } catch (OpusException | ArrayIndexOutOfBoundsException | AssertionError e) {
                    taker.damaged();
                }
            }
        } catch (OpusException e) {
            throw new IOException("Opus can't be begun", e);
        }
    }

    private void vorbis(byte[] head, OggPackets packets, Taker taker) throws IOException {
        Info info = new Info();
        Comment comment = new Comment();
        info.init();
        comment.init();
        packets.next(); // comments
        byte[] noComments = "\u0003vorbis\0\0\0\0\0\0\0\0\u0001".getBytes(StandardCharsets.ISO_8859_1);
        byte[] setup = packets.next().orElseThrow(() -> new IOException("Vorbis without its tables"));
        boolean begun = info.synthesis_headerin(comment, packet(head, 0)) >= 0
                && info.synthesis_headerin(comment, packet(noComments, 1)) >= 0
                && info.synthesis_headerin(comment, packet(setup, 2)) >= 0;
        if (!begun) {
            throw new IOException("damaged tables of Vorbis");
        }
        taker.format(new Format(
                BitRate.named("vorbis", OggPackets.little(head, VORBIS_NOMINAL_AT)),
                true,
                info.channels,
                info.rate,
                16,
                lastFrame));
        DspState state = new DspState();
        state.synthesis_init(info);
        Block block = new Block(state);
        float[][][] channels = new float[1][][];
        int[] offsets = new int[info.channels];
        int number = 3;
        for (Optional<byte[]> each = packets.next(); each.isPresent(); each = packets.next()) {
            if (block.synthesis(packet(each.get(), number++)) != 0) {
                taker.damaged();
                continue;
            }
            state.synthesis_blockin(block);
            for (int frames = state.synthesis_pcmout(channels, offsets);
                    frames > 0;
                    frames = state.synthesis_pcmout(channels, offsets)) {
                float[] shares = new float[frames * info.channels];
                for (int channel = 0; channel < info.channels; channel++) {
                    for (int i = 0; i < frames; i++) {
                        shares[i * info.channels + channel] = channels[0][channel][offsets[channel] + i];
                    }
                }
                taker.frames(shares);
                state.synthesis_read(frames);
            }
        }
    }

    private static Packet packet(byte[] bytes, int number) {
        Packet packet = new Packet();
        // The decoder looks a few bytes past the end.
        packet.packet_base = Arrays.copyOf(bytes, bytes.length + 16);
        packet.packet = 0;
        packet.bytes = bytes.length;
        packet.b_o_s = number == 0 ? 1 : 0;
        packet.packetno = number;
        return packet;
    }

    private static boolean starts(byte[] bytes, String with) {
        return bytes.length >= with.length()
                && new String(bytes, 0, with.length(), StandardCharsets.ISO_8859_1).equals(with);
    }
}
