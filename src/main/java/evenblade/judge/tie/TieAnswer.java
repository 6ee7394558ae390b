package evenblade.judge.tie;

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
     */
    record NotYet(String why, String whatWouldSettle) implements TieAnswer {}
}
