package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.input.capture.ChannelLevel;
import evenblade.input.capture.Ending;
import evenblade.keep.job.Event;
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
     * @param reading speed and orders in the latest window; empty before the first, and where it isn't known what runs
     * @param step the step of a stepped run under way; empty where there is none
     * @param finished steps that are done
     */
    record View(
            double seconds,
            List<ChannelLevel> levels,
            Optional<LiveReading> reading,
            Optional<StepProgress> step,
            List<StepProgress> finished) {
        public View {
            levels = List.copyOf(levels);
            finished = List.copyOf(finished);
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

    /** Told before recording: what an earlier session left behind. */
    List<Warning> leftovers();

    /** How it stands; may be asked from any thread. */
    View view();

    /** Ends the recording soon; from any thread. */
    void stop();

    /**
     * Records until the length is reached or somebody stops it, then takes the run into the job.
     *
     * @throws evenblade.base.problem.BadInput where the job doesn't take it; the recording itself is kept and named
     */
    Recorded record();
}
