package evenblade.measure.lines;

/**
 * A tone in the stretch looked at.
 *
 * @param frequencyHz where it stands
 * @param amplitude peak value of the sine, in the channel's unit; of a line that wanders a little, of the sine with the
 *     same power
 * @param standardError of the amplitude, from the noise beside the line; of a line that isn't steady, from the scatter
 *     between stretches where that is larger
 * @param steady whether it keeps frequency and amplitude through the stretch, as far as the noise lets one tell; not so
 *     where it comes and goes, moves with the speed, or is two lines too close to each other
 */
public record SteadyLine(double frequencyHz, double amplitude, double standardError, boolean steady) {}
