package evenblade.measure.live;

import evenblade.input.recording.Recording;
import evenblade.measure.speed.Dwell;
import java.util.Optional;

/**
 * The live analysis itself, whatever brings the samples: a quick speed from the last second, everything else from a
 * window that grows while a speed is held, so that what is shown of a hold is what the finished recording will show.
 * Quick speeds and windows may be taken by two threads.
 */
public final class LiveAnalysis {
    /** Time between two quick speeds. */
    public static final double NOW_HOP_S = 0.25;
    /** Of the time before a hold, so much stays in the window: what the dwell finder needs to see where it begins. */
    private static final double BEFORE_HOLD_S = 4;

    /** Behind a move, so much passes before the speed is only its own: a frame of the quick look, and some. */
    private static final double AFTER_MOVE_S = 0.8;
    /** So long after a move a window begins behind it; from then on one that has the move in it sees the hold too. */
    private static final double NEW_S = 7.5;

    /** A hold that shows again so soon may be the one of before, which a window in between didn't bear out. */
    private static final double REMEMBERED_S = 20;
    /** Two holds are at one speed up to here: it wanders by less while the lever stays. */
    private static final double SAME = 0.01;
    /** Of a long window so much has to be new: reading one takes as long as it is, and what it says changes as slowly. */
    private static final double HOP_SHARE = 0.08;

    private final WindowReader reader;
    private final LiveListener listener;
    private final SpeedFollower follower = new SpeedFollower();
    private volatile Optional<Double> heldFromS = Optional.empty();
    private Optional<Hold> lastHold = Optional.empty();

    /** A hold as far as it was seen. */
    private record Hold(double fromS, double toS, double hz) {}

    /** @param listener told of every result on the thread that brought it */
    public LiveAnalysis(WindowReader reader, LiveListener listener) {
        this.reader = reader;
        this.listener = listener;
    }

    /** Takes the last second, see {@link evenblade.measure.speed.SpeedNow#STRETCH_S}. */
    public void now(Recording latest) {
        double toS = latest.time().at(0) + latest.time().durationS();
        listener.now(follower.take(toS, reader.now(latest)));
    }

    /** How long the next window is to be. Soon after a move of the throttle it begins behind the move. */
    public double windowS(double nowS) {
        Optional<Double> moved = follower.steadyFromS()
                .filter(since -> heldFromS.filter(from -> from < since).isEmpty());
        double behindS = moved.map(since -> nowS - since - AFTER_MOVE_S).orElse(0.0);
        if (behindS >= WindowReader.LEAST_S && behindS <= NEW_S) {
            return behindS;
        }
        double held = heldFromS.map(from -> nowS - from + BEFORE_HOLD_S).orElse(0.0);
        return Math.min(LiveChain.LONGEST_S, Math.max(LiveChain.WINDOW_S, held));
    }

    /** How long after the last window the next one is due. */
    public double hopS(double nowS) {
        return Math.max(LiveChain.HOP_S, HOP_SHARE * windowS(nowS));
    }

    /** Takes a window. */
    public void window(Recording window, double skippedS) {
        LiveReading reading = reader.read(window, skippedS);
        LiveFigures.heldToTheEnd(reading)
                .ifPresentOrElse(
                        held -> {
                            double from = begins(held, reading.fromS());
                            lastHold = Optional.of(new Hold(from, held.toS(), held.propellerHz()));
                            heldFromS = Optional.of(from);
                        },
                        () -> heldFromS = Optional.empty());
        follower.take(reading);
        listener.window(reading);
    }

    /**
     * Where a hold may have begun: where one at its speed was seen to begin shortly before, until a window from there on
     * has shown that it is another.
     */
    private double begins(Dwell held, double windowFromS) {
        return lastHold.filter(last -> held.fromS() - last.toS() < REMEMBERED_S
                        && windowFromS > last.fromS()
                        && Math.abs(held.propellerHz() / last.hz() - 1) < SAME)
                .map(last -> Math.min(last.fromS(), held.fromS()))
                .orElse(held.fromS());
    }

    /** Tells the listener that nothing more will come. */
    public void failed() {
        listener.stopped();
    }
}
