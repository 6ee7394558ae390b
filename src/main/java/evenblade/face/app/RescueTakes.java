package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.TakeNote;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Brings all takes that lie beside a job into it, in one step. */
public final class RescueTakes {
    private RescueTakes() {}

    /**
     * What was rescued.
     *
     * @param events the new entries, in order of the takes
     * @param empty takes without a byte, which stay where they are
     * @param warnings what analysing them showed
     */
    public record Rescued(List<Event> events, List<Path> empty, List<Warning> warnings) {
        public Rescued {
            events = List.copyOf(events);
            empty = List.copyOf(empty);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Brings them in, each dated by its last byte and with what was said when its recording began.
     *
     * @throws evenblade.base.problem.BadInput where the job can't be used; takes before that are in it
     */
    public static Rescued answer(Path job) {
        JobFolder folder = JobFolder.open(job);
        List<Event> events = new ArrayList<>();
        List<Path> empty = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>();
        for (JobTakes.Found take : JobTakes.of(job)) {
            if (take.bytes() == 0) {
                empty.add(take.file());
                continue;
            }
            TakeNote note = TakeNote.read(take.file());
            NewRun run = new NewRun(
                    Optional.of(take.written().atZone(ZoneId.systemDefault()).toOffsetDateTime()),
                    note.label(),
                    note.text(),
                    note.settings(),
                    note.conditions());
            Event event = TakeIntoJob.add(folder, take.file(), run, Optional.empty(), List.of());
            events.add(event);
            warnings.addAll(AnalyseTake.answer(folder, event));
        }
        return new Rescued(events, empty, warnings);
    }
}
