package evenblade.judge.comparison;

import evenblade.base.fact.Worded;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How one figure changed between two dwells at the same speed.
 *
 * @param figure which
 * @param before what the first run says
 * @param after what the second says, in the unit of the first
 * @param percent change, brought to the same speed, without what all lines share; empty where one side is hidden by noise
 * @param ciLowPercent lower end of its 95 % interval; empty where there is none
 * @param ciHighPercent upper end; empty where there is none
 * @param verdict what it comes to
 * @param scatter run-to-run scatter that the interval allows for
 * @param sharedWith names of the lines that it can't be separated from in either run
 */
public record Change(
        Figure figure,
        ComparedValue before,
        ComparedValue after,
        OptionalDouble percent,
        OptionalDouble ciLowPercent,
        OptionalDouble ciHighPercent,
        ChangeVerdict verdict,
        Scatter scatter,
        List<String> sharedWith) {
    /** Nothing falls further than to nothing. */
    private static final double LEAST_PERCENT = -100;

    public Change {
        sharedWith = List.copyOf(sharedWith);
    }

    /**
     * The change by the delta method on the log ratio: {@code L = ln(after/before) − p·ln(n₂/n₁) − c} with
     * 95 % interval {@code L ± √(r₁² + r₂² + 2·t²·s² + (1.96·σ_p·ln(n₂/n₁))² + (1.96·σ_c)²)}; {@code r} the reach
     * of each value, {@code s} and {@code t} the run-to-run scatter and its quantile, {@code p} and {@code
     * σ_p} the speed law, {@code c} and {@code σ_c} what all lines share. Where noise hides one side, only the end of
     * the interval that holds is given.
     *
     * @param common what a sensor put back does to all lines
     */
    static Change of(CommonPart.Step seen, CommonPart common, List<String> sharedWith) {
        double step = seen.logarithm() - common.shift();
        double half = Math.hypot(
                Math.hypot(seen.scatter().with(seen.within(), 2), seen.law().reach()), common.reach());
        boolean fromHidden = seen.before() instanceof ComparedValue.Below;
        boolean toHidden = seen.after() instanceof ComparedValue.Below;
        boolean lower = !fromHidden && step + half < 0;
        boolean higher = !toHidden && step - half > 0;
        return new Change(
                seen.figure(),
                seen.before(),
                seen.after(),
                fromHidden || toHidden ? OptionalDouble.empty() : percent(step),
                toHidden
                        ? (fromHidden ? OptionalDouble.empty() : OptionalDouble.of(LEAST_PERCENT))
                        : percent(step - half),
                fromHidden ? OptionalDouble.empty() : percent(step + half),
                lower ? ChangeVerdict.LOWER : higher ? ChangeVerdict.HIGHER : ChangeVerdict.NO_CHANGE_SHOWN,
                seen.scatter(),
                sharedWith);
    }

    private static OptionalDouble percent(double logarithm) {
        return OptionalDouble.of(100 * Math.expm1(logarithm));
    }

    /** What a change comes to. */
    public enum ChangeVerdict implements Worded {
        LOWER,
        HIGHER,
        NO_CHANGE_SHOWN
    }
}
