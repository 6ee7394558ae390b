package evenblade.intake;

import evenblade.recording.Recording;
import evenblade.recording.SampleStream;

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
     */
    record Whole(Recording recording) implements Intake {}
}
