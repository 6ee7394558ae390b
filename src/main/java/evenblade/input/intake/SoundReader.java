package evenblade.input.intake;

import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.SampleStream;
import evenblade.input.recording.StreamHeader;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** Reads the header of a sound file and makes the stream that will deliver its samples. */
final class SoundReader {
    private static final FullScale UNCALIBRATED = new FullScale(1, SignalUnit.FULL_SCALE);

    private SoundReader() {}

    static SampleStream open(Path file, FileKind kind, IntakeOptions options) throws IOException {
        return kind == FileKind.FLAC ? flac(file, options) : pcm(file, kind, options);
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
                    layout.rateHz(),
                    layout.bitsPerSample(),
                    OptionalLong.of(layout.frames()),
                    layout.channels(),
                    options);
            return new PcmSound(header, layout);
        }
    }

    private static SampleStream flac(Path file, IntakeOptions options) throws IOException {
        try (InputStream bytes = new BufferedInputStream(Files.newInputStream(file))) {
            FlacSource source = new FlacSource(bytes);
            long frames = source.totalFrames();
            if (frames > 0) {
                SignalChecks.requireLength(BadInput.in(file), frames / source.rateHz());
            }
            StreamHeader header = header(
                    file,
                    "flac",
                    source.rateHz(),
                    source.bitsPerSample(),
                    frames > 0 ? OptionalLong.of(frames) : OptionalLong.empty(),
                    source.channels(),
                    options);
            return new FlacSound(header);
        }
    }

    private static StreamHeader header(
            Path file, String kind, double rateHz, int bits, OptionalLong frames, int channels, IntakeOptions options) {
        FullScale fullScale = options.fullScale().orElse(UNCALIBRATED);
        return new StreamHeader(
                file, kind, false, rateHz, bits, frames, names(channels), fullScale.unit(), fullScale.value());
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
