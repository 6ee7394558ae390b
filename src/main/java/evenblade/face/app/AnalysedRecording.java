package evenblade.face.app;

import evenblade.input.recording.Recording;
import evenblade.measure.orders.RunOrders;

/**
 * One recording, analysed.
 *
 * @param orders the answer
 * @param recording what it was measured on, for pictures: the analysed channels in the order of {@link
 *     RunOrders#channels}, sound at a lower rate than the file's
 */
public record AnalysedRecording(RunOrders orders, Recording recording) {}
