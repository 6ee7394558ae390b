package evenblade.measure.speed;

import java.util.ArrayList;
import java.util.List;

/** The lines that a track may be locked on. */
final class LockTones {
    /** Mean power over the floor from which on a line may be locked on. */
    private static final double LOCK_FROM = 4;

    private LockTones() {}

    /**
     * Lines to lock on: those that stand out, folded ones among them, and whether a neighbour leaks into
     * them as they move past each other.
     */
    static List<DemodulatedOrders.Tone> along(WhitenedSpectrogram frames, Comb comb, PathSearch.Path path) {
        List<DemodulatedOrders.Tone> chosen = new ArrayList<>();
        for (int c = 0; c < frames.channels(); c++) {
            List<Standing> standing = new ArrayList<>();
            for (Comb.ExpectedLine tooth : comb.teeth()) {
                Standing seen = Standing.of(frames, c, tooth, path);
                if (seen.frames() > path.hz().length / 2 && seen.overFloor() > LOCK_FROM) {
                    standing.add(seen);
                }
            }
            for (Standing own : standing) {
                double leakage = 0;
                for (Standing other : standing) {
                    if (other != own) {
                        leakage += other.power() * own.leakageFrom(other, frames, path);
                    }
                }
                chosen.add(new DemodulatedOrders.Tone(
                        c,
                        own.tooth().order(),
                        own.tooth().line().of(),
                        own.density(),
                        leakage < Leakage.MOST * own.power()));
            }
        }
        return chosen;
    }

    /** A line of the comb as the short spectra of one channel show it along a path. */
    private record Standing(Comb.ExpectedLine tooth, int frames, double overFloor, double density) {
        static Standing of(WhitenedSpectrogram frames, int channel, Comb.ExpectedLine tooth, PathSearch.Path path) {
            double sum = 0;
            double density = 0;
            int n = 0;
            for (int f = 0; f < path.hz().length; f++) {
                double own = tooth.order() * path.hz()[f];
                if (frames.inRange(own) || frames.folded(own)) {
                    double frequency = frames.appearsAtHz(own);
                    sum += frames.overFloor(channel, path.frame()[f], frequency);
                    density += frames.floorDensity(channel, frequency);
                    n++;
                }
            }
            return new Standing(tooth, n, n == 0 ? 0 : sum / n, n == 0 ? 0 : density / n);
        }

        double power() {
            return overFloor * density;
        }

        /** Mean share of the other's power that a block's window lets through at this line. */
        double leakageFrom(Standing other, WhitenedSpectrogram frames, PathSearch.Path path) {
            double sum = 0;
            double blockS = Math.min(1, frames.lengthS());
            for (double hz : path.hz()) {
                double apart =
                        Math.abs(frames.appearsAtHz(tooth.order() * hz) - frames.appearsAtHz(other.tooth.order() * hz));
                sum += Leakage.ofHann(apart * blockS);
            }
            return sum / path.hz().length;
        }
    }
}
