package evenblade.measure.speed;

import evenblade.machine.installation.OrderTable;
import java.util.Arrays;

/** Judges stretches of a path, each by itself. */
final class StretchJudge {
    /** A path is drawn anew this far around a speed that explains a stretch better. */
    private static final double NEARBY = 0.06;
    /** Mains hum blurs where the path moves it by more than so many resolutions; then it harms no more. */
    private static final double BLURRED = 2;

    private static final double MASKED = 0.6;

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
        int first = 0;
        while (first < frames.frames() - 1 && frames.centreS(first) < stretch.fromS()) {
            first++;
        }
        int end = first + 1;
        while (end < frames.frames() && frames.centreS(end) <= stretch.toS()) {
            end++;
        }
        return of(first, Arrays.copyOfRange(path.hz(), first, end));
    }

    private Confirmation.Judgement of(int first, double[] hz) {
        LineSpectrum along = LineSpectrum.along(frames, first, hz);
        double[] still = new double[hz.length];
        Arrays.fill(still, along.meanHz());
        double[] hum = MainsSeries.in(LineSpectrum.along(frames, first, still));
        double least = Arrays.stream(hz).min().orElseThrow();
        double most = Arrays.stream(hz).max().orElseThrow();
        double wander = (most - least) / along.meanHz();
        double[] sharp = Arrays.stream(hum)
                .filter(f -> f * wander < BLURRED * along.resolutionHz())
                .toArray();
        LineSpectrum cleared = along.without(sharp, MASKED * along.resolutionHz(), wander / 2);
        return Confirmation.of(cleared, hum.length > 0, table, comb, prior);
    }

    /** The path, drawn anew in stretches that another speed explains better. */
    PathSearch.Path putRight(PathSearch.Path path, PathSearch search) {
        return path;
    }
}
