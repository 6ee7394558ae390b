package evenblade.measure.speed;

import static evenblade.measure.speed.HandMadeLines.waves;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Value;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.OrderTable;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The figures that go with a speed, from runs of eight seconds at 30 Hz: 4374 rpm of the engine at 2.43 to one. */
class SpeedFactsTest {
    private static final OrderTable GEARED = Machine.ALL.get(0).table();

    private static SpeedResult found(SpeedPrior prior, double... waves) {
        Recording recording = HandMadeLines.noisy(700, 8, 0.2, t -> waves(30 * t, waves));
        return SpeedFinder.find(recording, recording.channels(), GEARED, prior);
    }

    private static double[] amounts(SpeedResult result, WarningCode code) {
        Warning told = result.warnings().stream()
                .filter(warning -> warning.code() == code)
                .findFirst()
                .orElseThrow();
        return told.fact().values().stream()
                .filter(Value.Amount.class::isInstance)
                .mapToDouble(value -> ((Value.Amount) value).value())
                .toArray();
    }

    /** Lines that count in full do so within a third of a hertz, 0.4 % of 90 Hz. */
    @Test
    void twoLinesTellTheSpeedThatTheyWouldFit() {
        SpeedResult result = found(SpeedPrior.between(25, 33), 1, 3, 0, 1, 4.86, 1);
        assertThat(result.confirmed()).isFalse();
        assertThat(amounts(result, WarningCode.SPEED_WOULD_FIT)[0]).isCloseTo(4374, within(18.0));
    }

    @Test
    void aSpeedThatWasReadOtherwiseIsToldBesideTheOneFound() {
        SpeedResult result = found(
                SpeedPrior.near(27, 25, 33), 0.6, 1, 0, 1, 3, 1, 0.8, 6, 2, 0.6, 2.43, 1, 0.9, 4.86, 2, 0.6, 9.72, 0);
        double[] told = amounts(result, WarningCode.SPEED_NOT_AS_READ);
        assertThat(told[0]).isCloseTo(4374, within(0.5));
        assertThat(told[1]).isCloseTo(27 * 2.43 * 60, within(1e-6));
    }

    @Test
    void aRatioThatTheLinesPutRightIsTold() {
        for (double off : new double[] {0.003, -0.003}) {
            double ratio = 2.43 * (1 + off);
            SpeedResult result = found(
                    SpeedPrior.between(27, 33),
                    0.6,
                    1,
                    0,
                    1,
                    3,
                    1,
                    0.8,
                    6,
                    2,
                    0.6,
                    ratio,
                    1,
                    0.9,
                    2 * ratio,
                    2,
                    0.6,
                    4 * ratio,
                    0);
            double[] told = amounts(result, WarningCode.RATIO_CORRECTED);
            assertThat(told[0]).isCloseTo(ratio, within(1e-4 * ratio));
            assertThat(told[1]).isCloseTo(0.003, within(1e-4));
        }
    }

    /** Weights of 1, 2 and 1: a corner in the speed is rounded; at the ends there is one neighbour. */
    @Test
    void aTrackRunsThroughSpeedsSmoothedWithTheirNeighbours() {
        double[] centre = {1, 2, 3, 4};
        SpeedTrack track = SpeedFinder.trackThrough(centre, new double[] {20, 20, 24, 30}, 0, 5);
        assertThat(track.propellerHzAt(1)).isCloseTo(20, within(1e-9));
        assertThat(track.propellerHzAt(2)).isCloseTo((20 + 2 * 20 + 24) / 4.0, within(1e-9));
        assertThat(track.propellerHzAt(3)).isCloseTo((20 + 2 * 24 + 30) / 4.0, within(1e-9));
        assertThat(track.propellerHzAt(4)).isCloseTo((24 + 2 * 30) / 3.0, within(1e-9));
        assertThat(track.fromS()).isZero();
        assertThat(track.toS()).isEqualTo(5);
        SpeedTrack single = SpeedFinder.trackThrough(new double[] {1}, new double[] {20}, 0.5, 2);
        assertThat(single.revolutionsAt(2) - single.revolutionsAt(0.5)).isCloseTo(30, within(1e-9));
    }

    /** A speed off by a share until a time. */
    private static SpeedTrack off(double share, double untilS) {
        return new SpeedTrack() {
            @Override
            public double fromS() {
                return 0;
            }

            @Override
            public double toS() {
                return 30;
            }

            @Override
            public double revolutionsAt(double timeS) {
                throw new AssertionError("the speed is asked for");
            }

            @Override
            public double propellerHzAt(double timeS) {
                return 20 * (timeS < untilS ? 1 + share : 1);
            }
        };
    }

    /** Of 10 to 20 s a hundred places are looked at, 10.05, 10.15 ...; ten may be more than 2 % off. */
    @Test
    void aTrackStraysThatLeavesThePathInMoreThanATenthOfAStretch() {
        SpeedTrack path = KnotTrack.constant(20, 0, 30);
        DwellFinder.Stretch stretch = new DwellFinder.Stretch(10, 20);
        assertThat(SpeedFinder.strays(off(0.03, 11.04), path, stretch)).isFalse();
        assertThat(SpeedFinder.strays(off(0.03, 11.06), path, stretch)).isTrue();
        assertThat(SpeedFinder.strays(off(-0.03, 11.06), path, stretch)).isTrue();
        assertThat(SpeedFinder.strays(off(0.019, 30), path, stretch)).isFalse();
        assertThat(SpeedFinder.strays(off(0.021, 30), path, stretch)).isTrue();
    }

    /** A speed somewhere between 16 and 36 Hz has the standard deviation of an even distribution, their distance over √12. */
    @Test
    void whatIsNotBorneOutIsTheEnteredSpeedOrTheMiddleOfTheRange() {
        Recording recording = HandMadeLines.noisy(400, 4, 1, t -> 0);
        SpeedResult entered =
                Unconfirmed.result(recording, SpeedPrior.near(20, 16, 36), SpeedDoubt.CHANCE, Optional.empty());
        Dwell whole = entered.main().orElseThrow();
        assertThat(whole.propellerHz()).isEqualTo(20);
        assertThat(whole.propellerRpm()).isCloseTo(1200, within(1e-9));
        assertThat(whole.standardErrorHz()).isCloseTo(20 / Math.sqrt(12), within(1e-9));
        assertThat(whole.durationS()).isCloseTo(4, within(0.01));
        assertThat(entered.track().toS()).isCloseTo(4, within(0.01));
        SpeedResult open =
                Unconfirmed.result(recording, SpeedPrior.between(16, 36), SpeedDoubt.CHANCE, Optional.empty());
        assertThat(open.main()).isEmpty();
        assertThat(open.track().propellerHzAt(1)).isCloseTo(24, within(1e-9));
    }

    /** A clock that begins at 100 s. */
    @Test
    void timesAreThoseOfTheRecordingsOwnClock() {
        Recording first = HandMadeLines.noisy(
                700,
                8,
                0.2,
                t -> waves(30 * t, 0.6, 1, 0, 1, 3, 1, 0.8, 6, 2, 0.6, 2.43, 1, 0.9, 4.86, 2, 0.6, 9.72, 0));
        Recording later = new Recording(
                first.source(),
                new TimeBase.Even(100, 700, first.time().size()),
                first.channels(),
                first.quality(),
                first.stamps(),
                first.warnings(),
                List.of(new Stretch(100, 108)));
        SpeedResult result = SpeedFinder.find(later, later.channels(), GEARED, SpeedPrior.between(27, 33));
        assertThat(result.dwells()).singleElement().satisfies(dwell -> {
            assertThat(dwell.fromS()).isCloseTo(100, within(0.01));
            assertThat(dwell.toS()).isCloseTo(108, within(0.01));
        });
        SpeedResult none = Unconfirmed.result(later, SpeedPrior.near(20, 16, 36), SpeedDoubt.CHANCE, Optional.empty());
        assertThat(none.main().orElseThrow().durationS()).isCloseTo(8, within(0.01));
        assertThat(none.main().orElseThrow().toS()).isCloseTo(108, within(0.01));
    }
}
