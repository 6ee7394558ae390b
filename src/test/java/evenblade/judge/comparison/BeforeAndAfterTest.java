package evenblade.judge.comparison;

import static evenblade.judge.comparison.Invented.channel;
import static evenblade.judge.comparison.Invented.dwell;
import static evenblade.judge.comparison.Invented.gearbox;
import static evenblade.judge.comparison.Invented.once;
import static evenblade.judge.comparison.Invented.run;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.FullScale;
import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.Change.ChangeVerdict;
import evenblade.judge.comparison.RunComparison.ChannelComparison;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Two runs held against each other. */
class BeforeAndAfterTest {
    private static final SignalUnit ACCELERATION = SignalUnit.METRE_PER_SECOND_SQUARED;

    private static RunComparison compare(MeasuredRun before, MeasuredRun after) {
        return BeforeAndAfter.compare(before, after, List.of());
    }

    @Test
    void aHalvedOnceIsLowerByFiftyPercent() {
        Change change = once(compare(run("before", dwell(4800, 0.6, 1.0)), run("after", dwell(4800, 0.3, 1.0))));
        assertThat(change.percent().orElseThrow()).isCloseTo(-50, within(1e-9));
        assertThat(change.verdict()).isEqualTo(ChangeVerdict.LOWER);
        // By hand: 2·0.01² (± 2 standard errors of 0.5 %) + (1.95996·0.003)²·(1/0.6² + 1/0.3²) (what no line
        // beside one of 1.0 repeats better than) + (1.95996·0.03)² (the line by itself) + (1.95996·0.06)² (a sensor put
        // back,
        // and no engine line that shows by how much); the root is 0.1340401.
        assertThat(change.ciLowPercent().orElseThrow()).isCloseTo(100 * (0.5 * Math.exp(-0.1340401) - 1), within(1e-4));
        assertThat(change.ciHighPercent().orElseThrow()).isCloseTo(100 * (0.5 * Math.exp(0.1340401) - 1), within(1e-4));
    }

    @Test
    void whatStaysWithinTheUsualScatterIsNotCalled() {
        RunComparison comparison = compare(run("a", dwell(4800, 0.6, 1.0)), run("b", dwell(4800, 0.63, 1.1)));
        assertThat(comparison.channels().get(0).dwells().get(0).changes())
                .extracting(Change::verdict)
                .containsOnly(ChangeVerdict.NO_CHANGE_SHOWN);
        assertThat(comparison.warnings())
                .extracting(warning -> warning.code().word())
                .contains("no-repeat-run");
    }

    @Test
    void aLineThatSinksIntoTheNoiseIsLowerByAtLeastSoMuch() {
        Change change = once(compare(run("a", dwell(4800, 0.6, 1.0)), run("b", dwell(4800, 0, 1.0))));
        assertThat(change.after()).isEqualTo(new ComparedValue.Below(Invented.NOISE));
        assertThat(change.percent()).isEmpty();
        assertThat(change.ciLowPercent()).hasValue(-100);
        // 0.02 of 0.6 is −96.7 %; the scatter of the runs takes a little of it away.
        assertThat(change.ciHighPercent().orElseThrow()).isBetween(-96.7, -96.0);
        assertThat(change.verdict()).isEqualTo(ChangeVerdict.LOWER);
    }

    @Test
    void aLineThatRisesOutOfTheNoiseIsHigherByAtLeastSoMuch() {
        Change change = once(compare(run("a", dwell(4800, 0, 1.0)), run("b", dwell(4800, 0.2, 1.0))));
        assertThat(change.ciLowPercent().orElseThrow()).isBetween(750.0, 900.0);
        assertThat(change.ciHighPercent()).isEmpty();
        assertThat(change.verdict()).isEqualTo(ChangeVerdict.HIGHER);
    }

    @Test
    void aWeakLineBesideAHighNoiseFloorIsNoNews() {
        Change change = once(compare(run("a", dwell(4800, 0.0205, 1.0)), run("b", dwell(4800, 0, 1.0))));
        assertThat(change.verdict()).isEqualTo(ChangeVerdict.NO_CHANGE_SHOWN);
    }

    @Test
    void aLineHiddenInBothRunsHasNoInterval() {
        Change change = once(compare(run("a", dwell(4800, 0, 1.0)), run("b", dwell(4800, 0, 1.0))));
        assertThat(change.ciLowPercent()).isEmpty();
        assertThat(change.ciHighPercent()).isEmpty();
        assertThat(change.verdict()).isEqualTo(ChangeVerdict.NO_CHANGE_SHOWN);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void swappingBeforeAndAfterMirrorsTheChange(long seed) {
        Random random = new Random(seed);
        MeasuredRun one = run("a", dwell(4800, random.nextDouble() + 0.1, 1.0));
        MeasuredRun other = run("b", dwell(4800 * (1 + 0.018 * random.nextDouble()), random.nextDouble() + 0.1, 1.0));
        Change there = once(compare(one, other));
        Change back = once(compare(other, one));
        assertThat(logOf(back.percent().orElseThrow()))
                .isCloseTo(-logOf(there.percent().orElseThrow()), within(1e-12));
        assertThat(logOf(back.ciLowPercent().orElseThrow()))
                .isCloseTo(-logOf(there.ciHighPercent().orElseThrow()), within(1e-12));
        assertThat(back.verdict() == ChangeVerdict.HIGHER).isEqualTo(there.verdict() == ChangeVerdict.LOWER);
    }

    private static double logOf(double percent) {
        return Math.log1p(percent / 100);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 0.3, 9.80665, 1e5})
    void scalingBothRunsChangesNoPercentage(double factor) {
        var before = dwell(4800, 0.6, 1.0);
        var after = dwell(4810, 0.5, 1.2);
        RunComparison plain = compare(run("a", before), run("b", after));
        RunComparison scaled =
                compare(run("a", Invented.scaled(before, factor)), run("b", Invented.scaled(after, factor)));
        for (int i = 0; i < plain.channels().get(0).dwells().get(0).changes().size(); i++) {
            Change a = plain.channels().get(0).dwells().get(0).changes().get(i);
            Change b = scaled.channels().get(0).dwells().get(0).changes().get(i);
            assertThat(b.verdict()).isEqualTo(a.verdict());
            assertThat(b.percent().isPresent()).isEqualTo(a.percent().isPresent());
            a.percent().ifPresent(p -> assertThat(b.percent().orElseThrow()).isCloseTo(p, within(1e-9)));
            a.ciHighPercent()
                    .ifPresent(p -> assertThat(b.ciHighPercent().orElseThrow()).isCloseTo(p, within(1e-7)));
        }
    }

    @Test
    void oneRunInGAndOneInMetresCompareByWhatTheyMean() {
        // 1 g = 9.80665 m/s² by definition.
        MeasuredRun before = run("a", gearbox(), channel("x", SignalUnit.STANDARD_GRAVITY, dwell(4800, 0.1, 1.0)));
        MeasuredRun after = run("b", gearbox(), channel("x", ACCELERATION, dwell(4800, 0.980665, 9.80665)));
        assertThat(once(compare(before, after)).percent().orElseThrow()).isCloseTo(0, within(1e-9));
    }

    @Test
    void theOrderOfTheChannelsIsOfNoConsequence() {
        var x1 = channel("x", ACCELERATION, dwell(4800, 0.6, 1.0));
        var y1 = channel("y", ACCELERATION, dwell(4800, 0.2, 1.0));
        var x2 = channel("x", ACCELERATION, dwell(4800, 0.3, 1.0));
        var y2 = channel("y", ACCELERATION, dwell(4800, 0.5, 1.0));
        RunComparison straight = compare(run("a", gearbox(), x1, y1), run("b", gearbox(), x2, y2));
        RunComparison crossed = compare(run("a", gearbox(), y1, x1), run("b", gearbox(), y2, x2));
        assertThat(crossed).isEqualTo(straight);
        assertThat(straight.channels())
                .extracting(ChannelComparison::channel)
                .as("most 1× before comes first")
                .containsExactly("x", "y");
    }

    @Test
    void dwellsPairNearestFirstAndEachOnce() {
        MeasuredRun before = run("a", dwell(4000, 0.4, 1.0), dwell(4800, 0.6, 1.0));
        MeasuredRun after = run("b", dwell(4730, 0.5, 1.0), dwell(4790, 0.3, 1.0), dwell(5500, 0.7, 1.0));
        RunComparison comparison = compare(before, after);
        assertThat(comparison.channels().get(0).dwells()).hasSize(1);
        assertThat(comparison.channels().get(0).dwells().get(0).engineRpmAfter())
                .isCloseTo(4790, within(1e-6));
        assertThat(comparison.warnings())
                .filteredOn(w -> w.code() == WarningCode.DWELL_NOT_PAIRED)
                .extracting(Phrases.of(Face.COMMAND_LINE)::text)
                .hasSize(3)
                .anyMatch(m -> m.contains("'b' has no dwell left at 4000 engine rpm"))
                .anyMatch(m -> m.contains("'a' has no dwell left at 5500 engine rpm"));
    }

    @Test
    void theSquareLawOfAnUnbalancedMassIsTakenOut() {
        // U·ω²: 1 % faster is 2.01 % more force, from the same imbalance.
        Change change = once(compare(run("a", dwell(4800, 0.6, 1.0)), run("b", dwell(4848, 0.6 * 1.0201, 1.0))));
        assertThat(change.percent().orElseThrow()).isCloseTo(0, within(1e-9));
        Change same = once(compare(run("a", dwell(4800, 0.6, 1.0)), run("b", dwell(4800, 0.6, 1.0))));
        assertThat(change.ciHighPercent().orElseThrow())
                .as("a difference in speed widens the interval")
                .isGreaterThan(same.ciHighPercent().orElseThrow());
    }

    @Test
    void otherSensorPlaceOrDirectionIsRefusedByName() {
        MeasuredRun before = run("a", dwell(4800, 0.6, 1.0));
        MeasuredRun after = run(
                "b",
                Invented.with("accelerometer B", "crankcase", "along", "fixed", Optional.empty()),
                channel("x", ACCELERATION, dwell(4800, 0.3, 1.0)));
        RunComparison comparison = compare(before, after);
        assertThat(comparison.comparable()).isFalse();
        assertThat(comparison.reasons())
                .extracting(r -> r.code().word())
                .containsExactly("sensor-differs", "place-differs", "direction-differs");
        assertThat(Phrases.of(Face.COMMAND_LINE)
                        .text(comparison.reasons().get(1).fact()))
                .contains("gearbox top", "crankcase", "'a'", "'b'");
    }

    @Test
    void capitalsAndBlanksMakeNoOtherSensor() {
        MeasuredRun after = run(
                "b",
                Invented.with(" Accelerometer  a", "Gearbox top", "ACROSS", "fixed", Optional.empty()),
                channel("x", ACCELERATION, dwell(4800, 0.3, 1.0)));
        assertThat(compare(run("a", dwell(4800, 0.6, 1.0)), after).comparable()).isTrue();
    }

    @Test
    void otherGainOrFullScaleIsRefused() {
        var scale = Optional.of(new FullScale(50, ACCELERATION));
        var other = Optional.of(new FullScale(100, ACCELERATION));
        var dwells = channel("x", ACCELERATION, dwell(4800, 0.6, 1.0));
        RunComparison comparison = compare(
                run("a", Invented.with("A", "top", "across", "10 dB", scale), dwells),
                run("b", Invented.with("A", "top", "across", "20 dB", other), dwells));
        assertThat(comparison.reasons())
                .extracting(r -> r.code().word())
                .containsExactly("gain-differs", "full-scale-differs");
    }

    @Test
    void runsStoredByDifferentCodecsAreRefused() {
        MeasuredRun run = Invented.run("a", Invented.gearbox());
        assertThat(compare(Invented.lossy(run, "mp3-128k"), Invented.lossy(run, "mp3-64k"))
                        .reasons())
                .extracting(Warning::code)
                .contains(WarningCode.CODING_DIFFERS);
    }

    @Test
    void lossyAgainstLosslessIsRefused() {
        MeasuredRun run = run("a", dwell(4800, 0.6, 1.0));
        assertThat(compare(run, Invented.lossy(run)).reasons())
                .extracting(Warning::code)
                .containsExactly(WarningCode.LOSSY_AGAINST_LOSSLESS);
        RunComparison both = compare(Invented.lossy(run), Invented.lossy(run));
        assertThat(both.comparable()).isTrue();
        assertThat(both.warnings()).extracting(warning -> warning.code().word()).contains("lossy");
    }

    @Test
    void aSpeedThatIsNotConfirmedIsRefusedInEitherRun() {
        MeasuredRun run = run("a", dwell(4800, 0.6, 1.0));
        for (RunComparison comparison :
                List.of(compare(run, Invented.doubted(run)), compare(Invented.doubted(run), run))) {
            assertThat(comparison.reasons()).extracting(Warning::code).containsExactly(WarningCode.SPEED_NOT_CONFIRMED);
        }
    }

    @Test
    void noDwellAtTheSameSpeedIsRefusedWithTheSpeedsThereAre() {
        RunComparison comparison = compare(run("first", dwell(4000, 0.6, 1.0)), run("second", dwell(5200, 0.6, 1.0)));
        assertThat(comparison.reasons()).hasSize(1);
        assertThat(comparison.reasons().get(0).code()).isEqualTo(WarningCode.NO_DWELL_AT_SAME_RPM);
        assertThat(Phrases.of(Face.COMMAND_LINE)
                        .text(comparison.reasons().get(0).fact()))
                .contains("'first' has 4000 engine rpm", "'second' has 5200 engine rpm");
    }

    @Test
    void aCalibratedRunIsNotComparedWithAnUncalibratedOne() {
        RunComparison comparison = compare(
                run("a", dwell(4800, 0.6, 1.0)),
                run("b", gearbox(), channel("x", SignalUnit.FULL_SCALE, dwell(4800, 0.06, 0.1))));
        assertThat(comparison.reasons()).extracting(Warning::code).containsExactly(WarningCode.CALIBRATION_DIFFERS);
    }

    @Test
    void aMicrophoneComparesOnlyRatiosWhateverItsGain() {
        RunConditions microphone = Invented.with("laptop microphone", "left of nose", null, null, Optional.empty());
        var before = dwell(4800, Map.of(1.0, 0.02, 2.0, 0.01, 3.0, 0.2), Map.of(2.0, 0.3));
        var louder = Invented.scaled(dwell(4800, Map.of(1.0, 0.01, 2.0, 0.01, 3.0, 0.2), Map.of(2.0, 0.3)), 7.3);
        RunComparison comparison = compare(
                run("a", microphone, channel("sound", SignalUnit.FULL_SCALE, before)),
                run("b", microphone, channel("sound", SignalUnit.FULL_SCALE, louder)));
        ChannelComparison channel = comparison.channels().get(0);
        assertThat(channel.basis()).isEqualTo(Basis.GAIN_FREE);
        assertThat(channel.dwells().get(0).changes())
                .extracting(c -> c.figure().kind())
                .doesNotContain(Figure.Kind.AMPLITUDE);
        Change once = Invented.change(comparison, "propeller 1× / blade pass");
        assertThat(once.before().size()).isCloseTo(0.1, within(1e-12));
        assertThat(once.percent().orElseThrow()).isCloseTo(-50, within(1e-9));
        assertThat(once.verdict()).isEqualTo(ChangeVerdict.LOWER);
        assertThat(Invented.change(comparison, "propeller 2× / blade pass").verdict())
                .isEqualTo(ChangeVerdict.NO_CHANGE_SHOWN);
        assertThat(comparison.warnings())
                .extracting(warning -> warning.code().word())
                .contains("gain-free-only");
    }

    @Test
    void anUnknownScaleComparesAbsolutelyOnlyWhereAFixedGainIsNoted() {
        var channel = channel("x", SignalUnit.FULL_SCALE, dwell(4800, 0.06, 0.1));
        RunConditions fixed = Invented.with("A", "top", "across", "2 of 10", Optional.empty());
        RunConditions unknown = Invented.with("A", "top", "across", null, Optional.empty());
        RunConditions automatic = Invented.with("A", "top", "across", "automatic", Optional.empty());
        assertThat(basis(run("a", fixed, channel), run("b", fixed, channel))).isEqualTo(Basis.ABSOLUTE);
        assertThat(basis(run("a", unknown, channel), run("b", fixed, channel))).isEqualTo(Basis.GAIN_FREE);
        assertThat(basis(run("a", automatic, channel), run("b", automatic, channel)))
                .isEqualTo(Basis.GAIN_FREE);
    }

    private static Basis basis(MeasuredRun before, MeasuredRun after) {
        return compare(before, after).channels().get(0).basis();
    }

    @Test
    void withoutBladePassAMicrophoneHasNothingToCompare() {
        RunConditions microphone = Invented.with("microphone", null, null, null, Optional.empty());
        var channel = channel("sound", SignalUnit.FULL_SCALE, dwell(4800, Map.of(1.0, 0.1), Map.of()));
        assertThat(compare(run("a", microphone, channel), run("b", microphone, channel))
                        .reasons())
                .extracting(Warning::code)
                .containsExactly(WarningCode.BLADE_PASS_NOT_DETECTED);
    }

    @Test
    void aRunIsNarrowedToTheWantedSpeed() {
        MeasuredRun run = run("a", dwell(4000, 0.4, 1.0), dwell(4800, 0.6, 1.0));
        assertThat(run.near(4790).dwells()).hasSize(1);
        assertThat(run.near(5500).dwells()).isEmpty();
    }
}
