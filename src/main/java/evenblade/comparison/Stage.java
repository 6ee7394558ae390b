package evenblade.comparison;

import java.util.List;

/**
 * A stretch of a job in which nothing was changed: all its runs are repeats of each other.
 *
 * @param changes what was changed before its first run, in order of time
 * @param runs in order of time
 */
public record Stage(List<String> changes, List<MeasuredRun> runs) {
    public Stage {
        changes = List.copyOf(changes);
        runs = List.copyOf(runs);
    }
}
