package evenblade.tell.export;

import java.util.regex.Pattern;

/** Numbers as a table for other programs has them: a point, no grouping, nothing where there is no end. */
final class Cell {
    /**
     * Before signs that start a formula, plain and in full width: where a cell begins, also for a program that parts cells
     * at semicolons.
     */
    private static final Pattern FORMULA = Pattern.compile("(^|;\\s*)(?=[=+@\uff1d\uff0b\uff0d\uff20-])");

    private static final Pattern CONTROLS = Pattern.compile("[\\p{Cntrl}\\u0080-\\u009f\\u2028\\u2029]+");

    private Cell() {}

    static String of(double number) {
        return Double.isFinite(number) ? String.valueOf((float) number) : "";
    }

    /**
     * Text that a user or a file gave, such that no other program takes it for a formula or for more than one cell: an
     * apostrophe is put before a sign that starts a formula, as spreadsheets' own users do (common practice, no
     * source), and control characters become blanks.
     */
    static String of(String text) {
        return FORMULA.matcher(CONTROLS.matcher(text).replaceAll(" ").strip()).replaceAll("$1'");
    }
}
