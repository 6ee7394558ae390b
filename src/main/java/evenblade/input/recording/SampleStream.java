package evenblade.input.recording;

/** Sound on its way in: an even clock, too many samples to keep, to be delivered once, in order. */
public interface SampleStream {
    StreamHeader header();

    /**
     * Reads to the end and hands every block to the sink.
     *
     * @throws evenblade.base.problem.BadInput where the samples can't be read
     */
    StreamSummary deliverTo(BlockSink sink);
}
