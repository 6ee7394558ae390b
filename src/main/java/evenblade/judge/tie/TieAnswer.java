package evenblade.judge.tie;

import evenblade.base.fact.Fact;
import java.util.Optional;

/** What the runs of a job say about vibration and track: tied, or why not yet. */
public sealed interface TieAnswer {
    /**
     * The runs tie vibration to track.
     *
     * @param tie the tie
     * @param pitchLeftOut why the blade angles have no part of their own in it, though they were read; empty where they
     *     have one, or weren't read
     * @param follows what it can be said to tie the shaking to
     */
    record Tied(TrackTie tie, Optional<Fact> pitchLeftOut, Follows follows) implements TieAnswer {}

    /** What a change of the shaking went along with. */
    enum Follows {
        /** Track was changed while the blades stayed: by shims, by resetting. */
        TRACK,
        /**
         * The blades were moved, which turns track, mass and pitch together: k·T is then what goes with the blades, all
         * three of them, and c what stays with hub and engine.
         */
        BLADES
    }

    /**
     * The runs can't tell yet.
     *
     * @param why what is missing
     * @param whatWouldSettle the run or measurement that would do it
     */
    record NotYet(Fact why, Fact whatWouldSettle) implements TieAnswer {}
}
