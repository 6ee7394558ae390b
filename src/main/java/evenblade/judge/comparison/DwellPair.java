package evenblade.judge.comparison;

import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Two dwells at the same speed.
 *
 * @param before of the first run
 * @param after of the second
 */
record DwellPair(DwellOrders before, DwellOrders after) {
    /** Natural logarithm of how much faster the second dwell was. */
    double speedStep() {
        return Math.log(after.dwell().propellerHz() / before.dwell().propellerHz());
    }

    /** Pairs within {@link MeasuredRun#SAME_SPEED}, nearest first, each dwell once; in the first run's order of time. */
    static List<DwellPair> of(ChannelOrders before, ChannelOrders after) {
        List<DwellPair> candidates = new ArrayList<>();
        for (DwellOrders a : before.dwells()) {
            for (DwellOrders b : after.dwells()) {
                if (MeasuredRun.sameSpeed(a.dwell().propellerHz(), b.dwell().propellerHz())) {
                    candidates.add(new DwellPair(a, b));
                }
            }
        }
        candidates.sort(Comparator.comparingDouble((DwellPair p) -> Math.abs(p.speedStep()))
                .thenComparingDouble(p -> p.before.dwell().fromS())
                .thenComparingDouble(p -> p.after.dwell().fromS()));
        List<DwellPair> chosen = new ArrayList<>();
        for (DwellPair candidate : candidates) {
            if (chosen.stream().noneMatch(c -> c.before == candidate.before || c.after == candidate.after)) {
                chosen.add(candidate);
            }
        }
        chosen.sort(Comparator.comparingDouble(p -> p.before.dwell().fromS()));
        return chosen;
    }
}
