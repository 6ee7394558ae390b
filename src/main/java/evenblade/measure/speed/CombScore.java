package evenblade.measure.speed;

/**
 * How many of a shaft's lines stand in a spectrum, for every speed of the shaft: the sum of their credits, on a grid of
 * equal ratios.
 */
final class CombScore {
    private final double firstLn;
    private final double[] score;

    /**
     * @param spectrum to look in
     * @param orders of the shaft
     * @param weights of each
     * @param fromHz slowest speed of the shaft
     * @param toHz fastest
     */
    CombScore(WhitenedLines spectrum, double[] orders, double[] weights, double fromHz, double toHz) {
        this.firstLn = Math.log(fromHz);
        this.score = new double[(int) Math.ceil(Math.log(toHz / fromHz) / WhitenedLines.STEP) + 2];
        for (int k = 0; k < orders.length; k++) {
            spectrum.addCredits(orders[k], weights[k], firstLn, score);
        }
    }

    int size() {
        return score.length;
    }

    double hz(int place) {
        return Math.exp(firstLn + place * WhitenedLines.STEP);
    }

    double at(int place) {
        return score[place];
    }

    /** Places by which a speed of another grid lies further on in this one, after division by a ratio. */
    int shift(CombScore other, double ratio) {
        return (int) Math.rint((other.firstLn - Math.log(ratio) - firstLn) / WhitenedLines.STEP);
    }

    /** At a place; none outside the grid. */
    double atOrNone(int place) {
        return place < 0 || place >= score.length ? 0 : score[place];
    }
}
