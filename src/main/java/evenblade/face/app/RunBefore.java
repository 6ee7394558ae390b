package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a run takes over from the one before it, where nothing else is said: how its channels and columns are read, its scale,
 * and where the sensor sat. A recording of another shape takes over nothing: another sensor made it.
 *
 * @param name of the run before
 * @param settings that are taken over; no speed is
 * @param conditions that are taken over
 */
public record RunBefore(String name, RunSettings settings, Conditions conditions) {
    /** What stays the same from run to run where like is to be held against like. */
    public static final Set<Condition> KEPT = Collections.unmodifiableSet(
            EnumSet.of(Condition.SENSOR, Condition.PLACE, Condition.DIRECTION, Condition.GAIN, Condition.DEVICE));

    private static final double SAME_RATE_SHARE = 0.02; // stamps of a telephone drift less

    /** What a recording takes over from the last run whose recording has its shape; empty where there is nothing. */
    public static Optional<RunBefore> of(Path job, Path recording, NewRun said) {
        JobFolder folder = JobFolder.open(job);
        List<Event> runs = new ArrayList<>(folder.record().standing(Kind.RUN));
        Collections.reverse(runs);
        for (Event run : runs) {
            Detail.Run before = (Detail.Run) run.detail();
            if (alike(folder.locate(before.file()), recording, before.settings())) {
                return Optional.of(taken(new JobRuns(folder).nameOf(run), before, said))
                        .filter(taken ->
                                !taken.settings.equals(RunSettings.NONE) || !taken.conditions.equals(Conditions.NONE));
            }
        }
        return Optional.empty();
    }

    private static RunBefore taken(String name, Detail.Run before, NewRun said) {
        return new RunBefore(
                name,
                said.settings().over(before.settings().unlike(RunSettings.NONE)).unlike(said.settings()),
                said.conditions().over(before.conditions().of(KEPT)).unlike(said.conditions()));
    }

    /** A run with what it takes over. */
    public NewRun into(NewRun said) {
        return new NewRun(
                said.at(),
                said.label(),
                said.text(),
                said.settings().over(settings),
                said.conditions().over(conditions));
    }

    private static boolean alike(Path before, Path now, RunSettings settings) {
        try {
            PreviewRecording.Preview first = PreviewRecording.preview(before, Optional.empty(), settings.table());
            PreviewRecording.Preview second = PreviewRecording.preview(now, Optional.empty(), settings.table());
            return first.sound() == second.sound()
                    && first.lossy() == second.lossy()
                    && Math.abs(second.sampleRateHz() / first.sampleRateHz() - 1) < SAME_RATE_SHARE
                    && first.channels().equals(second.channels());
        } catch (BadInput e) {
            return false; // what is wrong with either is said where it is read
        }
    }
}
