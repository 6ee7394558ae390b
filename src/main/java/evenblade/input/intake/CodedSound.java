package evenblade.input.intake;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.recording.BlockSink;
import evenblade.input.recording.SampleStream;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Sound that is stored coded: FLAC without loss; AAC, MP3, Vorbis and Opus with it. */
final class CodedSound implements SampleStream {
    /** Pages of Ogg are at most this long, so the last one begins in it. */
    private static final int LONGEST_OGG_PAGE = 65_307;
    /** An encoder pads the end by up to a few blocks, in s. */
    private static final double PADDING_S = 0.2;

    private final StreamHeader header;
    private final FileKind kind;

    CodedSound(StreamHeader header, FileKind kind) {
        this.header = header;
        this.kind = kind;
    }

    /**
     * How a file's sound is made.
     *
     * @throws BadInput where nothing in it can be decoded
     */
    static CodedForm.Format format(Path file, FileKind kind) throws IOException {
        try (InputStream bytes = new BufferedInputStream(Files.newInputStream(file));
                CagedSource source = new CagedSource(form(file, kind), bytes)) {
            try {
                return source.format();
            } catch (IOException e) {
                throw BadInput.in(file).found(kind.words() + " in which nothing can be decoded", FileKind.READABLE);
            }
        }
    }

    private static CodedForm form(Path file, FileKind kind) throws IOException {
        return switch (kind) {
            case FLAC -> new FlacForm();
            case MP3 -> new Mp3Form(Files.size(file));
            case OGG -> new OggForm(Files.size(file), lastOggFrame(file));
            case MP4 -> new Mp4Form(file);
            default -> throw new IllegalArgumentException(kind + " isn't coded sound");
        };
    }

    /** The number of frames by the last page of an Ogg file; 0 where there is no such page. */
    private static long lastOggFrame(Path file) throws IOException {
        try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
            byte[] end = new byte[(int) Math.min(LONGEST_OGG_PAGE, in.length())];
            in.seek(in.length() - end.length);
            in.readFully(end);
            int at = new String(end, StandardCharsets.ISO_8859_1).lastIndexOf("OggS");
            if (at < 0 || at + 14 > end.length) {
                return 0;
            }
            long frames = OggPackets.little(end, at + 6) & 0xFFFFFFFFL | (long) OggPackets.little(end, at + 10) << 32;
            return Math.max(0, frames);
        }
    }

    @Override
    public StreamHeader header() {
        return header;
    }

    @Override
    public StreamSummary deliverTo(BlockSink sink) {
        MeteredSink metered = new MeteredSink(header, sink);
        try (HashedFile bytes = new HashedFile(header.file())) {
            long frames;
            List<Warning> repairs;
            try (CagedSource source = new CagedSource(form(header.file(), kind), bytes)) {
                CodedForm.Format format = source.format();
                frames = metered.deliver(source);
                repairs = repairs(source, format, frames);
            }
            return metered.summary(frames, bytes.hashOfAll(), repairs);
        } catch (IOException e) {
            throw Unreadable.because(header.file(), e);
        }
    }

    private List<Warning> repairs(CagedSource source, CodedForm.Format format, long frames) {
        List<Warning> warnings = new ArrayList<>();
        if (source.damagedPlaces() > 0) {
            warnings.add(
                    Warning.of(WarningCode.DAMAGED_BLOCKS, Subject.Whole.RECORDING, new Count(source.damagedPlaces())));
        }
        double apartS = Math.abs(format.totalFrames() - frames) / header.sampleRateHz();
        if (format.totalFrames() > 0 && (format.lossy() ? apartS > PADDING_S : apartS > 0)) {
            warnings.add(Warning.of(
                    WarningCode.LENGTH_REPAIRED,
                    Subject.Whole.RECORDING,
                    Fact.of(
                            IntakeFact.LENGTH_CUT,
                            Measure.TIME.of(format.totalFrames() / header.sampleRateHz()),
                            Measure.TIME.of(frames / header.sampleRateHz()))));
        }
        // Sound that is missing or cut differs anyhow.
        if (warnings.isEmpty() && source.otherChecksum()) {
            warnings.add(Warning.of(WarningCode.CHECKSUM_DIFFERS, Subject.Whole.RECORDING));
        }
        return warnings;
    }
}
