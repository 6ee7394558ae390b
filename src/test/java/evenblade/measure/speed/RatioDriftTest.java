package evenblade.measure.speed;

import static evenblade.measure.speed.Drawn.line;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Recording;
import evenblade.machine.installation.Shaft;
import evenblade.measure.speed.DemodulatedOrders.Tone;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Lines drawn with a drift that is known, each in a channel of its own; 12 s are 192 slices of 1/16 s. The path began 20 s
 * before. */
class RatioDriftTest {
    private static final double RATE_HZ = 256;
    private static final double SECONDS = 12;
    private static final int SLICES = 192;
    private static final DwellFinder.Stretch ALL = new DwellFinder.Stretch(0, SECONDS);

    private static DemodulatedOrders slices(double hz, List<Tone> tones, DoubleUnaryOperator... lines) {
        Recording run = Drawn.recording(RATE_HZ, SECONDS, lines);
        return DemodulatedOrders.of(run, run.channels(), tones, KnotTrack.constant(hz, -20, SECONDS), ALL);
    }

    private static Tone crank(int channel, double order, double density) {
        return new Tone(channel, order, Shaft.CRANK, density, true);
    }

    private static RatioDrift drift(DemodulatedOrders slices, double[] correction) {
        List<Integer> all = IntStream.range(0, slices.tones().size()).boxed().toList();
        return RatioDrift.of(slices, new ToneTrust(slices), correction, all);
    }

    private static double[] none() {
        return new double[SLICES];
    }

    /** 60 turns at orders up to 8; 4080 and 12 000 at up to a tenth, which are tried in parts of 400 first. */
    @Test
    void linesThatRunAwayTellByHowMuch() {
        double[][] hzAndOrders = {{5, 8, 4.1}, {340, 0.1, 0.071}, {1000, 0.1, 0.071}};
        for (double[] each : hzAndOrders) {
            for (double off : new double[] {0.0046, -0.0059, 0.0093, -0.0021, 0.0044, -0.0037, 0.0049, -0.0079}) {
                double hz = each[0] * (1 + off);
                DemodulatedOrders slices = slices(
                        each[0],
                        List.of(crank(0, each[1], 1e-5), crank(1, each[2], 1e-5)),
                        t -> line(0.5, each[1], hz * t),
                        t -> line(0.3, each[2], hz * t));
                boolean tells = Math.abs(off) * each[0] * SECONDS * each[1] > 0.6;
                RatioDrift drift = drift(slices, none());
                // An image of each line, a hundredth of it, turns a phase by so much at either end of 480 cycles.
                assertThat(drift.share()).as("%s at %s Hz", off, each[0]).isCloseTo(off, within(1e-5));
                assertThat(drift.coherence()).isCloseTo(1, within(2e-3));
                assertThat(tells).isTrue();
            }
        }
    }

    /** At 5 Hz and order 8 for 12 s: 0.6 cycles are a drift of 0.00125. */
    @Test
    void lessThanSixTenthsOfACycleIsNoDrift() {
        for (double off : new double[] {0.00115, -0.00115, 0.00135, -0.00135}) {
            DemodulatedOrders slices = slices(5, List.of(crank(0, 8, 1e-5)), t -> line(0.5, 8, 5 * (1 + off) * t));
            RatioDrift drift = drift(slices, none());
            if (Math.abs(off) < 0.00125) {
                assertThat(drift.share()).isZero();
            } else {
                assertThat(drift.share()).isCloseTo(off, within(1e-5));
            }
        }
    }

    /** Half of it stands still, and half and a hundredth runs away: neither is certain. */
    @Test
    void aDriftThatIsHardlyLikelierThanNoneIsNone() {
        for (double more : new double[] {0.505, 0.6}) {
            DemodulatedOrders slices =
                    slices(5, List.of(crank(0, 8, 1e-5)), t -> line(0.5, 8, 5 * t) + line(more, 8, 5 * 1.00625 * t));
            // They beat three times in 12 s. Logarithm of likelihood: 95.5·ln(0.505/0.495) = 1.9, and
            // 95.5·ln(0.36/0.25) = 34.8; certain from 8 on.
            RatioDrift drift = drift(slices, none());
            // A cycle is a drift of 0.0021: what stands three off moves the most of what runs by less than a tenth of
            // one.
            assertThat(drift.share()).isCloseTo(more < 0.55 ? 0 : 0.00625, within(2e-4));
            assertThat(drift.coherence())
                    .isCloseTo(Math.pow(more < 0.55 ? 0.5 : more, 2) / (0.25 + more * more), within(0.015));
        }
    }

    /** The track turns 0.2 Hz faster than the path said, 2.4 turns of 60: the share is of what really turned. */
    @Test
    void theShareIsOfTheTrackAsItWasPutRight() {
        double[] correction = IntStream.range(0, SLICES)
                .mapToDouble(s -> 0.2 * (s + 0.5) / 16)
                .toArray();
        DemodulatedOrders slices = slices(5, List.of(crank(0, 8, 1e-5)), t -> line(0.5, 8, 5.2 * 1.006 * t));
        assertThat(drift(slices, correction).share()).isCloseTo(0.006, within(1e-5));
    }

    /** v = 1.5·S/w in blocks of two slices, 1/8 s; a line of power A² below 2v isn't heard. */
    @Test
    void aLineInItsNoiseSaysNothing() {
        double just = 0.25 / 8 / 3;
        for (double share : new double[] {0.9, 1.1}) {
            DemodulatedOrders slices = slices(5, List.of(crank(0, 8, share * just)), t -> line(0.5, 8, 5 * 1.006 * t));
            RatioDrift drift = drift(slices, none());
            if (share > 1) {
                assertThat(drift).isEqualTo(RatioDrift.NONE);
            } else {
                assertThat(drift.share()).isCloseTo(0.006, within(1e-5));
            }
        }
    }

    /** One line stands and one runs, by (A² − 2v)/v of each times its order squared. */
    @Test
    void coherenceIsThePowerThatStandsByTheWeightOfItsLine() {
        double[] density = {2e-3, 4e-4};
        DemodulatedOrders slices = slices(
                5,
                List.of(crank(0, 8, density[0]), crank(1, 5, density[1])),
                t -> line(0.5, 8, 5 * t),
                t -> line(0.3, 5, 5 * 1.05 * t));
        double[] amplitude = {0.5, 0.3};
        double[] order = {8, 5};
        double[] weight = new double[2];
        // The one that runs goes 1.25 Hz, fifteen whole turns, and an eighth of a second of that shortens it.
        double within = Math.pow(Math.sin(Math.PI * 1.25 / 8) / (Math.PI * 1.25 / 8), 2);
        for (int k = 0; k < 2; k++) {
            double v = 1.5 * density[k] * 8;
            double power = amplitude[k] * amplitude[k] * (k == 0 ? 1 : within);
            weight[k] = order[k] * order[k] * (power - 2 * v) / v;
        }
        assertThat(drift(slices, none()).coherence()).isCloseTo(weight[0] / (weight[0] + weight[1]), within(2e-3));
        assertThat(RatioDrift.standing(slices, none(), 0, List.of(Shaft.CRANK)).coherence())
                .isCloseTo(weight[0] / (weight[0] + weight[1]), within(2e-3));
    }

    /**
     * A line that stops halfway, at the middle of a block: of 191 blocks 95 hold it, one half of it. Each of two such lines
     * adds −191/2·ln(1 − s).
     */
    @Test
    void likelihoodIsThatOfWhatDoesNotStandStillAsNoise() {
        DemodulatedOrders slices = slices(
                5,
                List.of(crank(0, 8, 1e-5), crank(1, 5, 1e-5)),
                t -> t < 6 ? line(0.5, 8, 5 * 1.004 * t) : 0,
                t -> t < 6 ? line(0.3, 5, 5 * 1.004 * t) : 0);
        double still = 95.5 * 95.5 / (191 * 95.25);
        RatioDrift.Standing standing = RatioDrift.standing(slices, none(), 0.004, List.of(Shaft.CRANK));
        assertThat(standing.likelihood()).isCloseTo(-191 * Math.log(1 - still), within(0.2));
        assertThat(standing.coherence()).isCloseTo(still, within(1e-3));
        assertThat(RatioDrift.standing(slices, none(), 0.004, List.of(Shaft.PROPELLER)))
                .isEqualTo(new RatioDrift.Standing(0, 0));
    }
}
