package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.face.app.PreviewRecording.SeenTable;
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
import java.util.function.Predicate;

/**
 * What a run takes over from the one before it, where nothing else is said: how its channels and columns are read, its scale,
 * and where the sensor sat. A recording of another shape, or by another input, takes over nothing: another sensor made it.
 *
 * @param name of the run before
 * @param recording of the run before
 * @param settings that are taken over; no speed is
 * @param conditions that are taken over
 */
public record RunBefore(String name, Path recording, RunSettings settings, Conditions conditions) {
    /** What stays the same from run to run where like is to be held against like. */
    public static final Set<Condition> KEPT = Collections.unmodifiableSet(
            EnumSet.of(Condition.SENSOR, Condition.PLACE, Condition.DIRECTION, Condition.GAIN, Condition.DEVICE));

    private static final double SAME_RATE_SHARE = 0.02; // stamps of a telephone drift less

    /** What a recording takes over from the last run whose recording has its shape; empty where there is nothing. */
    public static Optional<RunBefore> of(Path job, Path recording, NewRun said) {
        JobFolder folder = JobFolder.open(job);
        return last(folder, said, KEPT, before -> alike(folder.locate(before.file()), recording, before.settings()));
    }

    /** What a live input takes over from the last run that came from it, set as it is now; empty where there is nothing. */
    static Optional<RunBefore> recordedBy(JobFolder folder, String device, NewRun said) {
        return recorded(folder, said, device::equals);
    }

    /**
     * What is known before an input is opened: what the last run that came from it noted, however it was set then.
     *
     * @param input its name
     */
    public static Optional<RunBefore> fromInput(Path job, String input) {
        NewRun nothing = new NewRun(Optional.empty(), Optional.empty(), "", RunSettings.NONE, Conditions.NONE);
        return recorded(JobFolder.open(job), nothing, device -> device.startsWith(input + ", "));
    }

    private static Optional<RunBefore> recorded(JobFolder folder, NewRun said, Predicate<String> device) {
        Set<Condition> kept = EnumSet.copyOf(KEPT);
        kept.remove(Condition.DEVICE); // noted by itself
        return last(folder, said, kept, before -> before.conditions()
                .get(Condition.DEVICE)
                .filter(device)
                .isPresent());
    }

    private static Optional<RunBefore> last(
            JobFolder folder, NewRun said, Set<Condition> kept, Predicate<Detail.Run> like) {
        List<Event> runs = new ArrayList<>(folder.record().standing(Kind.RUN));
        Collections.reverse(runs);
        for (Event run : runs) {
            Detail.Run before = (Detail.Run) run.detail();
            if (like.test(before)) {
                return Optional.of(taken(folder, run, kept, said))
                        .filter(taken ->
                                !taken.settings.equals(RunSettings.NONE) || !taken.conditions.equals(Conditions.NONE));
            }
        }
        return Optional.empty();
    }

    private static RunBefore taken(JobFolder folder, Event run, Set<Condition> kept, NewRun said) {
        Detail.Run before = (Detail.Run) run.detail();
        return new RunBefore(
                new JobRuns(folder).nameOf(run),
                folder.locate(before.file()),
                said.settings().over(before.settings().unlike(RunSettings.NONE)).unlike(said.settings()),
                said.conditions().over(before.conditions().of(kept)).unlike(said.conditions()));
    }

    /** Whether a recording has the shape of the one before. */
    boolean fits(Path now) {
        return alike(recording, now, settings);
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
                    && first.channels().equals(second.channels())
                    && first.table()
                            .map(SeenTable::headings)
                            .equals(second.table().map(SeenTable::headings));
        } catch (BadInput e) {
            return false; // what is wrong with either is said where it is read
        }
    }
}
