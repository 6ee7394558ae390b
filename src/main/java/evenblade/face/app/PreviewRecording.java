package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.base.units.SignalUnit;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.Recording;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.TableReading;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Answers what a recording looks like to the reader, before it is taken into a job. */
public final class PreviewRecording {
    private PreviewRecording() {}

    /**
     * What the reader sees.
     *
     * @param kind of the file
     * @param sampleRateHz as the header says or as measured on the stamps
     * @param durationS where it is known before all samples are read
     * @param lossy whether the kind throws away part of the signal
     * @param sound whether a full scale can be stated
     * @param channels in file order
     * @param assumed what the reader had to assume or repair
     * @param table how it was read, where it is a table
     */
    public record Preview(
            String kind,
            double sampleRateHz,
            OptionalDouble durationS,
            boolean lossy,
            boolean sound,
            List<SeenChannel> channels,
            List<Warning> assumed,
            Optional<SeenTable> table) {
        public Preview {
            channels = List.copyOf(channels);
            assumed = List.copyOf(assumed);
        }

        /** The highest frequency that can be measured. */
        public double usableUpToHz() {
            return Recording.USABLE_SHARE_OF_RATE * sampleRateHz;
        }
    }

    /**
     * A channel.
     *
     * @param number counted from 1; that of its column in a table
     * @param name as the file or the reader calls it
     * @param unit of its values
     */
    public record SeenChannel(int number, String name, SignalUnit unit) {}

    /**
     * A table as it was read.
     *
     * @param asRead what was said and what the reader found out; never without separator, decimal sign and time column
     * @param headings of all columns as written; an empty text where there is none
     */
    public record SeenTable(TableReading asRead, List<String> headings) {
        public SeenTable {
            headings = List.copyOf(headings);
        }
    }

    /**
     * Looks into a file. A table is read whole; of sound only the header.
     *
     * @param fullScale what a full-scale sample stands for, as entered
     * @param said how a table is to be read
     * @throws BadInput where the file or the full scale can't be used
     */
    public static Preview preview(Path recording, Optional<String> fullScale, TableReading said) {
        IntakeOptions options =
                new IntakeOptions(fullScale.map(text -> FullScale.parse(text, BadInput.in("full scale"))), said);
        Intake intake = RecordingReader.open(recording, options);
        if (intake instanceof Intake.Streamed streamed) {
            return sound(streamed.sound().header());
        }
        Intake.Whole whole = (Intake.Whole) intake;
        Recording table = whole.recording();
        return new Preview(
                table.source().kind(),
                table.source().sampleRateHz(),
                OptionalDouble.of(table.source().durationS()),
                table.source().lossy(),
                false,
                IntStream.range(0, table.channels().size())
                        .mapToObj(i -> new SeenChannel(
                                whole.labels().get(i).number(),
                                table.channels().get(i).name(),
                                table.channels().get(i).unit()))
                        .toList(),
                table.warnings(),
                Optional.of(new SeenTable(whole.asRead(), whole.headings())));
    }

    private static Preview sound(StreamHeader header) {
        return new Preview(
                header.kind(),
                header.sampleRateHz(),
                header.frames().isPresent()
                        ? OptionalDouble.of(header.frames().getAsLong() / header.sampleRateHz())
                        : OptionalDouble.empty(),
                header.lossy(),
                true,
                IntStream.range(0, header.channels().size())
                        .mapToObj(i -> new SeenChannel(i + 1, header.channels().get(i), header.unit()))
                        .toList(),
                List.of(),
                Optional.empty());
    }
}
