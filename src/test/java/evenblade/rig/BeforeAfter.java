package evenblade.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * Two runs of one machine, the sensor taken off and put back between them. Remounting multiplies all lines of the second
 * run by one factor exp(common·N(0,1)) and each line by another, exp(each·N(0,1)); the correction multiplies chosen lines
 * by what it truly does (0.7: 30 % less). No deviation: the sensor stayed.
 *
 * @param trueFactor what the correction did to each line
 * @param remounting what the sensor's new seat did to each line, known only to the truth
 */
public record BeforeAfter(
        GroundRun before, GroundRun after, Function<LineId, Double> trueFactor, Function<LineId, Double> remounting) {
    /** Usual deviations: 6 % common, 3 % each (the project's sheet on the maths). */
    public static final double COMMON = 0.06;

    public static final double EACH = 0.03;

    public static BeforeAfter of(Rig rig, Map<LineId, Double> changed, double common, double each, long seed) {
        Function<LineId, Double> remounting = remount(common, each, seed);
        Function<LineId, Double> correction = id -> changed.getOrDefault(id, 1.0);
        Map<String, Double> words = new LinkedHashMap<>();
        changed.forEach((id, factor) -> words.put(id.shaft() + " " + id.order(), factor));
        GroundRun before = rig.runSeed(seed * 2).make();
        GroundRun after = rig.runSeed(seed * 2 + 1)
                .factor(id -> new Phasor(correction.apply(id) * remounting.apply(id), 0))
                .fact("trueFactors", words)
                .fact("remountingCommon", common)
                .fact("remountingEach", each)
                .make();
        return new BeforeAfter(before, after, correction, remounting);
    }

    /** One more run in the same state as {@code rig}, with the sensor seated anew. */
    public static GroundRun repeat(Rig rig, double common, double each, long seed) {
        Function<LineId, Double> remounting = remount(common, each, seed);
        return rig.runSeed(seed)
                .factor(id -> new Phasor(remounting.apply(id), 0))
                .make();
    }

    /** The factors of one seating; a line's factor hangs on the seed and the line only. */
    static Function<LineId, Double> remount(double common, double each, long seed) {
        Dice dice = new Dice(seed).fork(71);
        double all = common * dice.fork(0).normal();
        return id -> Math.exp(all
                + each
                        * dice.fork(Math.round(id.order() * 1000) * 2
                                        + id.shaft().ordinal()
                                        + 1)
                                .normal());
    }
}
