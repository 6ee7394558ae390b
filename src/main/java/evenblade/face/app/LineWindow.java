package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.ChannelChoice;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import evenblade.keep.job.RunSettings;
import evenblade.machine.installation.Installation;
import evenblade.measure.live.LiveAnalysis;
import evenblade.measure.live.LiveChain;
import evenblade.measure.speed.SpeedNow;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The latest lines of a sensor, read as the whole file will be read: by the same reader, from a small
 * file of their own. One thread adds, another reads; adding never waits for a reading.
 */
final class LineWindow {
    /** A minute of a fast sensor: to read more each second would take too much of the machine. */
    private static final int MOST_LINES = 60_000;

    /** The reader refuses what is shorter than a second; with some to spare, as no clock is even. */
    private static final double READABLE_S = 1.2;

    private static final int LEAST_LINES = 100; // fewer show no rate

    private final Installation installation;
    private final Optional<String> mark;
    private final IntakeOptions reading;
    private final RunSoFar listener;
    private final List<String> heading = new ArrayList<>();
    private final Deque<String> rows = new ArrayDeque<>();
    private Optional<LiveAnalysis> analysis = Optional.empty();
    private Optional<Double> rateHz = Optional.empty();
    private double windowAtS;
    private long dropped;

    /** Lines as they lie in the window, and how many rows came before them. */
    private record Held(List<String> lines, long before) {}

    /**
     * @param settings how the lines are to be read; a channel with the mark that isn't there is passed over
     * @param listener told of what the lines show
     */
    LineWindow(Installation installation, RunSettings settings, RunSoFar listener) {
        this.installation = installation;
        this.mark = settings.markChannel();
        this.reading = new IntakeOptions(Optional.empty(), settings.table());
        this.listener = listener;
    }

    private static Optional<String> named(String word, Recording window) {
        List<String> names =
                window.channels().stream().map(channel -> channel.name()).toList();
        try {
            return Optional.of(names.get(ChannelChoice.indexOf(names, word, BadInput.in("mark channel"))));
        } catch (BadInput e) {
            return Optional.empty();
        }
    }

    synchronized void add(String line) {
        boolean row = line.matches("\\s*[-+.\"]?\\d.*");
        if (!row && rows.isEmpty()) {
            heading.add(line);
            return;
        }
        rows.addLast(line);
        while (rows.size() > MOST_LINES) {
            rows.removeFirst();
            dropped++;
        }
    }

    /** Looks at the last second. */
    void now() {
        if (rateHz.isPresent() && analysis.isPresent()) {
            read(READABLE_S).map(LineWindow::lastStretch).ifPresent(analysis.get()::now);
        }
    }

    private static Recording lastStretch(Recording read) {
        double endS = read.time().at(0) + read.time().durationS();
        // Half a sample more, lest rounding costs a frame.
        double halfSampleS = 0.5 / read.time().rateHz();
        return read.within(new Stretch(endS - SpeedNow.STRETCH_S - halfSampleS, endS));
    }

    /** Looks at a longer window where one is due. */
    void window() {
        double nowS = nowS();
        if (nowS - windowAtS >= analysis.map(each -> each.hopS(nowS)).orElse(0.0)) {
            lastWindow();
        }
    }

    /** Looks at a longer window, due or not. */
    void lastWindow() {
        double nowS = nowS();
        windowAtS = nowS;
        double windowS = analysis.map(each -> each.windowS(nowS)).orElse(LiveChain.WINDOW_S);
        read(windowS).ifPresent(window -> {
            rateHz = Optional.of(window.time().rateHz());
            if (analysis.isEmpty()) {
                // The channels of a sensor are known once it has sent.
                analysis = Optional.of(new LiveAnalysis(
                        LiveSetup.reader(installation, mark.flatMap(word -> named(word, window))), listener));
            }
            analysis.get().window(window, 0);
        });
    }

    private double nowS() {
        return rateHz.map(rate -> came() / rate).orElse(0.0);
    }

    private synchronized long came() {
        return dropped + rows.size();
    }

    /** The latest seconds; empty where they can't be read yet. */
    private Optional<Recording> read(double seconds) {
        try {
            Path small = Files.createTempFile("window", ".csv");
            try {
                Held held =
                        held(rateHz.map(rate -> (int) Math.ceil(seconds * rate)).orElse(MOST_LINES));
                Files.write(small, held.lines());
                Recording read = ((Intake.Whole) RecordingReader.open(small, reading)).recording();
                return Optional.of(later(read, held.before() / read.time().rateHz()));
            } finally {
                Files.delete(small);
            }
        } catch (BadInput e) {
            return Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The reader lets every file begin at 0; the window begins where the rows before it ended. */
    private static Recording later(Recording window, double byS) {
        TimeBase time = window.time();
        TimeBase shifted = time instanceof TimeBase.Even even
                ? new TimeBase.Even(even.startS() + byS, even.rateHz(), even.size())
                : new TimeBase.Stamped(
                        Series.of(IntStream.range(0, time.size())
                                .mapToDouble(i -> time.at(i) + byS)
                                .toArray()),
                        time.rateHz());
        return new Recording(
                window.source(),
                shifted,
                window.channels(),
                window.quality(),
                window.stamps(),
                window.warnings(),
                window.stretches().stream()
                        .map(each -> new Stretch(each.fromS() + byS, each.toS() + byS))
                        .toList());
    }

    private synchronized Held held(int most) {
        int skipped = Math.max(0, rows.size() - Math.max(LEAST_LINES, most));
        List<String> lines = new ArrayList<>(heading);
        rows.stream().skip(skipped).forEach(lines::add);
        return new Held(lines, dropped + skipped);
    }
}
