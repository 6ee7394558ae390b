package evenblade.app;

import evenblade.capture.Ending;
import evenblade.capture.LineRecorder;
import evenblade.installation.Installation;
import evenblade.installation.InstallationFile;
import evenblade.job.NewRun;
import evenblade.live.LiveReading;
import evenblade.problem.BadInput;
import evenblade.problem.Warning;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicReference;

/** Records a ground run from an accelerometer that sends lines of numbers, into a job or a CSV file of its own. */
public final class RecordLines implements LiveRecording {
    /**
     * What to record.
     *
     * @param target a job folder, or a CSV file that isn't there yet
     * @param input the lines: a heading or none, then a time stamp and values in every line
     * @param device what sends them, for people
     * @param seconds how long; until stopped or the input ends, where empty
     * @param run how a job is to keep it
     * @param installation file of what runs; a job's own, where empty
     */
    public record Request(
            Path target,
            InputStream input,
            String device,
            OptionalDouble seconds,
            NewRun run,
            Optional<Path> installation) {}

    private static final long HOP_MS = 1000;

    private final Request request;
    private final TakePlace place;
    private final LineRecorder recorder;
    private final Optional<LineWindow> window;
    private final AtomicReference<Optional<LiveReading>> reading = new AtomicReference<>(Optional.empty());

    private RecordLines(Request request, TakePlace place, LineRecorder recorder, Optional<LineWindow> window) {
        this.request = request;
        this.place = place;
        this.recorder = recorder;
        this.window = window;
    }

    /**
     * Makes the file; nothing is recorded yet.
     *
     * @throws BadInput where target or length can't be used
     */
    public static RecordLines prepare(Request request) {
        request.seconds().ifPresent(RecordRun::requireLength);
        TakePlace place = TakePlace.of(request.target(), ".csv");
        Optional<Installation> installation = request.installation()
                .map(InstallationFile::read)
                .or(() -> place.job().map(job -> job.record().installation()));
        return new RecordLines(
                request,
                place,
                LineRecorder.prepare(
                        request.input(),
                        place.file(),
                        place.room(),
                        request.seconds().orElse(Double.POSITIVE_INFINITY)),
                installation.map(runs -> new LineWindow(LiveView.reader(runs, Optional.empty()))));
    }

    @Override
    public String device() {
        return request.device();
    }

    @Override
    public Path file() {
        return place.file();
    }

    @Override
    public List<Warning> leftovers() {
        return place.leftovers();
    }

    @Override
    public View view() {
        return new View(recorder.elapsedS(), List.of(), reading.get(), Optional.empty(), List.of());
    }

    @Override
    public void stop() {
        recorder.stop();
    }

    @Override
    public Recorded record() {
        Thread watcher = new Thread(this::watch, "live analysis");
        watcher.setDaemon(true);
        watcher.start();
        Ending ending;
        try {
            ending = recorder.record(line -> window.ifPresent(w -> w.add(line)));
        } finally {
            watcher.interrupt();
        }
        List<Warning> warnings = new ArrayList<>();
        if (ending == Ending.DISK_FAILED || ending == Ending.DISK_NEARLY_FULL) {
            warnings.add(new Warning(
                    "recording-cut-short",
                    String.format(
                            Locale.ROOT,
                            "%s after %.1f s; what had come in is in the file",
                            ending.words(),
                            recorder.elapsedS())));
        }
        if (place.job().isEmpty()) {
            return new Recorded(place.file(), ending, recorder.elapsedS(), 0, Optional.empty(), warnings);
        }
        AddRun.Added added = place.take(request.run(), request.device(), warnings);
        warnings.addAll(added.warnings());
        return new Recorded(place.file(), ending, recorder.elapsedS(), 0, Optional.of(added.event()), warnings);
    }

    private void watch() {
        while (window.isPresent()) {
            try {
                Thread.sleep(HOP_MS);
            } catch (InterruptedException e) {
                return;
            }
            window.get().read().ifPresent(now -> reading.set(Optional.of(now)));
        }
    }
}
