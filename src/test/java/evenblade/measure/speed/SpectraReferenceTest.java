package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Source;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.Shaft;
import evenblade.measure.speed.DemodulatedOrders.Tone;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Short spectra, lines along a speed and lines turned back beside figures made by numpy from the definitions:
 * {@code reference/speed/spectra.py}, which makes the same samples. Spectra are kept in single precision: five digits are asked.
 */
class SpectraReferenceTest {
    private static final double RATE_HZ = 400;
    private static final int SIZE = 2400;
    private static final double FIVE_DIGITS = 1e-5;
    private static final double[] PLACES = {20.1, 48.0, 60.4, 77.7, 111.3, 150.0};

    /** 20 Hz, faster by 0.2 Hz every second. */
    private static final SpeedTrack RISING = track(20, 0.2);

    private static SpeedTrack track(double hz, double rise) {
        return new SpeedTrack() {
            @Override
            public double fromS() {
                return 0;
            }

            @Override
            public double toS() {
                return 6;
            }

            @Override
            public double revolutionsAt(double t) {
                return hz * t + rise / 2 * t * t;
            }

            @Override
            public double propellerHzAt(double t) {
                return hz + rise * t;
            }
        };
    }

    private static Recording recording(DoubleUnaryOperator values) {
        double[] x = IntStream.range(0, SIZE).mapToDouble(values::applyAsDouble).toArray();
        Channel channel = new Channel("x", SignalUnit.METRE_PER_SECOND_SQUARED, Series.of(x));
        return new Recording(
                new Source(Path.of("x.wav"), "0", "wav", false, RATE_HZ, 6, List.of("x")),
                new TimeBase.Even(0, RATE_HZ, SIZE),
                List.of(channel),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(new Stretch(0, 6)));
    }

    private static double wave(double turns, double c, double s) {
        return c * Math.cos(2 * Math.PI * turns) + s * Math.sin(2 * Math.PI * turns);
    }

    private static Recording run() {
        return recording(i -> {
            long n = (long) i;
            double t = i / RATE_HZ;
            double turns = RISING.revolutionsAt(t);
            return 2
                    + 0.3 * t
                    + 1.5 * ((n * n * 37 + n * 11) % 1009 / 1009.0 - 0.5)
                    + wave(turns, 0.7, 0.2)
                    + wave(2.43 * turns, -0.3, 0.4)
                    + wave(3 * turns, 0.25, -0.1)
                    + wave(111.3 * t, 0.2, 0);
        });
    }

    private static WhitenedSpectrogram spectra() {
        Recording run = run();
        return WhitenedSpectrogram.of(run, run.channels(), 160);
    }

    @Test
    void shortSpectraStandOverTheirFloor() {
        WhitenedSpectrogram spectra = spectra();
        assertThat(spectra.frames()).isEqualTo(13);
        assertThat(spectra.lowestHz()).isCloseTo(2, within(1e-9));
        assertThat(spectra.highestHz()).isCloseTo(160.546875, within(1e-9));
        double[][] over = {
            {
                292.84221530273084,
                5.393422242927058,
                28.347721108656724,
                3.318827294969037,
                17.2096731340148,
                0.2780421264368096
            },
            {
                196.0732482407723,
                1.136215381524185,
                0.27335826314340106,
                4.53479166697823,
                36.962074220512676,
                0.4295365584965046
            },
            {
                12.127339559472487,
                0.2885021427544285,
                2.3039294152373713,
                0.8888627970635333,
                20.902239967871743,
                0.012454293472145432
            }
        };
        double[][] evidence = {
            {
                5.053609338397345,
                -0.3387090439882194,
                2.7717945210949853,
                1.011225693862299,
                2.4473388924312705,
                -0.38496600720601665
            },
            {
                1.8204876589447325,
                0.3098595552601203,
                -0.3165160443807839,
                1.2777020957718361,
                3.0994756233983587,
                -0.3471912139641019
            },
            {
                -0.17818018354036108,
                -0.40310823826222864,
                0.6616624995963456,
                0.09430087626456418,
                2.6148985861245784,
                -0.42802055613828377
            }
        };
        int[] frame = {0, 7, 12};
        double[] centre = {0.75, 3.375, 5.25};
        for (int f = 0; f < 3; f++) {
            assertThat(spectra.centreS(frame[f])).isCloseTo(centre[f], within(1e-9));
            for (int p = 0; p < PLACES.length; p++) {
                assertThat(spectra.overFloor(0, frame[f], PLACES[p]))
                        .isCloseTo(over[f][p], within(FIVE_DIGITS * (1 + over[f][p])));
                assertThat(spectra.evidence(0, frame[f], PLACES[p])).isCloseTo(evidence[f][p], within(FIVE_DIGITS));
            }
        }
        double[] density = {
            0.0013310463138627368,
            0.0011150018844900515,
            0.0013874677209796539,
            0.0009127046284553167,
            0.0010681714813240784,
            0.0007546181193608163
        };
        for (int p = 0; p < PLACES.length; p++) {
            assertThat(spectra.floorDensity(0, PLACES[p])).isCloseTo(density[p], within(FIVE_DIGITS * density[p]));
        }
    }

    /** Sampled 400 times a second, 300 Hz read as 100; 390 Hz as 10; 399 Hz as 1, below the range. */
    @Test
    void aLineBeyondTheRangeFoldsDown() {
        WhitenedSpectrogram spectra = spectra();
        assertThat(spectra.appearsAtHz(120)).isEqualTo(120);
        assertThat(spectra.appearsAtHz(300)).isCloseTo(100, within(1e-9));
        assertThat(spectra.appearsAtHz(530)).isCloseTo(130, within(1e-9));
        assertThat(spectra.folded(390)).isTrue();
        assertThat(spectra.folded(399)).isFalse();
        assertThat(spectra.folded(410)).isFalse();
        assertThat(spectra.inRange(1.9)).isFalse();
        assertThat(spectra.inRange(2.1)).isTrue();
    }

    private static WhitenedLines lines() {
        double[] speed = IntStream.range(0, 13)
                .mapToDouble(f -> 20 + 0.2 * (f * 0.375 + 0.75))
                .toArray();
        return WhitenedLines.along(spectra(), 0, speed);
    }

    @Test
    void linesGoAlongWithTheSpeed() {
        WhitenedLines lines = lines();
        assertThat(lines.meanHz()).isCloseTo(20.6, within(1e-9));
        assertThat(lines.evidence(20.6)).isCloseTo(4.692817969627813, within(FIVE_DIGITS));
        assertThat(lines.evidence(1.5 * 20.6)).isCloseTo(0.11195062276034232, within(FIVE_DIGITS));
        assertThat(lines.evidence(2.43 * 20.6)).isCloseTo(4.033188396248359, within(FIVE_DIGITS));
        assertThat(lines.evidence(3 * 20.6)).isCloseTo(2.67161144656678, within(FIVE_DIGITS));
        // A tone smears over them, by how much is seen from 0.89 on.
        assertThat(lines.evidence(111.3)).isCloseTo(0.575436443248247, within(FIVE_DIGITS));
        assertThat(lines.stands(111.3)).isFalse();
        assertThat(lines.stands(3 * 20.6)).isTrue();
        assertThat(lines.credit(20.6)).isEqualTo(1);
        assertThat(lines.credit(3 * 20.6)).isCloseTo(2.67161144656678 / 4.2, within(FIVE_DIGITS));
        assertThat(lines.strength(20.6)).isCloseTo(4.692817969627813 / 4.2, within(FIVE_DIGITS));
        assertThat(lines.strength(111.3)).isZero();
        assertThat(lines.resolutionHz()).isCloseTo(1 / 1.5, within(1e-9));
        // Folded down from 400 − 20.6 Hz.
        assertThat(lines.evidence(379.4)).isCloseTo(lines.evidence(20.6), within(1e-9));
    }

    @Test
    void theStrongestLinesAreWhereTheyWerePut() {
        WhitenedLines lines = lines();
        double[] peaks = lines.peaksHz();
        double[] put = {20.6, 2.43 * 20.6, 3 * 20.6};
        for (int k = 0; k < put.length; k++) {
            // Noise moves a peak by a small part of the resolution.
            assertThat(peaks[k]).isCloseTo(put[k], within(0.1));
        }
        assertThat(lines.mostEvidence(20.3, 0.5)).isCloseTo(lines.evidence(peaks[0]), within(0.02));
        WhitenedLines without = lines.without(new double[] {20.6}, 0.5, 0.02);
        // 0.5 Hz and 2 % of 20.6 are 0.912 Hz.
        assertThat(without.evidence(20.6)).isZero();
        assertThat(without.evidence(20.6 - 0.9)).isZero();
        assertThat(without.evidence(20.6 + 0.9)).isZero();
        assertThat(without.evidence(20.6 - 0.93)).isCloseTo(lines.evidence(20.6 - 0.93), within(1e-9));
        assertThat(without.evidence(20.6 + 0.93)).isCloseTo(lines.evidence(20.6 + 0.93), within(1e-9));
    }

    private static DemodulatedOrders turnedBack(Recording run, SpeedTrack track, Tone... tones) {
        return DemodulatedOrders.of(run, run.channels(), List.of(tones), track, new DwellFinder.Stretch(0, 6));
    }

    @Test
    void linesTurnedBackStandStill() {
        DemodulatedOrders slices = turnedBack(
                run(),
                RISING,
                new Tone(0, 1, Shaft.PROPELLER, 1e-3, true),
                new Tone(0, 2.43, Shaft.CRANK, 1e-3, true),
                new Tone(0, 3, Shaft.PROPELLER, 1e-3, true));
        assertThat(slices.slices()).isEqualTo(96);
        assertThat(slices.sliceS()).isEqualTo(1 / 16.0);
        assertThat(slices.meanHz()).isCloseTo(20.6, within(1e-9));
        assertThat(slices.revolutions(40)).isCloseTo(RISING.revolutionsAt(40.5 / 16), within(1e-9));
        double[] correction = IntStream.range(0, 96)
                .mapToDouble(s -> 0.02 * Math.sin(0.9 * (s + 0.5) / 16))
                .toArray();
        DemodulatedOrders.Turned turned = slices.under(correction, 0.004);
        double[][] expected = {
            {
                0.6935766868058951,
                -0.20979026638671075,
                0.7247036673631388,
                -0.22016067634384515,
                0.6611936312739423,
                -0.12708951946326635
            },
            {
                -0.5411669831381656,
                -0.08834519065675164,
                0.3479933164003811,
                0.3211522862579867,
                -0.4118096827310077,
                -0.18193383668899732
            },
            {
                0.2299334375236402,
                0.06923262360320961,
                0.2887253007211116,
                0.06451683582537474,
                0.15478368771078915,
                0.15125738296573066
            }
        };
        for (int k = 0; k < 3; k++) {
            DemodulatedOrders.Blocks blocks = turned.blocks(k, 16, 8);
            assertThat(blocks.size()).isEqualTo(11);
            int[] at = {0, 4, 10};
            for (int b = 0; b < 3; b++) {
                assertThat(blocks.re(at[b])).isCloseTo(expected[k][2 * b], within(1e-8));
                assertThat(blocks.im(at[b])).isCloseTo(expected[k][2 * b + 1], within(1e-8));
            }
            assertThat(blocks.power(4))
                    .isCloseTo(Math.pow(Math.hypot(expected[k][2], expected[k][3]), 2), within(1e-8));
            // z(4)·z(0)* by its length and angle.
            double size = Math.hypot(expected[k][0], expected[k][1]) * Math.hypot(expected[k][2], expected[k][3]);
            double angle = Math.atan2(expected[k][3], expected[k][2]) - Math.atan2(expected[k][1], expected[k][0]);
            assertThat(blocks.lagRe(0, 4)).isCloseTo(size * Math.cos(angle), within(1e-8));
            assertThat(blocks.lagIm(0, 4)).isCloseTo(size * Math.sin(angle), within(1e-8));
        }
    }

    /** Two lines 3.5 Hz apart: what the second brings into the first's blocks of a second, 1/(π·3.5·11.25) of it, goes again. */
    @Test
    void nearLinesAreTakenApart() {
        double ratio = 0.001;
        double nearHz = 23.5 * (1 + ratio);
        double[] none = new double[96];
        Tone[] tones = {new Tone(0, 1, Shaft.PROPELLER, 1e-7, true), new Tone(0, 1.175, Shaft.CRANK, 1e-7, true)};
        Recording first = recording(i -> wave(20 * i / RATE_HZ, 0.6, 0.8));
        Recording second = recording(i -> wave(nearHz * i / RATE_HZ, 0.3, 0.4));
        Recording both = recording(i -> wave(20 * i / RATE_HZ, 0.6, 0.8) + wave(nearHz * i / RATE_HZ, 0.3, 0.4));
        DemodulatedOrders slices = turnedBack(both, track(20, 0), tones);
        for (int k = 0; k < 2; k++) {
            DemodulatedOrders.Blocks alone = turnedBack(k == 0 ? first : second, track(20, 0), tones)
                    .under(none, ratio)
                    .blocks(k, 16, 8);
            DemodulatedOrders.Blocks raw = slices.under(none, ratio).blocks(k, 16, 8);
            DemodulatedOrders.Blocks apart =
                    slices.apart(none, ratio).under(none, ratio).blocks(k, 16, 8);
            double before = 0;
            double after = 0;
            for (int b = 0; b < raw.size(); b++) {
                before = Math.max(before, Math.hypot(raw.re(b) - alone.re(b), raw.im(b) - alone.im(b)));
                after = Math.max(after, Math.hypot(apart.re(b) - alone.re(b), apart.im(b) - alone.im(b)));
            }
            double leak = (k == 0 ? 0.5 : 1) / (Math.PI * 3.5 * 11.25);
            // Within a third: the line's image beyond zero leaks too.
            assertThat(before).isBetween(leak * 2 / 3, leak * 4 / 3);
            assertThat(after).isLessThan(leak / 4);
        }
    }

    /** The crank 0.3 % faster than its orders say: over 6 s at 50 Hz nearly a whole turn is lost. */
    @Test
    void aWrongRatioIsSeenByHowMuchTheCrankRunsAway() {
        double off = 0.003;
        Recording run = recording(i -> {
            double turns = 20 * i / RATE_HZ;
            return wave(turns, 0.7, 0.2)
                    + wave(3 * turns, 0.5, 0.1)
                    + wave(2.43 * (1 + off) * turns, 0.3, 0.4)
                    + wave(4.86 * (1 + off) * turns, -0.4, 0.4);
        });
        Tone[] tones = {
            new Tone(0, 1, Shaft.PROPELLER, 1e-5, true),
            new Tone(0, 3, Shaft.PROPELLER, 1e-5, true),
            new Tone(0, 2.43, Shaft.CRANK, 1e-5, true),
            new Tone(0, 4.86, Shaft.CRANK, 1e-5, true)
        };
        DemodulatedOrders slices = turnedBack(run, track(20, 0), tones);
        double[] none = new double[slices.slices()];
        RatioDrift drift = RatioDrift.of(slices, new ToneTrust(slices), none, List.of(2, 3));
        // A hundredth of it: what lines leak into each other.
        assertThat(drift.share()).isCloseTo(off, within(0.01 * off));
        assertThat(drift.coherence()).isGreaterThan(0.9);
        // As fast as entered, nothing is: no drift of 0.6 turns.
        DemodulatedOrders right = turnedBack(run, track(20 * (1 + off), 0), tones[2], tones[3]);
        assertThat(RatioDrift.of(right, new ToneTrust(right), new double[right.slices()], List.of(0, 1))
                        .share())
                .isZero();
        assertThat(RatioDrift.of(slices, new ToneTrust(slices), none, List.of(0, 1))
                        .share())
                .isZero();
        // Nothing is said of no line.
        assertThat(RatioDrift.of(slices, new ToneTrust(slices), none, List.of()))
                .isEqualTo(RatioDrift.NONE);
    }

    /** The crank's angle swings by half a turn beside the propeller's: no one drift brings its lines to a halt. */
    @Test
    void aRatioThatWandersIsSeenByLinesThatNeverStandStill() {
        Recording run = recording(i -> {
            double turns = 20 * i / RATE_HZ;
            double crank = 2.43 * turns + 0.5 * Math.sin(2 * Math.PI * turns / 90);
            return wave(turns, 0.7, 0.2) + wave(crank, 0.3, 0.4) + wave(2 * crank, -0.4, 0.4);
        });
        Tone[] tones = {
            new Tone(0, 1, Shaft.PROPELLER, 1e-5, true),
            new Tone(0, 2.43, Shaft.CRANK, 1e-5, true),
            new Tone(0, 4.86, Shaft.CRANK, 1e-5, true)
        };
        DemodulatedOrders slices = turnedBack(run, track(20, 0), tones);
        double[] none = new double[slices.slices()];
        assertThat(RatioDrift.of(slices, new ToneTrust(slices), none, List.of(1, 2))
                        .coherence())
                .isLessThan(0.5);
        assertThat(RatioDrift.standing(slices, none, 0, List.of(Shaft.PROPELLER))
                        .coherence())
                .isGreaterThan(0.95);
    }

    /** Density S in a block of w seconds under Hann's window: S·1.5/w of each part. Straying n times that costs √n of trust. */
    @Test
    void aToneThatStraysIsTrustedLess() {
        DemodulatedOrders slices = turnedBack(
                run(),
                RISING,
                new Tone(0, 1, Shaft.PROPELLER, 2e-3, true),
                new Tone(0, 3, Shaft.PROPELLER, 2e-3, true));
        ToneTrust trust = new ToneTrust(slices);
        assertThat(trust.componentVariance(0, 16)).isCloseTo(2e-3 * 1.5, within(1e-12));
        assertThat(trust.componentVariance(0, 32)).isCloseTo(2e-3 * 1.5 / 2, within(1e-12));
        // Weights 4 and 1: the others of the first have 1. It lies 3 off them, 9 over 1/4 + 1 is 7.2 each.
        int blocks = 8;
        double[][] residual = new double[2][blocks];
        double[][] weight = new double[2][blocks];
        double[] above = new double[blocks];
        double[] below = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            residual[0][b] = 3.5;
            residual[1][b] = 0.5;
            weight[0][b] = 4;
            weight[1][b] = 1;
            above[b] = 4 * 3.5 + 0.5;
            below[b] = 5;
        }
        trust.judge(List.of(0, 1), residual, weight, above, below);
        assertThat(trust.componentVariance(0, 16)).isCloseTo(7.2 * 2e-3 * 1.5, within(1e-12));
        assertThat(trust.componentVariance(1, 16)).isCloseTo(7.2 * 2e-3 * 1.5, within(1e-12));
    }

    /** Of 8 blocks each strays by 1.6 times what its noise says: less than twice is let pass. */
    @Test
    void aToneThatStraysNoMoreThanNoiseIsTrustedAsBefore() {
        DemodulatedOrders slices = turnedBack(
                run(),
                RISING,
                new Tone(0, 1, Shaft.PROPELLER, 2e-3, true),
                new Tone(0, 3, Shaft.PROPELLER, 2e-3, true));
        int blocks = 8;
        double[][] residual = new double[2][blocks];
        double[][] weight = new double[2][blocks];
        double[] above = new double[blocks];
        double[] below = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            // Two apart, 4 over 1/4 + 9/4 is 1.6.
            residual[0][b] = 2;
            weight[0][b] = 4;
            weight[1][b] = 4 / 9.0;
            above[b] = 8;
            below[b] = 4 + 4 / 9.0;
        }
        ToneTrust trust = new ToneTrust(slices);
        trust.judge(List.of(0, 1), residual, weight, above, below);
        assertThat(trust.componentVariance(0, 16)).isCloseTo(2e-3 * 1.5, within(1e-12));
        assertThat(trust.componentVariance(1, 16)).isCloseTo(2e-3 * 1.5, within(1e-12));
    }

    /** One line at what was entered, e^(−½) of one at a standard deviation of 8 %. */
    @Test
    void anEnteredSpeedCountsForOneLineAtMost() {
        SpeedPrior prior = SpeedPrior.around(30, 0.05);
        assertThat(prior.fromHz()).isCloseTo(28.5, within(1e-12));
        assertThat(prior.toHz()).isCloseTo(31.5, within(1e-12));
        assertThat(prior.bonus(30)).isCloseTo(1, within(1e-12));
        assertThat(prior.bonus(30 * Math.exp(0.08))).isCloseTo(Math.exp(-0.5), within(1e-12));
        assertThat(prior.bonus(30 * Math.exp(-0.16))).isCloseTo(Math.exp(-2), within(1e-12));
        assertThat(prior.expects(32.4)).isTrue(); // ln 1.08 = 0.077
        assertThat(prior.expects(32.6)).isFalse(); // ln 1.087 = 0.083
        assertThat(prior.readOff(30.5)).isTrue();
        assertThat(prior.readOff(30.7)).isFalse();
        assertThat(SpeedPrior.agree(31.5, 30)).isTrue();
        assertThat(SpeedPrior.agree(31.6, 30)).isFalse();
    }

    /** Hann's transform beyond its main lobe: 1/(π·b·(b² − 1)) at most. */
    @Test
    void aLineLeaksLessTheFartherItLies() {
        assertThat(Leakage.ofHann(1.5)).isEqualTo(1);
        assertThat(Leakage.ofHann(2.5)).isCloseTo(Math.pow(1 / (Math.PI * 13.125), 2), within(1e-15));
        assertThat(Leakage.ofHann(4.5)).isCloseTo(Math.pow(1 / (Math.PI * 86.625), 2), within(1e-15));
    }
}
