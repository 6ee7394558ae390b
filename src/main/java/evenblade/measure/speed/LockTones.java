package evenblade.measure.speed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The lines that a track may be locked on. */
final class LockTones {
    /** Mean power over the floor from which on a line may be locked on. */
    private static final double LOCK_FROM = 4;

    private LockTones() {}

    /**
     * Lines to lock on: those that stand out, folded ones among them, and whether a neighbour leaks into
     * them as they move past each other. A line that mains hum leaks into is left out: hum has a phase of its own, and a
     * track that follows it slips. Where that leaves none, all are taken.
     *
     * @param humHz frequencies of hum
     */
    static List<DemodulatedOrders.Tone> along(
            WhitenedSpectrogram frames, Comb comb, PathSearch.Path path, double[] humHz) {
        List<DemodulatedOrders.Tone> free = standing(frames, comb, path, humHz);
        return free.isEmpty() ? standing(frames, comb, path, new double[0]) : free;
    }

    private static List<DemodulatedOrders.Tone> standing(
            WhitenedSpectrogram frames, Comb comb, PathSearch.Path path, double[] humHz) {
        List<DemodulatedOrders.Tone> chosen = new ArrayList<>();
        for (int c = 0; c < frames.channels(); c++) {
            List<Standing> standing = new ArrayList<>();
            for (Comb.ExpectedLine tooth : comb.teeth()) {
                Standing seen = Standing.of(frames, c, tooth, path);
                if (seen.frames() > path.hz().length / 2 && seen.overFloor() > LOCK_FROM) {
                    standing.add(seen);
                }
            }
            int channel = c;
            double[] hum = Arrays.stream(humHz).filter(frames::inRange).toArray();
            double[] humPower = Arrays.stream(hum)
                    .map(hz -> steadyPower(frames, channel, hz, path))
                    .toArray();
            for (Standing own : standing) {
                double humLeaks = 0;
                for (int h = 0; h < hum.length; h++) {
                    humLeaks += humPower[h] * own.leakageFrom(hum[h], frames, path);
                }
                if (humLeaks > Leakage.MOST * own.power()) {
                    continue;
                }
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

    /** Mean power at a frequency that stays; none where nothing stands out there, as a chance peak of noise doesn't. */
    private static double steadyPower(WhitenedSpectrogram frames, int channel, double hz, PathSearch.Path path) {
        double overFloor = Arrays.stream(path.frame())
                .mapToDouble(frame -> frames.overFloor(channel, frame, hz))
                .average()
                .orElse(0);
        return overFloor > LOCK_FROM ? overFloor * frames.floorDensity(channel, hz) : 0;
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

        /** Mean share of a steady line's power that a block's window lets through at this line. */
        double leakageFrom(double steadyHz, WhitenedSpectrogram frames, PathSearch.Path path) {
            double blockS = Math.min(1, frames.lengthS());
            double sum = 0;
            for (double hz : path.hz()) {
                sum += Leakage.ofHann(Math.abs(frames.appearsAtHz(tooth.order() * hz) - steadyHz) * blockS);
            }
            return sum / path.hz().length;
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
