package evenblade.base.units;

import java.util.OptionalDouble;

/**
 * Goes once through a text that starts with a number: {@code 1.70}, {@code 3/16}, {@code 1 3/16},
 * {@code 1-3/16}. Written by hand, for a pattern costs more at start than all the rest of the reading.
 */
final class NumberScan {
    private final String text;
    private int at;
    private boolean dividesByZero;

    NumberScan(String text) {
        this.text = text;
    }

    /** Whether a fraction was met with nothing but 0 below the line. */
    boolean dividesByZero() {
        return dividesByZero;
    }

    /** −1 after a minus sign, else 1; blanks after it are passed over. */
    double sign() {
        double sign = take('-') ? -1 : 1;
        if (sign > 0) {
            take('+');
        }
        skipBlanks();
        return sign;
    }

    /** A fraction, a whole number with a fraction, or a decimal; empty where none of them starts here. */
    OptionalDouble size() {
        int start = at;
        String digits = digits();
        if (!digits.isEmpty()) {
            OptionalDouble fraction = over(digits);
            if (fraction.isPresent()) {
                return fraction;
            }
            int end = at;
            skipBlanks();
            boolean apart = at > end || take('-');
            String top = apart ? digits() : "";
            OptionalDouble added = top.isEmpty() ? OptionalDouble.empty() : over(top);
            if (added.isPresent()) {
                return OptionalDouble.of(Double.parseDouble(digits) + added.getAsDouble());
            }
        }
        at = start;
        return decimal();
    }

    /** What is left, without blanks before it. */
    String rest() {
        skipBlanks();
        return text.substring(at);
    }

    /** The fraction of {@code top} over what follows a slash; empty, and nothing taken, without one. */
    private OptionalDouble over(String top) {
        int start = at;
        skipBlanks();
        if (take('/')) {
            skipBlanks();
            String bottom = digits();
            if (!bottom.isEmpty()) {
                dividesByZero = Double.parseDouble(bottom) == 0;
                return OptionalDouble.of(Double.parseDouble(top) / Double.parseDouble(bottom));
            }
        }
        at = start;
        return OptionalDouble.empty();
    }

    private OptionalDouble decimal() {
        int start = at;
        boolean any = !digits().isEmpty();
        if (take('.')) {
            any |= !digits().isEmpty();
        }
        if (!any) {
            return OptionalDouble.empty();
        }
        int end = at;
        if (take('e') || take('E')) {
            if (!take('-')) {
                take('+');
            }
            end = digits().isEmpty() ? end : at;
        }
        at = end;
        return OptionalDouble.of(Double.parseDouble(text.substring(start, end)));
    }

    private String digits() {
        int start = at;
        while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
            at++;
        }
        return text.substring(start, at);
    }

    private boolean take(char wanted) {
        boolean here = at < text.length() && text.charAt(at) == wanted;
        at += here ? 1 : 0;
        return here;
    }

    private void skipBlanks() {
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
    }
}
