package evenblade.base.numeric;

import java.util.function.DoublePredicate;

/**
 * Where something that holds at one end of an interval and not at the other stops to hold: by halving, which takes
 * steps and flat pieces as they come.
 */
public final class Crossing {
    private Crossing() {}

    /**
     * The middle of what is left after so many halvings.
     *
     * @param holds true at {@code inside}, false at {@code outside}
     * @param halvings each adds a binary digit
     */
    public static double between(DoublePredicate holds, double inside, double outside, int halvings) {
        double in = inside;
        double out = outside;
        for (int i = 0; i < halvings; i++) {
            double middle = 0.5 * (in + out);
            if (holds.test(middle)) {
                in = middle;
            } else {
                out = middle;
            }
        }
        return 0.5 * (in + out);
    }
}
