package evenblade.keep.practice;

/**
 * The flange's face stands out of square.
 *
 * @param totalM total indicator reading
 * @param dialRadiusM where the dial touched
 * @param highDeg where it is high, from hub position 1 towards position 2
 */
public record InventedRunOut(double totalM, double dialRadiusM, double highDeg) {
    /** Peak to peak over the disc at the tip: {@code TIR·R/r_dial}. */
    public double atTipM(double tipRadiusM) {
        return totalM * tipRadiusM / dialRadiusM;
    }

    /** What it adds to the track of a blade at an angle: half of that, as a cosine about the high side. */
    public double trackM(double tipRadiusM, double angleDeg) {
        return atTipM(tipRadiusM) / 2 * Math.cos(Math.toRadians(angleDeg - highDeg));
    }
}
