package evenblade.measure.speed;

import static evenblade.measure.speed.Drawn.line;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Value.Amount;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** One line in seeded noise that comes and goes, in frames of 0.6 s every 0.15 s, from 0.3 s on. */
class TrackCoverageTest {
    private static final double RATE_HZ = 200;
    private static final double FRAME_S = 0.6;
    private static final double HOP_S = 0.15;
    private static final Comb ONE = new Comb(
            List.of(new Comb.ExpectedLine(
                    new OrderLine(Shaft.PROPELLER, 1, 1, "1×", OrderLine.Role.UNEVEN_PROPELLER, 1), 0.9)),
            1);

    private record Seen(TrackCoverage coverage, WhitenedSpectrogram frames, double[] evidence) {}

    /** There outside {@code goneS}, a time and a time, in turn. */
    private static Seen seen(double seconds, double... goneS) {
        Random dice = new Random(11);
        Recording run = Drawn.recording(RATE_HZ, seconds, t -> {
            boolean gone = false;
            for (int k = 0; k < goneS.length; k += 2) {
                gone |= t >= goneS[k] && t < goneS[k + 1];
            }
            return (gone ? 0 : line(1, 1, 30 * t)) + 0.1 * dice.nextGaussian();
        });
        WhitenedSpectrogram frames = WhitenedSpectrogram.of(run, run.channels(), 80, FRAME_S);
        PathSearch search = new PathSearch(frames, ONE, SpeedPrior.between(25, 36));
        double[] hz = new double[frames.frames()];
        Arrays.fill(hz, 30);
        double[] evidence = IntStream.range(0, hz.length)
                .mapToDouble(f -> search.evidence(f, 30))
                .toArray();
        PathSearch.Path path = new PathSearch.Path(IntStream.range(0, hz.length).toArray(), hz);
        return new Seen(TrackCoverage.of(search, path, frames), frames, evidence);
    }

    /**
     * The rule, told anew: a frame bears the path out where the middle one of seven reaches 0.3 of what three quarters of all
     * frames stay below, and its own half of that.
     */
    private static boolean[] borne(double[] evidence) {
        double[] rising = evidence.clone();
        Arrays.sort(rising);
        double least = 0.3 * rising[(int) Math.floor(0.75 * (rising.length - 1))];
        boolean[] borne = new boolean[evidence.length];
        for (int f = 0; f < borne.length; f++) {
            List<Double> near = new ArrayList<>();
            for (int g = f - 3; g <= f + 3; g++) {
                if (g >= 0 && g < evidence.length) {
                    near.add(evidence[g]);
                }
            }
            near.sort(null);
            borne[f] = near.get(near.size() / 2) >= least && evidence[f] >= least / 2;
        }
        return borne;
    }

    /** Frame f lies about 0.3 + 0.15·f s; a line that goes or comes is seen by frames that hold a third of it. */
    private static List<DwellFinder.Stretch> parts(boolean[] borne, double fromS, double toS, double shortestS) {
        List<double[]> parts = new ArrayList<>();
        double begin = fromS;
        for (int f = 0; f < borne.length; f++) {
            double middle = 0.3 + HOP_S * f;
            if (middle + HOP_S / 2 < fromS || middle - HOP_S / 2 > toS) {
                continue;
            }
            boolean before = Double.isFinite(begin);
            if (before && !borne[f]) {
                parts.add(new double[] {begin, Math.max(begin, middle - HOP_S / 2 - FRAME_S / 3)});
                begin = Double.NaN;
            } else if (!before && borne[f]) {
                begin = Math.max(fromS, middle - HOP_S / 2 + FRAME_S / 3);
            }
        }
        if (Double.isFinite(begin)) {
            parts.add(new double[] {begin, toS});
        }
        return parts.stream()
                .filter(part -> part[1] - part[0] >= shortestS - 1e-6)
                .map(part -> new DwellFinder.Stretch(part[0], part[1]))
                .toList();
    }

    private static void same(List<DwellFinder.Stretch> found, List<DwellFinder.Stretch> expected) {
        assertThat(found).hasSameSizeAs(expected);
        for (int k = 0; k < found.size(); k++) {
            assertThat(found.get(k).fromS()).isCloseTo(expected.get(k).fromS(), within(1e-9));
            assertThat(found.get(k).toS()).isCloseTo(expected.get(k).toS(), within(1e-9));
        }
    }

    @Test
    void aPathIsBorneOutWhereItsLineStands() {
        double[][] gone = {{7, 9}, {0, 3}, {12, 15}, {5, 5.5}, {4, 4.2, 8, 10.1}, {2, 12.5}, {3, 4, 5, 6, 9, 9.8}};
        for (double[] each : gone) {
            Seen seen = seen(15, each);
            boolean[] borne = borne(seen.evidence());
            for (double shortest : new double[] {1, 3}) {
                List<DwellFinder.Stretch> asked =
                        List.of(new DwellFinder.Stretch(0.5, 7.9), new DwellFinder.Stretch(8.2, 14.8));
                List<DwellFinder.Stretch> expected = new ArrayList<>(parts(borne, 0.5, 7.9, shortest));
                expected.addAll(parts(borne, 8.2, 14.8, shortest));
                same(seen.coverage().borneOut(asked, shortest), expected);
            }
        }
    }

    /** Gone from 7 to 9 s: a frame of 0.6 s shows the last third of it for 0.2 s, and is judged by the middle one of seven. */
    @Test
    void aGapIsLeftOutToAFrame() {
        List<DwellFinder.Stretch> parts =
                seen(15, 7, 9).coverage().borneOut(List.of(new DwellFinder.Stretch(1, 14)), 3);
        assertThat(parts).hasSize(2);
        assertThat(parts.get(0).fromS()).isEqualTo(1);
        assertThat(parts.get(0).toS()).isCloseTo(7, within(FRAME_S / 2));
        assertThat(parts.get(1).fromS()).isCloseTo(9, within(FRAME_S / 2));
        assertThat(parts.get(1).toS()).isEqualTo(14);
    }

    /** As long as the shortest is long enough. */
    @Test
    void aWholeStretchOfTheShortestLengthCounts() {
        TrackCoverage coverage = seen(15).coverage();
        same(
                coverage.borneOut(List.of(new DwellFinder.Stretch(2.1, 7.1)), 5),
                List.of(new DwellFinder.Stretch(2.1, 7.1)));
        assertThat(coverage.borneOut(List.of(new DwellFinder.Stretch(2.1, 7.0)), 5))
                .isEmpty();
        assertThat(coverage.warning()).isEmpty();
    }

    /** From two seconds and a twentieth of the frames on. */
    @Test
    void whatIsLostIsToldInSeconds() {
        for (double gone : new double[] {1.2, 2.0, 3.0}) {
            Seen seen = seen(15, 7, 7 + gone);
            int without = 0;
            for (boolean frame : borne(seen.evidence())) {
                without += frame ? 0 : 1;
            }
            if (without * HOP_S < 2) {
                assertThat(seen.coverage().warning()).isEmpty();
            } else {
                Amount lost = (Amount)
                        seen.coverage().warning().orElseThrow().fact().values().get(0);
                assertThat(lost.value()).isCloseTo(without * HOP_S, within(1e-9));
            }
        }
        // 2.4 s of 60 are less than a twentieth, of 40 more.
        assertThat(seen(60, 7, 9.4).coverage().warning()).isEmpty();
        assertThat(seen(40, 7, 9.4).coverage().warning()).isPresent();
    }
}
