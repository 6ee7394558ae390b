package evenblade.tell.chart;

import java.util.OptionalDouble;

/**
 * A line to mark in a spectrum or waterfall.
 *
 * @param name as labelled; lines that lie on each other are named together
 * @param kind whose line it is
 * @param propellerOrder as a multiple of propeller speed; 0 where no order was looked for
 * @param frequencyHz where it lies
 * @param amplitude measured peak value in the channel's unit; empty where nothing was measured
 * @param detected whether it stands out of the noise
 */
public record OrderMark(
        String name,
        MarkKind kind,
        double propellerOrder,
        double frequencyHz,
        OptionalDouble amplitude,
        boolean detected) {}
