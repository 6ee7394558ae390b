package evenblade.measure.live;

import evenblade.measure.speed.SpeedNow;
import java.util.Optional;

/** Told of what the live analysis finds, on its own threads. */
public interface LiveListener {
    /** Where the speed stands, some times a second. */
    void now(LiveNow now);

    /** What the long window shows, about once a second. */
    void window(LiveReading reading);

    /** The analysis has failed and says nothing any more; whoever records goes on. */
    void stopped();

    /**
     * Where the speed stands now.
     *
     * @param toS end of the sound looked at, seconds into the recording
     * @param speed empty where the lines can't be followed, or a longer look hasn't shown yet that they are this machine's
     * @param steadyFromS since when nobody has moved the throttle; empty while it moves, or the speed isn't known
     */
    record LiveNow(double toS, Optional<SpeedNow> speed, Optional<Double> steadyFromS) {}
}
