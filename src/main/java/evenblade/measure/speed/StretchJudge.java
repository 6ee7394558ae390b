package evenblade.measure.speed;

import evenblade.machine.installation.OrderTable;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Judges stretches of a path, each by itself. */
final class StretchJudge {
    /** A path is drawn anew this far around a speed that explains a stretch better. */
    private static final double NEARBY = 0.06;
    /** Mains hum blurs where the path moves it by more than so many resolutions; then it harms no more. */
    private static final double BLURRED = 2;

    /** In resolutions: as far as the main lobe of a strong line shows. */
    private static final double MASKED = 1.2;

    private final WhitenedSpectrogram frames;
    private final OrderTable table;
    private final Comb comb;
    private final SpeedPrior prior;

    StretchJudge(WhitenedSpectrogram frames, OrderTable table, Comb comb, SpeedPrior prior) {
        this.frames = frames;
        this.table = table;
        this.comb = comb;
        this.prior = prior;
    }

    Confirmation.Judgement of(DwellFinder.Stretch stretch, PathSearch.Path path) {
        return of(part(stretch, path));
    }

    Confirmation.Judgement of(PathSearch.Path path) {
        return of(path.frame()[0], path.hz());
    }

    /** The part of a path whose frames have their middle in a stretch; one frame at least. */
    PathSearch.Path part(DwellFinder.Stretch stretch, PathSearch.Path path) {
        int first = 0;
        while (first < frames.frames() - 1 && frames.centreS(first) < stretch.fromS()) {
            first++;
        }
        int end = first + 1;
        while (end < frames.frames() && frames.centreS(end) <= stretch.toS()) {
            end++;
        }
        return path.part(first, end);
    }

    /**
     * Frequencies of a series of mains hum in a stretch of a path, hertz; none where a single line stands at a multiple of
     * the grid's frequency: that is often a line of the machine's own.
     */
    double[] humSeries(PathSearch.Path part) {
        WhitenedLines along = WhitenedLines.along(frames, part.frame()[0], part.hz());
        double[] hum = hum(part.frame()[0], along, part.hz().length);
        return hum.length > 1 ? hum : new double[0];
    }

    private double[] hum(int first, WhitenedLines along, int count) {
        double[] still = new double[count];
        Arrays.fill(still, along.meanHz());
        return MainsSeries.in(WhitenedLines.along(frames, first, still), along);
    }

    private Confirmation.Judgement of(int first, double[] hz) {
        WhitenedLines along = WhitenedLines.along(frames, first, hz);
        double[] hum = hum(first, along, hz.length);
        double least = Arrays.stream(hz).min().orElseThrow();
        double most = Arrays.stream(hz).max().orElseThrow();
        double wander = (most - least) / along.meanHz();
        double[] sharp = Arrays.stream(hum)
                .filter(f -> f * wander < BLURRED * along.resolutionHz())
                .toArray();
        WhitenedLines cleared = along.without(sharp, MASKED * along.resolutionHz(), wander / 2);
        return Confirmation.of(cleared, hum.length > 0, table, comb, prior);
    }

    /**
     * Whether another machine's lines stand in a stretch.
     *
     * @param own whether this machine's lines stand along the path
     */
    Optional<Boolean> otherMachine(PathSearch.Path path, boolean own) {
        WhitenedLines along = WhitenedLines.along(frames, path.frame()[0], path.hz());
        double[] still = new double[path.hz().length];
        Arrays.fill(still, along.meanHz());
        WhitenedLines standing = WhitenedLines.along(frames, path.frame()[0], still);
        double[] hum = MainsSeries.in(standing, along);
        double[] lines = own
                ? IntStream.rangeClosed(1, (int) (frames.highestHz() / along.meanHz() * 2))
                        .mapToObj(k -> new double[] {k * along.meanHz(), k * along.meanHz() * table.ratio() / 2})
                        .flatMapToDouble(Arrays::stream)
                        .toArray()
                : new double[0];
        double least = Arrays.stream(path.hz()).min().orElseThrow();
        double most = Arrays.stream(path.hz()).max().orElseThrow();
        double wander = (most - least) / along.meanHz();
        return OtherMachine.in(standing.without(hum, MASKED * along.resolutionHz(), 0)
                .without(lines, MASKED * along.resolutionHz(), wander / 2));
    }

    /**
     * The path, drawn anew in stretches that another speed explains better.
     *
     * @param stretches steady parts of the path
     */
    PathSearch.Path putRight(PathSearch.Path path, List<DwellFinder.Stretch> stretches, PathSearch search) {
        double[] hz = path.hz().clone();
        for (DwellFinder.Stretch stretch : stretches) {
            Confirmation.Judgement judgement = of(stretch, path);
            if (judgement.doubts().contains(SpeedDoubt.OTHER_SPEED)) {
                int[] inside = IntStream.range(0, frames.frames())
                        .filter(f -> frames.centreS(f) >= stretch.fromS() && frames.centreS(f) <= stretch.toS())
                        .toArray();
                double better = judgement.propellerHz();
                PathSearch.Path other = search.best(inside, better * (1 - NEARBY), better * (1 + NEARBY));
                if (of(inside[0], other.hz()).confirmed()) {
                    System.arraycopy(other.hz(), 0, hz, inside[0], inside.length);
                }
            }
        }
        return new PathSearch.Path(path.frame(), hz);
    }
}
