package evenblade.measure.speed;

import evenblade.base.numeric.Distributions;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether a comb stands out from chance, judged on frames that had no part in finding the path.
 *
 * <p>The frames that don't overlap are dealt into two hands. The path found from one hand, drawn
 * straight across the gaps, is tried on the other, and the other way round: in noise alone the power
 * over the floor at each line is then exponential with mean 1 whatever the search did. Each line's
 * mean over the tried frames is tested against a mean of {@value #FLOOR_ALLOWANCE} (room for a floor
 * that slopes), and all lines together likewise; each test at half of {@value #FALSE_ALARM}, the
 * lines' tests divided by their number. The floor under a frame is itself an estimate with about 20
 * degrees of freedom, hence Fisher's F in place of the gamma distribution.
 */
final class Evidence {
    /** Probability that noise alone confirms a speed. */
    static final double FALSE_ALARM = 0.01;

    private static final double FLOOR_ALLOWANCE = 1.3;
    private static final double FLOOR_DOF_PER_FRAME = 20;
    /** Mains frequency and how far a supply may stray, hertz. */
    private static final double[] MAINS_HZ = {50, 60};

    private static final double MAINS_STRAY_HZ = 0.04;

    private final WhitenedSpectrogram frames;
    private final Comb comb;

    Evidence(WhitenedSpectrogram frames, Comb comb) {
        this.frames = frames;
        this.comb = comb;
    }

    /**
     * How one line did.
     *
     * @param order of the propeller
     * @param meanOverFloor power over the floor, mean over the frames tried
     * @param stands whether it stands out by itself
     * @param mains whether it lies on a multiple of a mains frequency all the while
     */
    record LineEvidence(double order, double meanOverFloor, boolean stands, boolean mains) {}

    /**
     * The verdict.
     *
     * @param confirmed whether the comb stands out
     * @param onlyMains whether it would, were it not that all that stands may be mains hum
     * @param lines those in range
     */
    record Verdict(boolean confirmed, boolean onlyMains, List<LineEvidence> lines) {
        long standing() {
            return lines.stream().filter(LineEvidence::stands).count();
        }
    }

    Verdict judge(PathSearch search, double fromHz, double toHz) {
        int stride = Math.max(1, (int) Math.ceil(frames.lengthS() / frames.hopS() - 1e-9));
        List<Integer> one = new ArrayList<>();
        List<Integer> other = new ArrayList<>();
        for (int f = 0, turn = 0; f < frames.frames(); f += stride, turn++) {
            (turn % 2 == 0 ? one : other).add(f);
        }
        if (other.isEmpty()) {
            return new Verdict(false, false, List.of());
        }
        int[] first = one.stream().mapToInt(i -> i).toArray();
        int[] second = other.stream().mapToInt(i -> i).toArray();
        PathSearch.Path firstPath = search.best(first, fromHz, toHz);
        PathSearch.Path secondPath = search.best(second, fromHz, toHz);
        return weigh(first, secondPath, second, firstPath);
    }

    private Verdict weigh(int[] first, PathSearch.Path forFirst, int[] second, PathSearch.Path forSecond) {
        int lines = comb.teeth().size();
        double[] sum = new double[lines];
        double[] count = new double[lines];
        double[] nearMains = new double[lines];
        tally(first, forFirst, sum, count, nearMains);
        tally(second, forSecond, sum, count, nearMains);
        List<LineEvidence> all = new ArrayList<>();
        int inRange = 0;
        for (double n : count) {
            inRange += n > 0 ? 1 : 0;
        }
        double together = 0;
        double togetherCount = 0;
        boolean stands = false;
        boolean standsWithoutMains = false;
        for (int l = 0; l < lines; l++) {
            if (count[l] == 0) {
                continue;
            }
            double mean = sum[l] / count[l];
            boolean out = chance(mean, count[l]) < FALSE_ALARM / 2 / inRange;
            boolean mains = nearMains[l] > 0.9 * count[l];
            all.add(new LineEvidence(comb.teeth().get(l).order(), mean, out, mains));
            stands |= out;
            standsWithoutMains |= out && !mains;
            if (!mains) {
                together += sum[l];
                togetherCount += count[l];
            }
        }
        boolean togetherStands = togetherCount > 0 && chance(together / togetherCount, togetherCount) < FALSE_ALARM / 2;
        boolean confirmed = standsWithoutMains || togetherStands;
        return new Verdict(confirmed, stands && !confirmed, all);
    }

    private static double chance(double mean, double count) {
        return Distributions.fTail(mean / FLOOR_ALLOWANCE, 2 * count, FLOOR_DOF_PER_FRAME * count);
    }

    private void tally(int[] tried, PathSearch.Path path, double[] sum, double[] count, double[] nearMains) {
        for (int frame : tried) {
            double hz = path.hzAt(frame);
            for (int l = 0; l < sum.length; l++) {
                double frequency = comb.teeth().get(l).order() * hz;
                if (!frames.inRange(frequency)) {
                    continue;
                }
                double overFloor = 0;
                for (int c = 0; c < frames.channels(); c++) {
                    overFloor += frames.overFloor(c, frame, frequency);
                }
                sum[l] += overFloor;
                count[l] += frames.channels();
                nearMains[l] += onMains(frequency) ? frames.channels() : 0;
            }
        }
    }

    private boolean onMains(double frequencyHz) {
        for (double mains : MAINS_HZ) {
            double multiple = Math.rint(frequencyHz / mains);
            double reach = MAINS_STRAY_HZ * multiple + 0.25 / frames.lengthS();
            if (multiple >= 1 && multiple <= 6 && Math.abs(frequencyHz - multiple * mains) < reach) {
                return true;
            }
        }
        return false;
    }
}
