package evenblade.judge.balance;

/**
 * A balance quality grade of the trade for rigid rotors: e·ω in mm/s (ISO 21940-11; read in restatements only).
 *
 * <p>To be shown beside a result, never to judge one: propellers have no grade of their own in that standard, G 6.3 for
 * them is a habit.
 *
 * @param mmPerSecond G
 */
public record BalanceGrade(double mmPerSecond) {
    /** What the trade takes for propellers by habit; from memory. */
    public static final BalanceGrade HABIT_FOR_PROPELLERS = new BalanceGrade(6.3);

    /** The unbalance in g·mm that a rotor may keep: U = 1000·G·m/ω. */
    public double permissibleGmm(double massKg, double rpm) {
        double omega = 2 * Math.PI * rpm / 60;
        return 1000 * mmPerSecond * massKg / omega;
    }
}
