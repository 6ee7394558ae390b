package evenblade.measure.speed;

import evenblade.machine.installation.OrderTable;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Judges stretches of a path, each by itself and once, however often it is asked about. */
final class StretchJudge {
    /** A path is drawn anew this far around a speed that explains a stretch better. */
    private static final double NEARBY = 0.06;
    /** Mains hum blurs where the path moves it by more than so many resolutions; then it harms no more. */
    private static final double BLURRED = 2;

    /** In resolutions: how far a line may lie from where the machine has one, twice what its place is good to. */
    private static final double OWN = 0.2;

    /** In resolutions: as far as the main lobe of a strong line shows. */
    private static final double MASKED = 1.2;

    private final WhitenedSpectrogram frames;
    private final OrderTable table;
    private final Comb comb;
    private final SpeedPrior prior;
    private final Map<PathPart, Spectra> spectra = new HashMap<>();
    private final Map<PathPart, Judged> judged = new HashMap<>();

    /**
     * Frames in a row, and the speed in each.
     *
     * @param first of the frames
     */
    private record PathPart(int first, List<Double> hz) {
        static PathPart of(int first, double[] hz) {
            return new PathPart(first, Arrays.stream(hz).boxed().toList());
        }
    }

    /**
     * What stands in a part of a path.
     *
     * @param along in step with it
     * @param still at constant frequencies
     */
    private record Spectra(WhitenedLines along, WhitenedLines still) {
        static Spectra of(WhitenedSpectrogram frames, PathPart part) {
            double[] hz = part.hz().stream().mapToDouble(Double::doubleValue).toArray();
            WhitenedLines along = WhitenedLines.along(frames, part.first(), hz);
            Arrays.fill(hz, along.meanHz());
            return new Spectra(along, WhitenedLines.along(frames, part.first(), hz));
        }
    }

    StretchJudge(WhitenedSpectrogram frames, OrderTable table, Comb comb, SpeedPrior prior) {
        this.frames = frames;
        this.table = table;
        this.comb = comb;
        this.prior = prior;
    }

    /**
     * A stretch as it was judged.
     *
     * @param judgement whether it is this machine's
     * @param humHz frequencies of mains hum in it
     * @param explained whether every line that shows the hum lies on a line of this machine too, as a few of many do by
     *     chance: two grids with some stray reach a tenth of all places
     */
    record Judged(Confirmation.Judgement judgement, double[] humHz, boolean explained) {
        /**
         * Frequencies of a series of hum that a lock has to keep clear of; none where a single line stands at a multiple of
         * the grid's frequency, or the machine explains them all: those are its own lines, and often its strongest.
         */
        double[] humSeries() {
            return humHz.length > 1 && !explained ? humHz : new double[0];
        }
    }

    Judged of(DwellFinder.Stretch stretch, PathSearch.Path path) {
        return of(part(stretch, path));
    }

    Judged of(PathSearch.Path path) {
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

    private Judged of(int first, double[] hz) {
        return judged.computeIfAbsent(PathPart.of(first, hz), part -> judge(hz, seen(part)));
    }

    private Spectra seen(PathPart part) {
        return spectra.computeIfAbsent(part, asked -> Spectra.of(frames, asked));
    }

    private Judged judge(double[] hz, Spectra spectra) {
        WhitenedLines along = spectra.along();
        MainsSeries.Hum found = MainsSeries.in(spectra.still(), along);
        double[] hum = found.hz();
        double least = Arrays.stream(hz).min().orElseThrow();
        double most = Arrays.stream(hz).max().orElseThrow();
        double wander = (most - least) / along.meanHz();
        double[] sharp = Arrays.stream(hum)
                .filter(f -> f * wander < BLURRED * along.resolutionHz())
                .toArray();
        WhitenedLines cleared = along.without(sharp, MASKED * along.resolutionHz(), wander / 2);
        return new Judged(
                Confirmation.of(cleared, hum.length > 0, table, comb, prior),
                hum,
                Arrays.stream(found.seenHz()).allMatch(seen -> isOwn(seen, along)));
    }

    /** Whether a line lies where the machine has one. */
    private boolean isOwn(double seenHz, WhitenedLines along) {
        double reach = OWN * along.resolutionHz() + WhitenedLines.STEP * seenHz;
        return comb.teeth().stream().anyMatch(tooth -> Math.abs(tooth.order() * along.meanHz() - seenHz) < reach);
    }

    /**
     * Whether another machine's lines stand in a stretch.
     *
     * @param own whether this machine's lines stand along the path
     */
    Optional<Boolean> otherMachine(PathSearch.Path path, boolean own) {
        Spectra seen = seen(PathPart.of(path.frame()[0], path.hz()));
        WhitenedLines along = seen.along();
        WhitenedLines standing = seen.still();
        double[] hum = MainsSeries.in(standing, along).hz();
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
            Confirmation.Judgement judgement = of(stretch, path).judgement();
            if (judgement.doubts().contains(SpeedDoubt.OTHER_SPEED)) {
                int[] inside = IntStream.range(0, frames.frames())
                        .filter(f -> frames.centreS(f) >= stretch.fromS() && frames.centreS(f) <= stretch.toS())
                        .toArray();
                double better = judgement.propellerHz();
                PathSearch.Path other = search.best(inside, better * (1 - NEARBY), better * (1 + NEARBY));
                if (of(inside[0], other.hz()).judgement().confirmed()) {
                    System.arraycopy(other.hz(), 0, hz, inside[0], inside.length);
                }
            }
        }
        return new PathSearch.Path(path.frame(), hz);
    }
}
