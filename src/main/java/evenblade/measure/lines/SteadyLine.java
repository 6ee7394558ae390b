package evenblade.measure.lines;

/**
 * A tone that stands at one frequency through the stretch looked at.
 *
 * @param frequencyHz where it stands
 * @param amplitude peak value of the sine, in the channel's unit; of a line that wanders a little, of the sine with the
 *     same power
 * @param standardError of the amplitude, from the noise beside the line
 */
public record SteadyLine(double frequencyHz, double amplitude, double standardError) {}
