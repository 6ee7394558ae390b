package evenblade.job;

import evenblade.problem.BadInput;
import evenblade.units.Length;

/**
 * A length as the user wrote it, and what it was taken for.
 *
 * @param text as entered, with its unit
 * @param length the same as a quantity
 */
public record EnteredLength(String text, Length length) {
    /**
     * Reads what was entered.
     *
     * @throws BadInput at the place, where it isn't a length
     */
    public static EnteredLength parse(String text, BadInput.Place place) {
        return new EnteredLength(text.strip(), Length.parse(text.strip(), place));
    }

    public double millimetres() {
        return length.millimetres();
    }
}
