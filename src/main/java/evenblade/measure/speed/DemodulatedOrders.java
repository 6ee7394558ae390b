package evenblade.measure.speed;

import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.machine.installation.Shaft;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Lines of a recording, each turned back by its order times a track's angle and summed over short
 * slices, once; whatever is asked about their phases later is answered from the slices.
 */
final class DemodulatedOrders {
    static final int SLICES_PER_BLOCK = 16; // ours
    private static final double SHORTEST_BLOCK_S = 0.4; // some turns of the slowest propeller
    private static final double LONGEST_BLOCK_S = 1.0; // ours: the speed hardly changes within a second
    private static final int LEAST_BLOCKS = 6; // fewer don't show how phases scatter
    private static final int PARTS = 8; // a few for each of the usual processors
    private static final int MEAN_OF = 4096; // 32 KiB: fits the processor's cache

    /** A Hann-weighted block lets nothing through from further away than this, in bins of one block. */
    private static final double NEAR_BINS = 10;
    /** Nearer than this, in bins of the whole run, two tones can't be separated at all. */
    private static final double APART_BINS = 4;
    /** Share of the noise's power in a block that leakage may have. */
    private static final double SEEN = 0.02;

    private final List<Tone> tones;
    private final double sliceS;
    private final double[] time;
    private final double[] revolutions;
    /** Tone by slice. */
    private final double[][] re;

    private final double[][] im;
    private final OrderFamily propeller;
    private final OrderFamily crank;

    /**
     * A line to lock on.
     *
     * @param channel index of the channel it is seen in
     * @param density one-sided noise density around it, unit²/Hz
     * @param clear whether short spectra show it free of its neighbours' leakage; the others join once
     *     the whole run has told how strong each is
     */
    record Tone(int channel, double order, Shaft shaft, double density, boolean clear) {}

    private DemodulatedOrders(
            Recording recording,
            List<Channel> channels,
            List<Tone> tones,
            SpeedTrack track,
            DwellFinder.Stretch stretch) {
        double fromS = stretch.fromS();
        double duration = stretch.lengthS();
        double blockS = Math.max(SHORTEST_BLOCK_S, Math.min(LONGEST_BLOCK_S, duration / LEAST_BLOCKS));
        this.tones = List.copyOf(tones);
        this.sliceS = blockS / SLICES_PER_BLOCK;
        int slices = (int) Math.floor(duration / sliceS);
        this.time = new double[slices];
        this.revolutions = new double[slices];
        for (int s = 0; s < slices; s++) {
            time[s] = fromS + (s + 0.5) * sliceS;
            revolutions[s] = track.revolutionsAt(time[s]);
        }
        this.re = new double[tones.size()][slices];
        this.im = new double[tones.size()][slices];
        this.propeller = new OrderFamily(ordersOf(Shaft.PROPELLER));
        this.crank = new OrderFamily(ordersOf(Shaft.CRANK));
        fill(recording, channels, track, fromS);
    }

    /**
     * Turns the lines back and sums them.
     *
     * @param channels those the tones point to
     * @param track roughly right: a line may run away by much less than a turn within a slice
     * @param stretch of the recording to look at
     */
    static DemodulatedOrders of(
            Recording recording,
            List<Channel> channels,
            List<Tone> tones,
            SpeedTrack track,
            DwellFinder.Stretch stretch) {
        return new DemodulatedOrders(recording, channels, tones, track, stretch);
    }

    private double[] ordersOf(Shaft shaft) {
        return tones.stream()
                .filter(tone -> tone.shaft() == shaft)
                .mapToDouble(Tone::order)
                .distinct()
                .toArray();
    }

    private void fill(Recording recording, List<Channel> channels, SpeedTrack track, double fromS) {
        double[] orders = tones.stream().mapToDouble(Tone::order).distinct().toArray();
        int[] place =
                tones.stream().mapToInt(tone -> indexOf(orders, tone.order())).toArray();
        OrderWaves waves = new OrderWaves(track, recording.time(), orders);
        double[] mean = channels.stream().mapToDouble(c -> mean(c.values())).toArray();
        int slices = time.length;
        IntStream.range(0, PARTS).parallel().forEach(part -> {
            int most = (int) (sliceS * recording.time().rateHz()) + 2;
            double[][] value = new double[channels.size()][most];
            double[][] cos = new double[orders.length][most];
            double[][] sin = new double[orders.length][most];
            for (int s = part * slices / PARTS; s < (part + 1) * slices / PARTS; s++) {
                double begin = fromS + s * sliceS;
                int first = recording.time().firstFrom(begin);
                int n = Math.min(most, recording.time().firstFrom(begin + sliceS) - first);
                if (n <= 0) {
                    continue;
                }
                for (int c = 0; c < value.length; c++) {
                    channels.get(c).values().copyTo(first, value[c], n);
                    lower(value[c], mean[c], n);
                }
                waves.fill(first, n, cos, sin);
                for (int k = 0; k < place.length; k++) {
                    sum(k, s, value[tones.get(k).channel()], cos[place[k]], sin[place[k]], n);
                }
            }
        });
    }

    private static double mean(Series values) {
        double[] some = new double[MEAN_OF];
        double sum = 0;
        for (int from = 0; from < values.size(); from += MEAN_OF) {
            int n = Math.min(MEAN_OF, values.size() - from);
            values.copyTo(from, some, n);
            sum += sum(some, n);
        }
        return sum / values.size();
    }

    private static double sum(double[] x, int n) {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += x[i];
        }
        return sum;
    }

    private static void lower(double[] x, double by, int n) {
        for (int i = 0; i < n; i++) {
            x[i] -= by;
        }
    }

    private void sum(int tone, int slice, double[] x, double[] cos, double[] sin, int n) {
        double sumRe = 0;
        double sumIm = 0;
        for (int i = 0; i < n; i++) {
            sumRe += x[i] * cos[i];
            sumIm -= x[i] * sin[i];
        }
        re[tone][slice] = sumRe / n;
        im[tone][slice] = sumIm / n;
    }

    private static int indexOf(double[] orders, double order) {
        int at = 0;
        while (orders[at] != order) {
            at++;
        }
        return at;
    }

    List<Tone> tones() {
        return tones;
    }

    int slices() {
        return time.length;
    }

    double sliceS() {
        return sliceS;
    }

    /** Middle of a slice, seconds. */
    double timeS(int slice) {
        return time[slice];
    }

    /** Angle of the track at the middle of a slice. */
    double revolutions(int slice) {
        return revolutions[slice];
    }

    /** Mean speed over the slices, revolutions per second. */
    double meanHz() {
        int last = time.length - 1;
        return (revolutions[last] - revolutions[0]) / (time[last] - time[0]);
    }

    /** How many blocks of so many slices there are at such steps. */
    int blocks(int width, int hop) {
        return (time.length - width) / hop + 1;
    }

    /**
     * The slices under a corrected track.
     *
     * @param correction of the angle, revolutions, one per slice
     * @param ratioError share by which the crank turns faster against the propeller than entered
     */
    Turned under(double[] correction, double ratioError) {
        double[] crankAngle = new double[time.length];
        for (int s = 0; s < time.length; s++) {
            crankAngle[s] = correction[s] + ratioError * (revolutions[s] + correction[s]);
        }
        double[][] turnedRe = new double[tones.size()][];
        double[][] turnedIm = new double[tones.size()][];
        turn(Shaft.PROPELLER, propeller, correction, turnedRe, turnedIm);
        turn(Shaft.CRANK, crank, crankAngle, turnedRe, turnedIm);
        return new Turned(this, turnedRe, turnedIm);
    }

    private void turn(Shaft shaft, OrderFamily family, double[] angle, double[][] turnedRe, double[][] turnedIm) {
        int n = time.length;
        double[][] cos = new double[family.size()][n];
        double[][] sin = new double[family.size()][n];
        for (int k : family.byThemselves()) {
            for (int s = 0; s < n; s++) {
                double phase = 2 * Math.PI * family.order(k) * angle[s];
                cos[k][s] = Math.cos(phase);
                sin[k][s] = Math.sin(phase);
            }
        }
        family.multiplyOut(cos, sin, n);
        double[] orders =
                IntStream.range(0, family.size()).mapToDouble(family::order).toArray();
        for (int k = 0; k < tones.size(); k++) {
            if (tones.get(k).shaft() == shaft) {
                int at = indexOf(orders, tones.get(k).order());
                turnedRe[k] = new double[n];
                turnedIm[k] = new double[n];
                turnBack(re[k], im[k], cos[at], sin[at], turnedRe[k], turnedIm[k], n);
            }
        }
    }

    private static void turnBack(
            double[] re, double[] im, double[] cos, double[] sin, double[] intoRe, double[] intoIm, int n) {
        for (int s = 0; s < n; s++) {
            intoRe[s] = re[s] * cos[s] + im[s] * sin[s];
            intoIm[s] = im[s] * cos[s] - re[s] * sin[s];
        }
    }

    /**
     * Takes out what near tones leak into each other: each tone's amplitude over the whole
     * run is known far better than a block can split it from its neighbours.
     *
     * @param correction of the angle, good to a small part of a turn
     */
    DemodulatedOrders apart(double[] correction, double ratioError) {
        DemodulatedOrders apart = new DemodulatedOrders(this);
        Turned turned = under(correction, ratioError);
        for (int j = 0; j < tones.size(); j++) {
            Blocks whole = turned.blocks(j, time.length, 1);
            for (int k = 0; k < tones.size(); k++) {
                if (isNear(k, j) && leaks(j, whole.power(0), k)) {
                    apart.takeOut(k, j, whole.re(0) / 2, whole.im(0) / 2, correction, ratioError);
                }
            }
        }
        return apart;
    }

    private DemodulatedOrders(DemodulatedOrders other) {
        this.tones = other.tones;
        this.sliceS = other.sliceS;
        this.time = other.time;
        this.revolutions = other.revolutions;
        this.re = Arrays.stream(other.re).map(double[]::clone).toArray(double[][]::new);
        this.im = Arrays.stream(other.im).map(double[]::clone).toArray(double[][]::new);
        this.propeller = other.propeller;
        this.crank = other.crank;
    }

    private boolean isNear(int k, int j) {
        double apartHz = Math.abs(tones.get(j).order() - tones.get(k).order()) * meanHz();
        return j != k
                && tones.get(j).channel() == tones.get(k).channel()
                && apartHz * SLICES_PER_BLOCK * sliceS < NEAR_BINS
                && apartHz * time.length * sliceS > APART_BINS;
    }

    /** Whether what a tone leaks into a block of another can be seen in its noise. */
    private boolean leaks(int j, double power, int k) {
        double blockS = SLICES_PER_BLOCK * sliceS;
        double apart = Math.abs(tones.get(j).order() - tones.get(k).order()) * meanHz() * blockS;
        return power * Leakage.ofHann(apart) > SEEN * tones.get(k).density() * 1.5 / blockS;
    }

    private void takeOut(int k, int j, double aRe, double aIm, double[] correction, double ratioError) {
        double mine = tones.get(k).order();
        double other = tones.get(j).order() * (tones.get(j).shaft() == Shaft.CRANK ? 1 + ratioError : 1);
        double half = Math.PI * (other - mine) * meanHz() * sliceS;
        double mean = Math.sin(half) / half;
        for (int s = 0; s < time.length; s++) {
            double turns = (other - mine) * revolutions[s] + other * correction[s];
            double c = mean * Math.cos(2 * Math.PI * turns);
            double d = mean * Math.sin(2 * Math.PI * turns);
            re[k][s] -= aRe * c - aIm * d;
            im[k][s] -= aRe * d + aIm * c;
        }
    }

    /** All tones under one correction of the track. */
    static final class Turned {
        private final DemodulatedOrders slices;
        private final double[][] re;
        private final double[][] im;

        private Turned(DemodulatedOrders slices, double[][] re, double[][] im) {
            this.slices = slices;
            this.re = re;
            this.im = im;
        }

        /** Hann-weighted means of one tone over blocks of {@code width} slices. */
        Blocks blocks(int tone, int width, int hop) {
            int count = slices.blocks(width, hop);
            double[] window = hann(width);
            double[] blockRe = new double[count];
            double[] blockIm = new double[count];
            for (int b = 0; b < count; b++) {
                double sumRe = 0;
                double sumIm = 0;
                for (int i = 0; i < width; i++) {
                    sumRe += window[i] * re[tone][b * hop + i];
                    sumIm += window[i] * im[tone][b * hop + i];
                }
                blockRe[b] = 2 * sumRe;
                blockIm[b] = 2 * sumIm;
            }
            return new Blocks(blockRe, blockIm);
        }
    }

    /** Weights of a Hann window over so many slices, of sum 1. */
    static double[] hann(int width) {
        double[] window = new double[width];
        for (int i = 0; i < width; i++) {
            window[i] = (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / width)) * 2 / width;
        }
        return window;
    }

    /** Amplitude and phase of one tone, block by block. */
    static final class Blocks {
        private final double[] re;
        private final double[] im;

        private Blocks(double[] re, double[] im) {
            this.re = re;
            this.im = im;
        }

        int size() {
            return re.length;
        }

        double re(int b) {
            return re[b];
        }

        double im(int b) {
            return im[b];
        }

        double power(int b) {
            return re[b] * re[b] + im[b] * im[b];
        }

        /** Real part of block b + lag times the conjugate of block b. */
        double lagRe(int b, int lag) {
            return re[b + lag] * re[b] + im[b + lag] * im[b];
        }

        double lagIm(int b, int lag) {
            return im[b + lag] * re[b] - re[b + lag] * im[b];
        }
    }
}
