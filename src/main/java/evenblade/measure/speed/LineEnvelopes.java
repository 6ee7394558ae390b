package evenblade.measure.speed;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * How the power of each line swells and fades in a stretch. What the track makes of the lines' phases doesn't show in it;
 * two lines a little apart beat, whichever of the two the track follows.
 *
 * <p>Each line's power over time is cut into half-overlapped parts, each with its mean and slope taken out, and in each
 * the share of the swelling is found that goes at one rate.
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

    private static final double BEYOND_LOCK_HZ = 1; // slower beats are followed by the lock, and stand on both sides
    private static final double SAME_PLACE = 1e-6; // a share: rounding
    private static final double MOST_EXPLAINED = 0.99; // the logarithm of nothing left has no end

    private final DemodulatedOrders slices;
    private final double[] places;
    private final int length;
    private final int count;
    private final double partS;
    private final DemodulatedOrders.Turned turned;
    private final double[] noise;
    private final double[] line;
    private final double[] swelling;

    /**
     * @param slices along a track that the lines keep step with
     * @param places frequencies of all lines that may stand there, hertz
     * @param ratioError share by which the crank turns faster against the propeller than entered
     */
    LineEnvelopes(DemodulatedOrders slices, double[] places, double ratioError) {
        this.slices = slices;
        this.places = places.clone();
        this.length = slices.blocks(WIDTH, 1);
        int part = (int) Math.round(PART_S / slices.sliceS());
        this.count = Math.min(length, part);
        this.partS = count * slices.sliceS();
        this.turned = slices.under(new double[slices.slices()], ratioError);
        int tones = slices.tones().size();
        this.noise = new double[tones];
        this.line = new double[tones];
        this.swelling = new double[tones];
        for (int k = 0; k < tones; k++) {
            DemodulatedOrders.Blocks z = turned.blocks(k, WIDTH, 1);
            double mean =
                    IntStream.range(0, length).mapToDouble(z::power).average().orElse(0);
            noise[k] = 2 * 1.5 * slices.tones().get(k).density() / (WIDTH * slices.sliceS());
            line[k] = Math.max(0, mean - noise[k]);
            swelling[k] = IntStream.range(0, length)
                    .mapToDouble(i -> (z.power(i) - mean) * (z.power(i) - mean))
                    .average()
                    .orElse(0);
        }
    }

    int parts() {
        int hop = Math.max(1, count / 2);
        return (length - count) / hop + 1;
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
    private double ownSwelling(int tone) {
        return Math.max(0, swelling[tone] - noise[tone] * (2 * line[tone] + noise[tone]));
    }

    /** Median over the strong lines of the standard deviation of the power, as a share of it. */
    double depth() {
        return median(Arrays.stream(strong())
                .mapToDouble(k -> Math.sqrt(ownSwelling(k)) / line[k])
                .toArray());
    }

    /** Median over the strong lines of the share of the power that keeps its phase under the track. */
    double coherence() {
        return median(Arrays.stream(strong())
                .mapToDouble(k -> {
                    DemodulatedOrders.Blocks z = turned.blocks(k, WIDTH, 1);
                    double re = IntStream.range(0, length)
                            .mapToDouble(z::re)
                            .average()
                            .orElse(0);
                    double im = IntStream.range(0, length)
                            .mapToDouble(z::im)
                            .average()
                            .orElse(0);
                    return (re * re + im * im) / line[k];
                })
                .toArray());
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return values.length == 0 ? 0 : values[values.length / 2];
    }

    /**
     * What a beat at each rate explains of the swelling.
     *
     * @return by tone, part and rate in steps of {@link #index}: −ln of the share of the swelling that is left, less
     *     where noise swells it
     */
    double[][][] explained() {
        int rates = index(FASTEST_HZ) + 1;
        double[][] cos = new double[rates][count];
        double[][] sin = new double[rates][count];
        double[] window = new double[count];
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < count; i++) {
            window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / count);
            sum += window[i];
            squares += window[i] * window[i];
            for (int f = 0; f < rates; f++) {
                double phase = 2 * Math.PI * f * STEP_HZ * i * slices.sliceS();
                cos[f][i] = window[i] * Math.cos(phase);
                sin[f][i] = window[i] * Math.sin(phase);
            }
        }
        double[][][] explained = new double[line.length][parts()][rates];
        int hop = Math.max(1, count / 2);
        for (int k = 0; k < line.length; k++) {
            DemodulatedOrders.Blocks z = turned.blocks(k, WIDTH, 1);
            double weight = swelling[k] > 0 ? ownSwelling(k) / swelling[k] : 0;
            boolean[] own = ownBeats(k, rates);
            for (int p = 0; weight > 0 && p < explained[k].length; p++) {
                double[] power = level(z, p * hop);
                double all = 0;
                for (int i = 0; i < count; i++) {
                    all += window[i] * window[i] * power[i] * power[i];
                }
                for (int f = 0; all > 0 && f < rates; f++) {
                    if (!own[f]) {
                        double share = 2 * square(power, cos[f], sin[f]) * squares / (sum * sum * all);
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

    /** Rates at which a line beats with others of its own machine. */
    private boolean[] ownBeats(int tone, int rates) {
        double hz = slices.tones().get(tone).order() * slices.meanHz();
        boolean[] own = new boolean[rates];
        for (double place : places) {
            double apart = Math.abs(place - hz);
            double reach = OWN_BEAT / partS + OWN_BEAT_SHARE * apart;
            for (int f = 0; apart > SAME_PLACE * hz && f < rates; f++) {
                own[f] |= Math.abs(f * STEP_HZ - apart) < reach;
            }
        }
        return own;
    }

    /** A part of a line's power, mean and slope taken out. */
    private double[] level(DemodulatedOrders.Blocks z, int from) {
        double[] power = new double[count];
        double mean = 0;
        double moment = 0;
        double spread = 0;
        double middle = (count - 1) / 2.0;
        for (int i = 0; i < count; i++) {
            power[i] = z.power(from + i);
            mean += power[i] / count;
            moment += power[i] * (i - middle);
            spread += (i - middle) * (i - middle);
        }
        double slope = spread > 0 ? moment / spread : 0;
        for (int i = 0; i < count; i++) {
            power[i] -= mean + slope * (i - middle);
        }
        return power;
    }

    private static double square(double[] x, double[] cos, double[] sin) {
        double re = 0;
        double im = 0;
        for (int i = 0; i < x.length; i++) {
            re += x[i] * cos[i];
            im += x[i] * sin[i];
        }
        return re * re + im * im;
    }

    /**
     * Share of the strong lines' power that stands above the track less what stands below it, as far away as a share of
     * the speed says; over what stands in both. 1 where all is above.
     */
    double above(double share) {
        double above = 0;
        double below = 0;
        for (int k : strong()) {
            double hz = slices.tones().get(k).order() * slices.meanHz() * share;
            if (hz < BEYOND_LOCK_HZ || hz > FASTEST_HZ) {
                continue;
            }
            DemodulatedOrders.Blocks z = turned.blocks(k, WIDTH, 1);
            for (int p = 0; p < parts(); p++) {
                above += power(z, p * Math.max(1, count / 2), hz) / line[k];
                below += power(z, p * Math.max(1, count / 2), -hz) / line[k];
            }
        }
        return above + below > 0 ? (above - below) / (above + below) : 0;
    }

    private double power(DemodulatedOrders.Blocks z, int from, double hz) {
        double re = 0;
        double im = 0;
        for (int i = 0; i < count; i++) {
            double window = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / count);
            double phase = -2 * Math.PI * hz * i * slices.sliceS();
            double c = window * Math.cos(phase);
            double d = window * Math.sin(phase);
            re += z.re(from + i) * c - z.im(from + i) * d;
            im += z.re(from + i) * d + z.im(from + i) * c;
        }
        return re * re + im * im;
    }
}
