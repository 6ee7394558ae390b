package evenblade.tie;

import java.util.List;
import java.util.Optional;

/** What the runs of a job say about vibration and track: tied, or why not yet. */
public sealed interface TieAnswer {
    /**
     * The runs tie vibration to track.
     *
     * @param tie the tie
     * @param pitchLeftOut why the blade angles have no part of their own in it, though they were read; empty where they
     *     have one, or weren't read
     */
    record Tied(TrackTie tie, Optional<String> pitchLeftOut) implements TieAnswer {}

    /**
     * The runs can't tell yet.
     *
     * @param why what is missing
     * @param whatWouldSettle the run or measurement that would do it
     * @param sideBySide the two changes, run by run, to look at meanwhile
     */
    record NotYet(String why, String whatWouldSettle, List<SideBySide> sideBySide) implements TieAnswer {
        public NotYet {
            sideBySide = List.copyOf(sideBySide);
        }
    }

    /**
     * Track and vibration of one run.
     *
     * @param label of the run
     * @param trackMm size of the track once a turn, in mm
     * @param amplitude of propeller 1×, in the channel's unit
     */
    record SideBySide(String label, double trackMm, double amplitude) {}
}
