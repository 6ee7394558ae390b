package evenblade.input.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Holds the count of frames against the clock to see whether any are missing.
 *
 * <p>The lag is the time elapsed minus the length of the sound so far. A busy machine reads late,
 * which raises the lag for a while only; lost samples raise it for good. So the smallest lag of each
 * second counts, and a rise is a gap once it has lasted {@value #SECONDS_TO_BE_SURE} s. The input's
 * own clock may differ from the machine's by {@value #CLOCK_DIFFERENCE} of the time.
 *
 * <p>Blind to gaps shorter than {@value #LEAST_GAP_S} s, and to a lost stretch whose end lies within the last
 * {@value #SECONDS_TO_BE_SURE} s of a recording.
 */
final class ArrivalClock {
    static final double LEAST_GAP_S = 0.03; // ours: operating systems hold blocks back by some 20 ms
    static final int SECONDS_TO_BE_SURE = 5; // ours: a busy machine catches up within a few seconds
    static final double CLOCK_DIFFERENCE = 5e-4; // ours: more than quartzes differ by; no source
    private static final double WINDOW_S = 1; // holds at least one block that came in time
    /** An input takes a moment until it runs evenly. */
    private static final double SETTLING_S = 1.5;

    private final double rateHz;
    private final List<Gap> gaps = new ArrayList<>();
    private double windowEndS = SETTLING_S;
    private double leastLagS = Double.POSITIVE_INFINITY;
    private Optional<Double> usualLagS = Optional.empty();
    private int secondsRaised;
    private double raisedLeastS;
    private long raisedAtFrame;

    ArrivalClock(double rateHz) {
        this.rateHz = rateHz;
    }

    /**
     * Notes what has come in.
     *
     * @param frames in all since the start, those that the device still holds included
     * @param elapsedS since the start
     * @return a gap that has just become certain
     */
    Optional<Gap> note(long frames, double elapsedS) {
        if (elapsedS < SETTLING_S) {
            return Optional.empty();
        }
        Optional<Gap> gap = Optional.empty();
        if (elapsedS >= windowEndS) {
            gap = close(frames);
            windowEndS = elapsedS + WINDOW_S;
            leastLagS = Double.POSITIVE_INFINITY;
        }
        leastLagS = Math.min(leastLagS, elapsedS - frames / rateHz);
        return gap;
    }

    private Optional<Gap> close(long frames) {
        if (leastLagS == Double.POSITIVE_INFINITY) {
            return Optional.empty();
        }
        double usual = usualLagS.orElse(leastLagS) + CLOCK_DIFFERENCE * WINDOW_S;
        if (leastLagS <= usual + LEAST_GAP_S) {
            usualLagS = Optional.of(Math.min(usual, leastLagS));
            secondsRaised = 0;
            return Optional.empty();
        }
        usualLagS = Optional.of(usual);
        if (secondsRaised == 0) {
            raisedAtFrame = frames;
            raisedLeastS = leastLagS;
        }
        secondsRaised++;
        raisedLeastS = Math.min(raisedLeastS, leastLagS);
        if (secondsRaised < SECONDS_TO_BE_SURE) {
            return Optional.empty();
        }
        Gap gap = new Gap(raisedAtFrame, raisedLeastS - usual);
        gaps.add(gap);
        usualLagS = Optional.of(raisedLeastS);
        secondsRaised = 0;
        return Optional.of(gap);
    }

    /** All gaps so far, in order. */
    List<Gap> gaps() {
        return List.copyOf(gaps);
    }
}
