package evenblade.machine.installation;

import java.util.ArrayList;
import java.util.List;

/**
 * Two lines that swell and fade together: two sines f₁ and f₂ make a throb at |f₂ − f₁| though nothing turns that slowly.
 *
 * @param lower the lower line
 * @param upper the upper line
 * @param hz how often it swells, per second, above 0
 */
public record Beat(OrderLine lower, OrderLine upper, double hz) {
    /** Slower ones pass for a change of the engine's own speed (by judgement, no source). */
    static final double SLOWEST_HZ = 1;
    /** Faster ones are felt as roughness and no more as a throb (by judgement, no source). */
    static final double FASTEST_HZ = 8;

    /** Whether it is slow enough, and not too slow, to be felt as a throb. */
    public boolean felt() {
        return hz >= SLOWEST_HZ && hz <= FASTEST_HZ;
    }

    /** The throbs that lines would make at a propeller speed in Hz, all pairs, slowest first. */
    public static List<Beat> among(List<OrderLine> lines, double propellerHz) {
        List<Beat> beats = new ArrayList<>();
        for (OrderLine a : lines) {
            for (OrderLine b : lines) {
                Beat beat = new Beat(a, b, (b.propellerOrder() - a.propellerOrder()) * propellerHz);
                if (beat.felt()) {
                    beats.add(beat);
                }
            }
        }
        beats.sort((x, y) -> Double.compare(x.hz(), y.hz()));
        return beats;
    }

    /** Whether a line is one of those that are strong on a sound machine: 1× of a shaft, blade pass, firing. */
    public static boolean usuallyStrong(OrderLine line) {
        return line.role() != OrderLine.Role.MESH
                && (line.propellerOnce()
                        || line.bladePass()
                        || line.firing()
                        || line.of() == Shaft.CRANK && line.order() == 1);
    }
}
