package evenblade.measure.live;

import evenblade.measure.speed.SpeedNow;
import java.util.Optional;

/**
 * Where the speed stands now.
 *
 * @param toS end of the sound looked at, seconds into the recording
 * @param speed empty where the lines can't be followed, or a longer look hasn't shown yet that they are this machine's
 * @param steadyFromS since when nobody has moved the throttle; empty while it moves, or the speed isn't known
 */
public record LiveNow(double toS, Optional<SpeedNow> speed, Optional<Double> steadyFromS) {}
