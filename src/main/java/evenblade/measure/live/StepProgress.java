package evenblade.measure.live;

import java.util.Optional;

/**
 * How far one step of a stepped run has come.
 *
 * @param number of the step in the plan, from 1
 * @param of how many there are
 * @param engineRpm the speed to hold
 * @param state what is the matter now
 * @param heldS time at that speed so far that will count as a dwell of the recording, seconds
 * @param wantedS time needed at least
 * @param oncePercent half the 95 % interval of propeller once-per-revolution over that time, in percent of it; empty
 *     while it isn't detected
 * @param bladePassPercent the same of blade pass
 */
public record StepProgress(
        int number,
        int of,
        double engineRpm,
        State state,
        double heldS,
        double wantedS,
        Optional<Double> oncePercent,
        Optional<Double> bladePassPercent) {
    /** What is the matter. */
    public enum State {
        /** Not at the speed yet. */
        GO_THERE,
        /** At the speed, not long enough. */
        HOLD,
        /** Long enough for the wanted error. */
        DONE,
        /** Held twice as long as needed, and a line is still too weak for the wanted error. */
        DONE_WEAK
    }

    public boolean done() {
        return state == State.DONE || state == State.DONE_WEAK;
    }
}
