package evenblade.measure.speed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How the power of each line swells and fades in a stretch. What the track makes of the lines' phases doesn't show in it;
 * two lines a little apart beat, whichever of the two the track follows.
 *
 * <p>Each line's power over time is cut into half-overlapped parts, and out of each is taken what the line does together
 * with others of its own machine: two of those beat at their distance, which is known.
 */
final class LineEnvelopes {
    /** Slices in the window through which a line is looked at: half a second lets beats of up to 3.6 Hz through. */
    private static final int WIDTH = DemodulatedOrders.SLICES_PER_BLOCK / 2;
    /** Seconds in a part: a beat of a fifth of a hertz turns once, and two engines' wander hardly shows. */
    private static final double PART_S = 6;

    private static final double STEP_HZ = 0.02; // an eighth of what a part resolves
    /** Fastest beat looked for: the window leaves a third of it. */
    static final double FASTEST_HZ = 3.6;
    /** Lines of the same machine beat at their distance; so many resolutions about that say nothing. */
    private static final double OWN_BEAT = 2;

    private static final double OWN_BEAT_SHARE = 0.003; // ours: a ratio may be rounded by as much
    /** Power over the noise from which on a line's swelling is more than the noise's. */
    private static final double STRONG = 10;

    private static final double SAME_PLACE = 1e-6; // a share: rounding
    private static final double MOST_EXPLAINED = 0.99; // the logarithm of nothing left has no end
    private static final double NEW = 1e-3; // ours: what is left of a shape that others make up says nothing of its own

    private final DemodulatedOrders slices;
    private final double[] places;
    private final int count;
    private final double partS;
    private final double[] noise;
    private final double[] line;
    /** By tone, part and time: without the beats of the machine's own lines. */
    private final double[][][] power;
    /** By tone, part and time: what of that is neither mean nor slope of its part. */
    private final double[][][] swelling;

    /**
     * @param slices along a track that the lines keep step with
     * @param places frequencies of all lines that may stand there, hertz
     * @param ratioError share by which the crank turns faster against the propeller than entered
     */
    LineEnvelopes(DemodulatedOrders slices, double[] places, double ratioError) {
        this.slices = slices;
        this.places = places.clone();
        int length = slices.blocks(WIDTH, 1);
        this.count = Math.min(length, (int) Math.round(PART_S / slices.sliceS()));
        this.partS = count * slices.sliceS();
        DemodulatedOrders.Turned turned = slices.under(new double[slices.slices()], ratioError);
        int tones = slices.tones().size();
        this.noise = new double[tones];
        this.line = new double[tones];
        this.power = new double[tones][][];
        this.swelling = new double[tones][][];
        int hop = Math.max(1, count / 2);
        int parts = (length - count) / hop + 1;
        List<double[]> level = level();
        for (int k = 0; k < tones; k++) {
            DemodulatedOrders.Blocks z = turned.blocks(k, WIDTH, 1);
            double mean =
                    IntStream.range(0, length).mapToDouble(z::power).average().orElse(0);
            noise[k] = 2 * 1.5 * slices.tones().get(k).density() / (WIDTH * slices.sliceS());
            line[k] = Math.max(0, mean - noise[k]);
            List<double[]> own = beats(distances(k), level);
            power[k] = new double[parts][];
            swelling[k] = new double[parts][];
            for (int p = 0; p < parts; p++) {
                int from = p * hop;
                power[k][p] = without(
                        IntStream.range(from, from + count)
                                .mapToDouble(z::power)
                                .toArray(),
                        own);
                swelling[k][p] = without(power[k][p], level);
            }
        }
    }

    double partS() {
        return partS;
    }

    /** Lines that stand far enough over the noise for their swelling to be seen. */
    int[] strong() {
        return IntStream.range(0, line.length)
                .filter(k -> line[k] > STRONG * noise[k])
                .toArray();
    }

    /** Variance of a line's power less what noise makes of it: 2A²N + N² for noise of power N. */
    private double lessNoise(int tone, double variance) {
        return Math.max(0, variance - noise[tone] * (2 * line[tone] + noise[tone]));
    }

    private static double variance(double[][] parts) {
        double mean =
                Arrays.stream(parts).flatMapToDouble(Arrays::stream).average().orElse(0);
        return Arrays.stream(parts)
                .flatMapToDouble(Arrays::stream)
                .map(x -> (x - mean) * (x - mean))
                .average()
                .orElse(0);
    }

    /** Median over the strong lines of the standard deviation of the power, slow or fast, as a share of it. */
    double depth() {
        double[] depths = Arrays.stream(strong())
                .mapToDouble(k -> Math.sqrt(lessNoise(k, variance(power[k]))) / line[k])
                .sorted()
                .toArray();
        return depths.length == 0 ? 0 : depths[depths.length / 2];
    }

    /**
     * What a beat at each rate explains of the swelling.
     *
     * @return by tone, part and rate in steps of {@link #index}: −ln of the share of the swelling that is left, less
     *     where noise swells it
     */
    double[][][] explained() {
        int rates = index(FASTEST_HZ) + 1;
        double[] window = new double[count];
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < count; i++) {
            window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / count);
            sum += window[i];
            squares += window[i] * window[i];
        }
        double[][] cos = new double[rates][];
        double[][] sin = new double[rates][];
        for (int f = 0; f < rates; f++) {
            cos[f] = times(window, wave(f * STEP_HZ, 0));
            sin[f] = times(window, wave(f * STEP_HZ, -Math.PI / 2));
        }
        double[][][] explained = new double[line.length][swelling[0].length][rates];
        for (int k = 0; k < line.length; k++) {
            double variance = variance(swelling[k]);
            double weight = variance > 0 ? lessNoise(k, variance) / variance : 0;
            boolean[] own = ownBeats(k, rates);
            for (int p = 0; weight > 0 && p < explained[k].length; p++) {
                double[] part = swelling[k][p];
                double all = dot(times(window, part), times(window, part));
                for (int f = 0; all > 0 && f < rates; f++) {
                    if (!own[f]) {
                        double square = Math.pow(dot(part, cos[f]), 2) + Math.pow(dot(part, sin[f]), 2);
                        double share = 2 * square * squares / (sum * sum * all);
                        explained[k][p][f] = -weight * Math.log1p(-Math.min(MOST_EXPLAINED, share));
                    }
                }
            }
        }
        return explained;
    }

    static int index(double hz) {
        return (int) Math.round(hz / STEP_HZ);
    }

    /** How far apart the lines are, hertz, that may be seen through a line's window. */
    private double[] distances(int tone) {
        double hz = slices.tones().get(tone).order() * slices.meanHz();
        double[] near = Arrays.stream(places)
                .filter(place -> Math.abs(place - hz) < FASTEST_HZ)
                .toArray();
        return Arrays.stream(near)
                .flatMap(one -> Arrays.stream(near).map(other -> one - other))
                .filter(apart -> apart > SAME_PLACE * hz)
                .filter(apart -> apart < FASTEST_HZ)
                .toArray();
    }

    /** Rates at which lines of its own machine make a line beat. */
    private boolean[] ownBeats(int tone, int rates) {
        boolean[] own = new boolean[rates];
        for (double apart : distances(tone)) {
            double reach = OWN_BEAT / partS + OWN_BEAT_SHARE * apart;
            for (int f = 0; f < rates; f++) {
                own[f] |= Math.abs(f * STEP_HZ - apart) < reach;
            }
        }
        return own;
    }

    /** Mean and slope, as shapes of length 1 that stand square on each other. */
    private List<double[]> level() {
        List<double[]> shapes = new ArrayList<>();
        add(shapes, wave(0, 0));
        add(shapes, IntStream.range(0, count).asDoubleStream().toArray());
        return shapes;
    }

    /** Beats of known rates, square on each other and on other shapes. */
    private List<double[]> beats(double[] ratesHz, List<double[]> others) {
        List<double[]> shapes = new ArrayList<>(others);
        for (double rate : ratesHz) {
            add(shapes, wave(rate, 0));
            add(shapes, wave(rate, -Math.PI / 2));
        }
        return shapes.subList(others.size(), shapes.size());
    }

    private static void add(List<double[]> shapes, double[] another) {
        double size = Math.sqrt(dot(another, another));
        double[] left = without(another, shapes);
        double rest = Math.sqrt(dot(left, left));
        if (rest > NEW * size) {
            shapes.add(Arrays.stream(left).map(x -> x / rest).toArray());
        }
    }

    private static double[] without(double[] values, List<double[]> shapes) {
        double[] left = values;
        for (double[] shape : shapes) {
            double[] now = left;
            double share = dot(now, shape);
            left = IntStream.range(0, now.length)
                    .mapToDouble(i -> now[i] - share * shape[i])
                    .toArray();
        }
        return left;
    }

    private double[] wave(double hz, double phase) {
        return IntStream.range(0, count)
                .mapToDouble(i -> Math.cos(2 * Math.PI * hz * i * slices.sliceS() + phase))
                .toArray();
    }

    private static double[] times(double[] a, double[] b) {
        return IntStream.range(0, a.length).mapToDouble(i -> a[i] * b[i]).toArray();
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
