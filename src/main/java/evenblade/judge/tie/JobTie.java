package evenblade.judge.tie;

import evenblade.base.units.SignalUnit;
import evenblade.machine.installation.HubCounting;
import java.util.List;
import java.util.Optional;

/**
 * Propeller 1× against track over the runs of a job, with what it rests on.
 *
 * @param answer the tie, or what is missing
 * @param engineRpm speed at which the runs were held against each other
 * @param channel looked at
 * @param unit of its amplitudes
 * @param runs that were used, in order of time, at least one
 * @param phase whether all of them have a phase, so that the sense of counting matters
 * @param counting sense in which the hub positions are taken as counted
 * @param countingEntered whether the installation says so, or it was assumed
 * @param smoothest layout predicted to shake least; empty where nothing can be predicted
 * @param leftOut runs that couldn't be used
 */
public record JobTie(
        TieAnswer answer,
        double engineRpm,
        String channel,
        SignalUnit unit,
        List<TieRun> runs,
        boolean phase,
        HubCounting counting,
        boolean countingEntered,
        Optional<SmoothestLayout> smoothest,
        List<LeftOutRun> leftOut) {
    public JobTie {
        runs = List.copyOf(runs);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * A run that couldn't be tied to a track.
     *
     * @param run its name
     * @param why what is missing
     */
    public record LeftOutRun(String run, Why why) {
        /** What is missing. */
        public enum Why {
            /** The tips weren't marked before or after it without a change in between. */
            NO_MARKS,
            /** Other balance weights were on the hub than in most runs: they shake at 1× too. */
            OTHER_WEIGHTS_ON,
            /** No propeller 1× is seen alone on the channel at the speed. */
            NOT_SEEN
        }
    }
}
