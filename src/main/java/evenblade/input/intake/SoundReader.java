package evenblade.input.intake;

import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.SampleStream;
import evenblade.input.recording.StreamHeader;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** Reads the header of a sound file and makes the stream that will deliver its samples. */
final class SoundReader {
    private static final FullScale UNCALIBRATED = new FullScale(1, SignalUnit.FULL_SCALE);

    private SoundReader() {}

    static SampleStream open(Path file, FileKind kind, IntakeOptions options) throws IOException {
        return switch (kind) {
            case FLAC, MP3, MP4, OGG -> coded(file, kind, options);
            default -> pcm(file, kind, options);
        };
    }

    private static SampleStream pcm(Path file, FileKind kind, IntakeOptions options) throws IOException {
        try (FileChannel channel = FileChannel.open(file)) {
            ByteOrder order = kind == FileKind.WAV ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
            HeaderBytes bytes = new HeaderBytes(file, channel, channel.size(), order);
            PcmLayout layout =
                    switch (kind) {
                        case WAV -> RiffWave.parse(bytes);
                        case AIFF -> AiffForm.parse(bytes);
                        case AU -> SunAudio.parse(bytes);
                        default -> throw new IllegalArgumentException(kind + " is no uncompressed sound");
                    };
            SignalChecks.requireLength(BadInput.in(file), layout.frames() / layout.rateHz());
            StreamHeader header = header(
                    file,
                    layout.kind(),
                    false,
                    layout.rateHz(),
                    layout.bitsPerSample(),
                    OptionalLong.of(layout.frames()),
                    layout.channels(),
                    options);
            return new PcmSound(header, layout);
        }
    }

    private static SampleStream coded(Path file, FileKind kind, IntakeOptions options) throws IOException {
        CodedForm.Format format = CodedSound.format(file, kind);
        if (format.lossy() && options.fullScale().isPresent()) {
            throw BadInput.in(file)
                    .found(
                            "sound stored with loss (" + format.kind() + "), whose amplitudes are never absolute",
                            "no full scale with it");
        }
        long frames = Math.max(0, format.totalFrames());
        if (frames > 0) {
            SignalChecks.requireLength(BadInput.in(file), frames / format.rateHz());
        }
        return new CodedSound(
                header(
                        file,
                        format.kind(),
                        format.lossy(),
                        format.rateHz(),
                        format.bitsPerSample(),
                        frames > 0 ? OptionalLong.of(frames) : OptionalLong.empty(),
                        format.channels(),
                        options),
                kind);
    }

    private static StreamHeader header(
            Path file,
            String kind,
            boolean lossy,
            double rateHz,
            int bits,
            OptionalLong frames,
            int channels,
            IntakeOptions options) {
        FullScale fullScale = options.fullScale().orElse(UNCALIBRATED);
        return new StreamHeader(
                file, kind, lossy, rateHz, bits, frames, names(channels), fullScale.unit(), fullScale.value());
    }

    private static List<String> names(int channels) {
        if (channels == 1) {
            return List.of("mono");
        }
        if (channels == 2) {
            return List.of("left", "right");
        }
        List<String> names = new ArrayList<>();
        for (int i = 1; i <= channels; i++) {
            names.add("channel " + i);
        }
        return names;
    }
}
