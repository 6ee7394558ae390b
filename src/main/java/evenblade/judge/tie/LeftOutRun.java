package evenblade.judge.tie;

/**
 * A run that couldn't be tied to a track.
 *
 * @param run its name
 * @param why what is missing
 */
public record LeftOutRun(String run, Why why) {
    /** What is missing. */
    public enum Why {
        NO_MARKS_BEFORE,
        /** Something was changed before it, and the tips weren't marked again. */
        NOT_MARKED_AGAIN,
        /** Other balance weights were on the hub than in most runs: they shake at 1× too. */
        OTHER_WEIGHTS_ON,
        /** No propeller 1× is seen alone on the channel at the speed. */
        NOT_SEEN
    }
}
