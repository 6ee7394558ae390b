package evenblade.judge.comparison;

import java.util.List;

/**
 * A stretch of a job in which nothing was changed: all its runs are repeats of each other.
 *
 * @param changes what was changed before its first run, in order of time
 * @param runs in order of time
 */
public record TrendStage(List<String> changes, List<MeasuredRun> runs) {
    public TrendStage {
        changes = List.copyOf(changes);
        runs = List.copyOf(runs);
    }
}
