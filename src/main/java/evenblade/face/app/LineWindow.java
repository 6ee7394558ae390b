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
import evenblade.measure.live.LiveChain;
import evenblade.measure.live.LiveReading;
import evenblade.measure.live.WindowReader;
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
    private static final int MOST_LINES = 20_000; // 50 s at 400 lines a second: more than the window needs

    private final WindowReader reader;
    private final Optional<String> mark;
    private final List<String> heading = new ArrayList<>();
    private final Deque<String> rows = new ArrayDeque<>();
    private int most = MOST_LINES;
    private long dropped;

    /** Lines as they lie in the window, and how many rows came before them. */
    private record Held(List<String> lines, long dropped) {}

    /**
     * @param reader reads what was gathered, without a mark
     * @param mark name or number of the channel with the mark; one that isn't there is passed over
     */
    LineWindow(WindowReader reader, Optional<String> mark) {
        this.reader = reader;
        this.mark = mark;
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
        while (rows.size() > most) {
            rows.removeFirst();
            dropped++;
        }
    }

    /** What they show; empty where they can't be read yet. */
    Optional<LiveReading> read() {
        try {
            Path small = Files.createTempFile("window", ".csv");
            try {
                Held held = held();
                Files.write(small, held.lines());
                Recording read = ((Intake.Whole) RecordingReader.open(small, IntakeOptions.NONE)).recording();
                Recording window = later(read, held.dropped() / read.time().rateHz());
                keep(Math.max(
                        100, (int) Math.ceil(LiveChain.WINDOW_S * window.time().rateHz())));
                return Optional.of(new WindowReader(
                                reader.installation(), reader.expectation(), mark.flatMap(word -> named(word, window)))
                        .read(window, 0));
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

    private synchronized Held held() {
        List<String> lines = new ArrayList<>(heading);
        lines.addAll(rows);
        return new Held(lines, dropped);
    }

    private synchronized void keep(int lines) {
        most = lines;
    }
}
