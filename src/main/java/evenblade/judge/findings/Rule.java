package evenblade.judge.findings;

import java.util.Optional;

/** Knows what speaks for and against one cause. */
interface Rule {
    Cause cause();

    /** What a stage says; nothing where no number of it speaks for the cause. */
    Optional<Assessment> weigh(Stage stage);

    /**
     * Whether a stage in which the rule is silent may still have the cause: its sign is easily missed, and what it is
     * looked for in is as strong as it was.
     *
     * @param symptom of the stage where the rule was surest
     */
    default boolean mayPersist(Stage stage, double symptom) {
        return false;
    }
}
