package evenblade.measure.orders;

import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.OrderWaves;
import evenblade.measure.speed.SpeedTrack;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** One dwell of a recording cut into blocks, with the lines' cosines and sines at their samples. */
final class DwellBlocks {
    private static final int LEAST_BLOCKS = 8; // fewer don't show how amplitudes scatter
    private static final int MOST_BLOCKS = 400; // ours: a bound on time and memory
    /** A block with fewer samples tells nothing and is passed over. */
    private static final int LEAST_SAMPLES = 4;

    private static final int PARTS = 8; // a few for each of the usual processors

    private final Recording recording;
    private final List<Channel> channels;
    private final List<FittedLine> lines;
    private final int[] first;
    private final int[] count;

    DwellBlocks(Recording recording, List<Channel> channels, Dwell dwell, List<FittedLine> lines) {
        this.recording = recording;
        this.channels = channels;
        this.lines = List.copyOf(lines);
        int wanted = (int) Math.max(LEAST_BLOCKS, Math.min(MOST_BLOCKS, Math.round(dwell.durationS())));
        int[] edges = IntStream.rangeClosed(0, wanted)
                .map(b -> recording.time().firstFrom(dwell.fromS() + b * dwell.durationS() / wanted))
                .toArray();
        int[] filled = IntStream.range(0, wanted)
                .filter(b -> edges[b + 1] - edges[b] >= LEAST_SAMPLES)
                .toArray();
        this.first = IntStream.of(filled).map(b -> edges[b]).toArray();
        this.count = IntStream.of(filled).map(b -> edges[b + 1] - edges[b]).toArray();
    }

    List<FittedLine> lines() {
        return lines;
    }

    int channels() {
        return channels.size();
    }

    /** Cosine and sine of every line. */
    int unknowns() {
        return 2 * lines.size();
    }

    int blocks() {
        return first.length;
    }

    int first(int block) {
        return first[block];
    }

    int count(int block) {
        return count[block];
    }

    long samples() {
        return IntStream.of(count).asLongStream().sum();
    }

    double rateHz() {
        return recording.time().rateHz();
    }

    double timeS(int sample) {
        return recording.time().at(sample);
    }

    /** Work on one block. */
    interface Work {
        /**
         * @param block which
         * @param count its samples
         * @param columns cosine and sine of every line in turn, then a copy of each channel's samples;
         *     the first {@code count} values of each; may be written on
         */
        void on(int block, int count, double[][] columns);
    }

    /** Does some work on every block, several at once. */
    void forEach(SpeedTrack track, Work work) {
        int most = IntStream.of(count).max().orElse(0);
        List<ShaftWaves> shafts = track.ofCrank() == track
                ? List.of(new ShaftWaves(track, line -> true))
                : List.of(
                        new ShaftWaves(track, line -> !line.ofCrank()),
                        new ShaftWaves(track.ofCrank(), FittedLine::ofCrank));
        IntStream.range(0, PARTS).parallel().forEach(part -> {
            double[][] columns = new double[unknowns() + channels.size()][most];
            for (int b = part * blocks() / PARTS; b < (part + 1) * blocks() / PARTS; b++) {
                for (ShaftWaves shaft : shafts) {
                    shaft.fill(b, columns);
                }
                steadyTones(b, columns);
                for (int c = 0; c < channels.size(); c++) {
                    channels.get(c).values().copyTo(first[b], columns[unknowns() + c], count[b]);
                }
                work.on(b, count[b], columns);
            }
        });
    }

    /** Cosines and sines of the lines that keep step with one shaft. */
    private final class ShaftWaves {
        private final int[] places;
        private final OrderWaves waves;

        ShaftWaves(SpeedTrack track, Predicate<FittedLine> inStep) {
            this.places = IntStream.range(0, lines.size())
                    .filter(l -> lines.get(l).steadyHz() == 0 && inStep.test(lines.get(l)))
                    .toArray();
            this.waves = new OrderWaves(
                    track,
                    recording.time(),
                    IntStream.of(places).mapToDouble(l -> lines.get(l).order()).toArray());
        }

        void fill(int block, double[][] columns) {
            double[][] cos = new double[places.length][];
            double[][] sin = new double[places.length][];
            for (int k = 0; k < places.length; k++) {
                cos[k] = columns[2 * places[k]];
                sin[k] = columns[2 * places[k] + 1];
            }
            waves.fill(first[block], count[block], cos, sin);
        }
    }

    private void steadyTones(int block, double[][] columns) {
        for (int l = 0; l < lines.size(); l++) {
            double hz = lines.get(l).steadyHz();
            if (hz > 0) {
                for (int i = 0; i < count[block]; i++) {
                    double angle = 2 * Math.PI * hz * timeS(first[block] + i);
                    columns[2 * l][i] = Math.cos(angle);
                    columns[2 * l + 1][i] = Math.sin(angle);
                }
            }
        }
    }
}
