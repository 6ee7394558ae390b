package evenblade.judge.findings;

/**
 * How much of the shaking a cause's line carries: peak velocities of the dwell and direction where the line is largest.
 *
 * @param mmS of the line, mm/s
 * @param ofMmS of all lines that stand out there, mm/s as root of the sum of squares
 */
public record Carried(double mmS, double ofMmS) {
    /** Share of the power of all lines, 0 to 1. */
    public double share() {
        return ofMmS > 0 ? Math.min(1, mmS * mmS / (ofMmS * ofMmS)) : 0;
    }
}
