package evenblade.rig;

import java.util.List;

/** Whatever makes lines tied to a shaft. What it draws at making stays; what swings is drawn for every run anew. */
public interface LineSource {
    List<Line> lines(SpeedTrack track, Dice dice);

    /**
     * One line of the same strength at every speed and on every axis.
     *
     * @param swing standard deviation of its slow breathing (share; memory 1 s); 0: steady
     */
    static LineSource line(Shaft shaft, double order, double amplitude, double phaseDeg, double swing) {
        Phasor z = Phasor.polar(amplitude, Math.toRadians(phaseDeg));
        return (track, dice) ->
                List.of(Line.swinging(new LineId(shaft, order), (rpm, axis) -> z, track, swing, 1, dice));
    }
}
