package evenblade.face.cli;

import evenblade.base.fact.Warning;
import evenblade.face.app.LiveRecording;
import evenblade.input.capture.ChannelLevel;
import evenblade.tell.document.FigureFormat;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * Shows how a recording stands: in a terminal one line that is written over ten times a second, else a
 * line every few seconds.
 */
final class LiveLine implements AutoCloseable {
    static final int BAR = 8; // letters; one for each 7.5 dB
    private static final double LOWEST_DB = -60; // below it a level is of no use
    private static final long TERMINAL_MS = 100; // ten times a second reads as steady
    private static final long LOG_MS = 10_000; // a log is read later: a line each ten seconds
    private static final int WIDTH = 79; // a terminal's 80 columns less one, so that no line wraps

    private final Supplier<LiveRecording.View> run;
    private final Supplier<String> hint;
    private final Supplier<List<Warning>> urgent;
    private List<Warning> urgentTold = List.of();
    private final PrintWriter out;
    private final boolean terminal;
    private final Thread thread = new Thread(this::work, "live line");
    private volatile boolean closed;
    private long told = System.nanoTime();
    private int finishedTold;

    private LiveLine(
            Supplier<LiveRecording.View> run,
            Supplier<String> hint,
            Supplier<List<Warning>> urgent,
            PrintWriter out,
            boolean terminal) {
        this.urgent = urgent;
        this.run = run;
        this.hint = hint;
        this.out = out;
        this.terminal = terminal;
    }

    /**
     * Shows it until closed.
     *
     * @param run asked for how it stands
     * @param hint a word or two about the level, empty for none
     * @param urgent what has to be known at once; told once, until it is over
     */
    static LiveLine show(
            Supplier<LiveRecording.View> run, Supplier<String> hint, Supplier<List<Warning>> urgent, PrintWriter out) {
        LiveLine line = new LiveLine(run, hint, urgent, out, System.console() != null);
        line.thread.setDaemon(true);
        line.thread.start();
        return line;
    }

    private void work() {
        while (!closed) {
            try {
                Thread.sleep(TERMINAL_MS);
            } catch (InterruptedException e) {
                return;
            }
            if (closed) {
                return;
            }
            LiveRecording.View view = run.get();
            tellFinished(view);
            tellUrgent();
            if (!terminal && System.nanoTime() - told < TimeUnit.MILLISECONDS.toNanos(LOG_MS)) {
                continue;
            }
            told = System.nanoTime();
            String text = text(view, hint.get());
            if (terminal) {
                // By itself: returns inside a text don't reach the terminal.
                out.write('\r');
                out.print(text + " ".repeat(Math.max(0, WIDTH - text.length())));
            } else {
                out.println(text);
            }
            out.flush();
        }
    }

    private void tellFinished(LiveRecording.View view) {
        finishedTold = Math.min(finishedTold, view.finished().size()); // one may have been taken back
        for (; finishedTold < view.finished().size(); finishedTold++) {
            String text = LiveText.done(view.finished().get(finishedTold));
            if (terminal) {
                out.write('\r');
            }
            out.println(text + " ".repeat(Math.max(0, WIDTH - text.length())));
        }
    }

    private void tellUrgent() {
        List<Warning> now = urgent.get();
        if (!now.equals(urgentTold)) {
            urgentTold = now;
            WarningText.marked(now).forEach(text -> out.println((terminal ? "\r" : "") + text));
            now.forEach(each -> WarningText.cure(each).forEach(out::println));
            out.flush();
        }
    }

    /** One line of at most 79 characters. */
    static String text(LiveRecording.View view, String hint) {
        StringBuilder text = new StringBuilder(time(view.seconds()));
        boolean known = view.reading().isPresent();
        for (ChannelLevel level : view.levels()) {
            // Beside speed and orders there is room for the figure alone.
            text.append(known ? "" : " " + bar(level)).append(decibel(level.heldPeakDb()));
        }
        view.clipping().forEach(level -> text.append(" CLIPPED ").append(level.channel()));
        if (!hint.isEmpty()) {
            text.append(' ').append(hint);
        }
        view.step().filter(step -> known).ifPresent(step -> text.append("  ").append(LiveText.of(step)));
        if (view.liveStopped()) {
            text.append("  live stopped");
        } else if (known) {
            text.append("  ").append(LiveText.of(view.figures()));
        }
        return text.length() > WIDTH ? text.substring(0, WIDTH) : text.toString();
    }

    private static String time(double seconds) {
        long tenths = (long) (seconds * 10);
        return String.format(Locale.ROOT, "%d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10);
    }

    /** Filled up to the level, with a mark where the highest peak of late stood. */
    static String bar(ChannelLevel level) {
        int filled = cells(level.peakDb());
        int held = cells(level.heldPeakDb());
        StringBuilder bar = new StringBuilder("[");
        for (int i = 1; i <= BAR; i++) {
            bar.append(i == held && held > filled ? '|' : i <= filled ? '=' : ' ');
        }
        return bar.append(']').toString();
    }

    private static int cells(double db) {
        return (int) Math.max(0, Math.min(BAR, Math.round(BAR * (1 - db / LOWEST_DB))));
    }

    private static String decibel(double db) {
        return db <= ChannelLevel.SILENCE_DB
                ? " silent"
                : String.format(Locale.ROOT, "%4s dB", FigureFormat.fixed(db, 0));
    }

    /** Leaves the terminal on a fresh line. */
    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        thread.interrupt();
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (terminal) {
            out.println();
        }
    }
}
