package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a take is recorded into and with, whatever sends it.
 *
 * @param place where it goes
 * @param installation what runs, where known
 * @param quiet the same input with the engine standing, to compare with
 * @param soFar what will be known of the run while it is recorded; to be closed
 */
record TakeSetting(
        RecordingTarget place, Optional<Installation> installation, Optional<Recording> quiet, RunSoFar soFar) {
    /**
     * Looks whether all that is asked can be had; nothing is opened or made.
     *
     * @param target a job folder, or a file that isn't there yet
     * @param ending of such a file's name
     * @param seconds length asked for
     * @param installation file of what runs; a job's own, where empty
     * @throws BadInput where target, length, quiet take or steps can't be used
     */
    static TakeSetting of(
            Path target,
            String ending,
            OptionalDouble seconds,
            Optional<Path> installation,
            Optional<Path> quiet,
            Optional<RecordRun.Steps> steps) {
        seconds.ifPresent(TakeSetting::requireLength);
        RecordingTarget place = RecordingTarget.of(target, ending);
        Optional<Installation> runs = installation.map(InstallationFile::read).or(() -> place.job()
                .map(job -> job.record().installation()));
        Optional<Recording> standing = quiet.map(CheckTake::reduced);
        return new TakeSetting(place, runs, standing, RunSoFar.begin(steps, runs));
    }

    /** Refuses a length that isn't above zero. */
    static void requireLength(double seconds) {
        if (!(seconds > 0 && Double.isFinite(seconds))) {
            throw BadInput.in("length of the recording").found(seconds + " s", "a length above zero");
        }
    }
}
