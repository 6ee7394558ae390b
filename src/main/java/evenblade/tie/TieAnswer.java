package evenblade.tie;

import java.util.List;

/** What the runs of a job say about vibration and track: tied, or why not yet. */
public sealed interface TieAnswer {
    /** The runs tie vibration to track. */
    record Tied(TrackTie tie) implements TieAnswer {}

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
