package evenblade.tell.export;

/** Numbers as a table for other programs has them: a point, no grouping, nothing where there is no end. */
final class Cell {
    private Cell() {}

    static String of(double number) {
        return Double.isFinite(number) ? String.valueOf((float) number) : "";
    }
}
