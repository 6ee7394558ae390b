package evenblade.input.intake;

import evenblade.input.recording.ChannelLabel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.SampleStream;
import evenblade.input.recording.TableReading;
import java.util.List;
import java.util.stream.IntStream;

/** What opening a file gives: sound still to be delivered, or stamped samples that are all there. */
public sealed interface Intake {
    /**
     * Sound, which may be hours long and is only ever delivered block by block.
     *
     * @param sound its header is read and checked; the samples are read on delivery
     */
    record Streamed(SampleStream sound) implements Intake {}

    /**
     * A table of stamps and values, read whole.
     *
     * @param recording checked, in order of time, with all that had to be assumed
     * @param asRead all that was said or found out about the table; said again, it gives the same recording
     * @param headings of all its columns as written; an empty text where there is none
     */
    record Whole(Recording recording, TableReading asRead, List<String> headings) implements Intake {
        public Whole {
            headings = List.copyOf(headings);
        }

        /** What its channels answer to. */
        public List<ChannelLabel> labels() {
            return IntStream.range(0, recording.channels().size())
                    .mapToObj(i -> {
                        String name = recording.channels().get(i).name();
                        int number = Integer.parseInt(asRead.columns().get(i).column());
                        String heading = headings.get(number - 1);
                        return new ChannelLabel(name, heading.isBlank() ? name : heading, number);
                    })
                    .toList();
        }
    }
}
