package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.input.capture.ChannelLevel;
import evenblade.input.capture.Ending;
import evenblade.keep.job.Event;
import evenblade.measure.live.LiveFigures;
import evenblade.measure.live.LiveReading;
import evenblade.measure.live.StepProgress;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A ground run being recorded, from whatever input. */
public interface LiveRecording {
    /**
     * What is known while it records.
     *
     * @param seconds recorded so far
     * @param levels one per channel of sound; empty for lines of a sensor
     * @param figures to steer by, each with its error; none where it isn't known what runs
     * @param reading what the latest long window shows; empty before the first, and where it isn't known what runs
     * @param step the step of a stepped run under way; empty where none is left
     * @param finished steps that are done
     * @param liveStopped whether the live analysis has failed; the recording goes on
     */
    record View(
            double seconds,
            List<ChannelLevel> levels,
            LiveFigures figures,
            Optional<LiveReading> reading,
            Optional<StepProgress> step,
            List<StepProgress> finished,
            boolean liveStopped) {
        public View {
            levels = List.copyOf(levels);
            finished = List.copyOf(finished);
        }

        /** The channels whose tops are cut off just now. */
        public List<ChannelLevel> clipping() {
            return levels.stream()
                    .filter(level -> level.clip() != ChannelLevel.Clip.NONE)
                    .toList();
        }
    }

    /**
     * A run that is recorded.
     *
     * @param file where it was written; moved into the job, where there is an event
     * @param ending why it ended
     * @param durationS its length
     * @param lostS what is missing by the clock
     * @param event the entry in the job
     * @param warnings what to know about it
     */
    record Recorded(
            Path file, Ending ending, double durationS, double lostS, Optional<Event> event, List<Warning> warnings) {
        public Recorded {
            warnings = List.copyOf(warnings);
        }
    }

    /** What records, for people. */
    String device();

    /** Where it is being written. */
    Path file();

    /** What is taken over from the run before, where nothing else was said. */
    Optional<RunBefore> before();

    /** Told before recording: what an earlier session left behind. */
    List<Warning> leftovers();

    /** How it stands; may be asked from any thread. */
    View view();

    /** What has to be known at once, while it records; may be asked from any thread. */
    default List<Warning> urgent() {
        return List.of();
    }

    /** Leaves the step under way for later; from any thread. */
    void skipStep();

    /** Takes back the step that was done last; from any thread. */
    void repeatStep();

    /** Ends the recording soon; from any thread. */
    void stop();

    /**
     * Records until the length is reached or somebody stops it, then takes the run into the job.
     *
     * @throws evenblade.base.problem.BadInput where the job doesn't take it; the recording itself is kept and named
     */
    Recorded record();
}
