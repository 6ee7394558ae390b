package evenblade.report;

import java.util.List;

/**
 * What the measurements point to.
 *
 * @param statement in one sentence
 * @param speaksFor evidence for it, each with its numbers and runs
 * @param speaksAgainst evidence against it, likewise
 * @param next what to do or measure next
 * @param howSure in words
 */
public record Finding(
        String statement, List<String> speaksFor, List<String> speaksAgainst, String next, String howSure) {
    public Finding {
        speaksFor = List.copyOf(speaksFor);
        speaksAgainst = List.copyOf(speaksAgainst);
    }
}
