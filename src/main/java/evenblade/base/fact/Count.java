package evenblade.base.fact;

/**
 * How many there are.
 *
 * @param number not below 0
 */
public record Count(long number) implements Value {
    public Count {
        if (number < 0) {
            throw new IllegalArgumentException(number + " of something");
        }
    }
}
