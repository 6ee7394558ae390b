package evenblade.measure.live;

import evenblade.measure.live.LiveListener.LiveNow;
import evenblade.measure.speed.DoubtfulDwell;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedNow;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * Says which of the quick speeds may be shown. A long window has to confirm first that this machine turns, and with how
 * much evidence its lines show at that; from then on a quick speed counts while it has nearly as much and no other
 * speed does. A moving throttle blurs the lines, so figures go blank by themselves until it stands again.
 */
final class SpeedFollower {
    /** Share of the usual evidence: steady lines keep above three quarters, moving ones fall below a third. */
    private static final double LEAST_SHARE = 0.55;
    /** Half the speed, the usual rival, comes to 0.5 to 0.8, most where there is little noise; any speed to 0.9 in blurred lines. */
    private static final double MOST_RIVAL = 0.87;
    /** So long a quick speed is believed without a long window that confirms it again. */
    private static final double BELIEVED_S = 30;
    /** The usual evidence is taken from so long before a window's end. */
    private static final double KEPT_S = 6;
    /** Quick speed and dwell are one speed up to here: places of lines are good to some 0.5 %. */
    private static final double SAME = 0.015;
    /** Over so long the speed must keep within {@link #SAME} to be steady. */
    private static final double STEADY_S = 1;

    /** Quick speeds that make a hold: three seconds of them. */
    private static final int LEAST_SAME = 12;
    /** Share of the quick speeds of a hold that agree with it; single ones may stray in noise. */
    private static final double MOSTLY = 0.75;

    private final Deque<SpeedNow> lately = new ArrayDeque<>();
    private Optional<Double> usualEvidence = Optional.empty();
    private double confirmedS;
    private Optional<Double> heldHz = Optional.empty();
    private Optional<Double> steadyFromS = Optional.empty();
    private double meanHz;

    /** Takes the next quick speed; empty where there was none. */
    synchronized LiveNow take(double toS, Optional<SpeedNow> found) {
        found.ifPresent(lately::addLast);
        while (!lately.isEmpty() && toS - lately.peekFirst().toS() > KEPT_S) {
            lately.removeFirst();
        }
        Optional<SpeedNow> believed = found.filter(this::believed);
        steadyFromS = believed.flatMap(this::steadyFrom);
        return new LiveNow(toS, believed, steadyFromS.filter(from -> toS - from >= STEADY_S));
    }

    private boolean believed(SpeedNow now) {
        return usualEvidence
                        .filter(usual -> now.evidence() >= LEAST_SHARE * usual)
                        .isPresent()
                && (now.rivalShare() <= MOST_RIVAL || goesOn(now))
                && now.toS() - confirmedS <= BELIEVED_S;
    }

    /** Whether it is the speed of a moment ago or of the last long window: no rival takes it from there at once. */
    private boolean goesOn(SpeedNow now) {
        return steadyFromS.isPresent() && same(now, meanHz)
                || heldHz.filter(hz -> same(now, hz)).isPresent();
    }

    private static boolean same(SpeedNow now, double hz) {
        return Math.abs(now.propellerHz() / hz - 1) < SAME;
    }

    /** Since when the quick speeds have been one; empty while they aren't. */
    synchronized Optional<Double> steadyFromS() {
        return steadyFromS;
    }

    /** The mean follows a slow drift; a move of the lever leaves it behind. */
    private Optional<Double> steadyFrom(SpeedNow now) {
        boolean same = steadyFromS.isPresent() && same(now, meanHz);
        meanHz = same ? meanHz + (now.propellerHz() - meanHz) / 4 : now.propellerHz();
        return same ? steadyFromS : Optional.of(now.fromS());
    }

    /** Takes what a long window says of the time behind us. */
    synchronized void take(LiveReading window) {
        Optional<Dwell> held = LiveFigures.heldToTheEnd(window);
        heldHz = held.map(Dwell::propellerHz);
        if (held.isPresent()) {
            double[] evidence = lately.stream()
                    .filter(each -> each.fromS() >= held.get().fromS()
                            && each.toS() <= window.toS()
                            && same(each, held.get().propellerHz()))
                    .mapToDouble(SpeedNow::evidence)
                    .sorted()
                    .toArray();
            if (evidence.length > 0) {
                usualEvidence = Optional.of(evidence[evidence.length / 2]);
                confirmedS = window.toS();
            }
        } else if (window.speed().isPresent()
                && window.speed().get().doubtful().stream().anyMatch(each -> heldAt(each, window.toS()))) {
            usualEvidence = Optional.empty();
        }
    }

    /** Whether a doubtful stretch is a hold that goes on: across a move, a window knows less than the quick speeds. */
    private boolean heldAt(DoubtfulDwell stretch, double endS) {
        long inside = lately.stream()
                .filter(each -> each.fromS() >= stretch.fromS() && each.toS() <= endS)
                .count();
        long same = lately.stream()
                .filter(each -> each.fromS() >= stretch.fromS() && each.toS() <= endS)
                .filter(each -> same(each, stretch.propellerHz()))
                .count();
        return stretch.toS() >= endS - STEADY_S && same >= LEAST_SAME && same > MOSTLY * inside;
    }
}
