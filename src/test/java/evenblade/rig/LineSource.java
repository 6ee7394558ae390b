package evenblade.rig;

import java.util.List;

/** Whatever makes lines tied to a shaft. What it draws at making stays; what swings is drawn for every run anew. */
public interface LineSource {
    List<Line> lines(SpeedTrack track, Dice dice);
}
