package evenblade.findings;

import java.util.Optional;

/** Knows what speaks for and against one cause. */
interface Rule {
    Cause cause();

    /** What a stage says; nothing where no number of it speaks for the cause. */
    Optional<Assessment> weigh(Stage stage);
}
