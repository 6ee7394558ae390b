package evenblade.face.desktop;

import evenblade.face.app.AnalysedRecording;
import evenblade.face.app.ShowJob.JobView;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.tell.chart.Picture;
import java.lang.ref.SoftReference;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The job in the window, with the answers already got about its runs. Used on the event thread only. */
final class OpenJob {
    private final Path folder;
    private final Map<String, SoftReference<RunAnswer>> runs = new HashMap<>();
    private JobView view;
    private final Map<String, Path> quietTakes = new HashMap<>();
    private Optional<String> input = Optional.empty();

    OpenJob(Path folder, JobView view) {
        this.folder = folder;
        this.view = view;
    }

    /**
     * A run as analysed and drawn.
     *
     * @param analysed the numbers
     * @param pictures by name
     */
    record RunAnswer(AnalysedRecording analysed, Map<String, Picture> pictures) {}

    Path folder() {
        return folder;
    }

    JobRecord record() {
        return view.record();
    }

    JobView view() {
        return view;
    }

    void changed(JobView now) {
        view = now;
    }

    /** Entries in the order of the timeline: the newest first. */
    List<Event> newestFirst() {
        List<Event> events = new java.util.ArrayList<>(record().events());
        java.util.Collections.reverse(events);
        return events;
    }

    Optional<RunAnswer> answer(Event run) {
        return Optional.ofNullable(runs.get(run.id())).map(SoftReference::get);
    }

    void keep(Event run, RunAnswer answer) {
        runs.put(run.id(), new SoftReference<>(answer));
    }

    /** The quiet of an input, where it was taken; that of one input says nothing of another. */
    Optional<Path> quietTake(String input) {
        return Optional.ofNullable(quietTakes.get(input));
    }

    void quietTake(String input, Path file) {
        quietTakes.put(input, file);
    }

    /** The input that a run was recorded from last, while this program runs. */
    Optional<String> input() {
        return input;
    }

    void input(String chosen) {
        input = Optional.of(chosen);
    }

    /** Name under which a form's typed texts are kept for this job. */
    String draft(String form) {
        return folder.toAbsolutePath().normalize() + "|" + form;
    }
}
