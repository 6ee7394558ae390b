package evenblade.face.cli;

import evenblade.face.app.Progress;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** A bar on standard error for work that takes longer than a moment; only on a terminal. */
final class WorkBar implements Progress, AutoCloseable {
    private static final long PATIENCE_NANOS = 1_000_000_000; // a second's wait needs no bar
    /** Work that is this far when patience ends needs no bar any more. */
    private static final double NEARLY_DONE = 0.6;

    private static final int STEPS = 100; // per cent

    private final boolean terminal;
    private final long startNanos = System.nanoTime();
    private ProgressBar bar;
    private boolean settled;

    WorkBar() {
        this.terminal = System.console() != null;
    }

    @Override
    public void at(double share, String doing) {
        if (!terminal) {
            return;
        }
        if (!settled && System.nanoTime() - startNanos > PATIENCE_NANOS) {
            settled = true;
            if (share < NEARLY_DONE) {
                bar = begun();
            }
        }
        if (bar != null) {
            bar.stepTo(Math.round(share * STEPS)).setExtraMessage(doing);
        }
    }

    private static ProgressBar begun() {
        return new ProgressBarBuilder()
                .setTaskName("evenblade")
                .setInitialMax(STEPS)
                .setStyle(ProgressBarStyle.ASCII)
                .hideEta()
                .clearDisplayOnFinish()
                .build();
    }

    @Override
    public void close() {
        if (bar != null) {
            bar.close();
        }
    }
}
