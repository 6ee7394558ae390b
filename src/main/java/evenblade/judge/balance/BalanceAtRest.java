package evenblade.judge.balance;

import evenblade.judge.balance.HubMoments.BladeMoment;
import java.util.List;

/** Balance without a run: blades on pivot and scale, or test masses on knife edges or a spindle. */
public sealed interface BalanceAtRest {
    /**
     * Test masses that just turned the hub.
     *
     * @param readings friction and correction
     */
    record Bench(BenchReadings readings) implements BalanceAtRest {}

    /**
     * Weighed blades.
     *
     * @param moments each blade's, as they sit now from hub position 1 on
     * @param now what they leave as they sit
     * @param choices layouts, the least unbalance first
     * @param errorGmm standard error of each part of an unbalance
     */
    record Scale(List<BladeMoment> moments, Unbalance now, List<HubMoments.Option> choices, double errorGmm)
            implements BalanceAtRest {
        /** Standard errors by which a layout has to be better before blades are moved for it. */
        private static final double CLEARLY = 2;

        public Scale {
            moments = List.copyOf(moments);
            choices = List.copyOf(choices);
        }

        /** Whether tip marks predict the track of a layout. */
        public boolean trackKnown() {
            return choices.stream().anyMatch(choice -> choice.trackSpreadMm().isPresent());
        }

        /** How much less the first layout leaves than the blades as they sit, in g·mm. */
        public double betterGmm() {
            return now.gmm() - choices.get(0).unbalance().gmm();
        }

        /** Whether that is more than errors can make. */
        public boolean clearlyBetter() {
            return betterGmm() >= CLEARLY * errorGmm;
        }
    }
}
