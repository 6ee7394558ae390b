package evenblade.machine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Engine.Cycle;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Reduction;
import evenblade.machine.plan.PlannedDwell.ClosePair;
import evenblade.machine.plan.PlannedDwell.PlannedLine;
import evenblade.machine.plan.RunCard.CardFact;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PlannerTest {
    private static final OptionalDouble NO_SENSOR = OptionalDouble.empty();

    private static Installation with(Engine engine, Reduction reduction, int blades) {
        return new Installation(
                Optional.empty(),
                engine,
                reduction,
                new Installation.Propeller(blades, Optional.empty(), Optional.empty()),
                List.of());
    }

    private static Engine engine(Cycle cycle, int cylinders) {
        return new Engine(cycle, cylinders, OptionalDouble.of(1600), OptionalDouble.of(5800));
    }

    private static Installation trainer() {
        return with(
                engine(Cycle.FOUR_STROKE, 4), Reduction.ofTeeth(Reduction.Kind.GEAR, new Reduction.Teeth(21, 51)), 3);
    }

    private static List<List<String>> coincident(Installation installation) {
        return Planner.plan(installation, List.of(), NO_SENSOR).coincident().stream()
                .map(Place::names)
                .toList();
    }

    @Test
    void threeBladesBehindThreeToOnePutBladePassOnCrankOnce() {
        assertThat(coincident(with(engine(Cycle.TWO_STROKE, 2), Reduction.ofRatio(Reduction.Kind.GEAR, 3), 3)))
                .containsExactly(List.of("blade pass", "crank 1×"), List.of("2× blade pass", "firing"));
    }

    @Test
    void aRatioUpsideDownIsTold() {
        Reduction right = Reduction.ofTeeth(Reduction.Kind.GEAR, new Reduction.Teeth(21, 51));
        Reduction upsideDown = Reduction.ofTeeth(Reduction.Kind.GEAR, new Reduction.Teeth(51, 21));
        Engine four = engine(Cycle.FOUR_STROKE, 4);

        assertThat(Planner.plan(with(four, upsideDown, 3), List.of(), NO_SENSOR).warnings())
                .extracting(Warning::code)
                .contains(WarningCode.PROPELLER_FASTER_THAN_ENGINE);
        for (Reduction each : List.of(right, Reduction.direct())) {
            assertThat(Planner.plan(with(four, each, 3), List.of(), NO_SENSOR).warnings())
                    .extracting(Warning::code)
                    .doesNotContain(WarningCode.PROPELLER_FASTER_THAN_ENGINE);
        }
    }

    @Test
    void twoBladesBehindTwoToOneDoLikewise() {
        assertThat(coincident(with(engine(Cycle.TWO_STROKE, 3), Reduction.ofRatio(Reduction.Kind.GEAR, 2), 2)))
                .contains(List.of("blade pass", "crank 1×"));
    }

    @Test
    void directDriveWithTwoBladesPutsBladePassOnTheFiringOfAFourStrokeFour() {
        assertThat(coincident(with(engine(Cycle.FOUR_STROKE, 4), Reduction.direct(), 2)))
                .contains(List.of("propeller 1×", "crank 1×"), List.of("blade pass", "firing"));
    }

    @Test
    void unevenTeethCoincideNowhere() {
        assertThat(coincident(trainer())).isEmpty();
    }

    /** 6 × 34.3137 Hz against 2½ × 83.3333 Hz at 5000 rpm: 2.4510 Hz apart, 1.5/2.4510 = 0.612 s. */
    @Test
    void linesThatAreNearAreToldWithTheRunThatSplitsThem() {
        PlannedDwell dwell =
                Planner.plan(trainer(), List.of(5000.0), NO_SENSOR).dwells().get(0);
        assertThat(dwell.close()).singleElement().satisfies(pair -> {
            assertThat(pair.lower().names()).containsExactly("2× blade pass");
            assertThat(pair.upper().names()).containsExactly("crank 2½×");
            assertThat(pair.apartHz()).isEqualTo(2.4510, within(5e-5));
            assertThat(pair.splitAfterS()).isEqualTo(0.612, within(5e-4));
        });
    }

    /** Ratio 2.97: blade pass 3 × 28.058 Hz, crank 83.333 Hz: 0.8418 Hz apart, 1.78 s; twice that 0.89 s. */
    @Test
    void aRatioNextToTheBladeCountNeedsALongerRunAtLowerSpeed() {
        Installation near = with(engine(Cycle.TWO_STROKE, 2), Reduction.ofRatio(Reduction.Kind.GEAR, 2.97), 3);
        RunPlan plan = Planner.plan(near, List.of(2500.0, 5000.0), NO_SENSOR);
        ClosePair slow = plan.dwells().get(0).close().get(0);
        ClosePair fast = plan.dwells().get(1).close().get(0);
        assertThat(fast.apartHz()).isEqualTo(0.8418, within(5e-5));
        assertThat(fast.splitAfterS()).isEqualTo(1.782, within(1e-3));
        assertThat(slow.splitAfterS()).isEqualTo(2 * fast.splitAfterS(), within(1e-9));
    }

    /** Ratio 2.999 at 5000 rpm: 0.0278 Hz apart, 54 s; ratio 2.9999: 540 s, which nobody holds. */
    @Test
    void theDwellIsLongEnoughToSplitWhatCanBeSplit() {
        Installation near = with(engine(Cycle.TWO_STROKE, 2), Reduction.ofRatio(Reduction.Kind.GEAR, 2.999), 3);
        assertThat(Planner.plan(near, List.of(5000.0), NO_SENSOR)
                        .dwells()
                        .get(0)
                        .lengthS())
                .isEqualTo(55);
        Installation nearer = with(engine(Cycle.TWO_STROKE, 2), Reduction.ofRatio(Reduction.Kind.GEAR, 2.9999), 3);
        RunPlan plan = Planner.plan(nearer, List.of(5000.0), NO_SENSOR);
        assertThat(plan.warnings()).extracting(warning -> warning.code().word()).contains("too-close-to-split");
        assertThat(plan.dwells().get(0).lengthS()).isLessThanOrEqualTo(Planner.LONGEST_DWELL_S);
    }

    /** |f − round(f/fs)·fs| by hand: 102.94 Hz at 100 Hz shows at 2.94, 166.67 at 33.33, 1750 at 416 at 86. */
    @Test
    void whatASlowSensorMissesFoldsDown() {
        assertThat(Planner.foldedHz(102.941176, 100)).isEqualTo(2.941176, within(1e-9));
        assertThat(Planner.foldedHz(500.0 / 3, 100)).isEqualTo(100.0 / 3, within(1e-9));
        assertThat(Planner.foldedHz(1750, 416)).isEqualTo(86, within(1e-9));
        RunPlan plan = Planner.plan(trainer(), List.of(5000.0), OptionalDouble.of(100));
        assertThat(plan.usableUpToHz()).hasValue(45);
        for (PlannedLine line : plan.dwells().get(0).lines()) {
            assertThat(line.fold().isPresent()).as(line.line().name()).isEqualTo(line.frequencyHz() > 45);
        }
        PlannedLine firing = plan.dwells().get(0).lines().stream()
                .filter(line -> line.line().name().equals("firing"))
                .findFirst()
                .orElseThrow();
        assertThat(firing.fold().orElseThrow().toHz()).isEqualTo(100.0 / 3, within(1e-9));
        // 33.33 Hz is 2.9 % from propeller 1× at 34.31 Hz: further than the speed wanders
        assertThat(firing.fold().orElseThrow().near()).isEmpty();
    }

    @Test
    void aFoldedLineOnTopOfARealOneIsNamed() {
        // direct drive at 3000 rpm: 50 Hz, firing 100 Hz; at 150 samples per second firing folds onto 50 Hz
        Installation direct = with(engine(Cycle.FOUR_STROKE, 4), Reduction.direct(), 3);
        RunPlan plan = Planner.plan(direct, List.of(3000.0), OptionalDouble.of(150));
        PlannedLine firing = plan.dwells().get(0).lines().stream()
                .filter(line -> line.line().name().equals("firing"))
                .findFirst()
                .orElseThrow();
        assertThat(firing.fold().orElseThrow().near()).containsExactly("propeller 1×", "crank 1×");
    }

    @Test
    void leftToItselfThePlanBeginsWhereAPullCanBeSeenAndEndsAtNinetyPercent() {
        assertThat(Planner.plan(trainer(), List.of(), NO_SENSOR).dwells())
                .extracting(PlannedDwell::engineRpm)
                .containsExactly(2350.0, 3050.0, 3750.0, 4500.0, 5200.0);
    }

    @Test
    void withoutAnySpeedOrdersAreGivenWithoutFrequencies() {
        Engine bare = new Engine(Cycle.TWO_STROKE, 2, OptionalDouble.empty(), OptionalDouble.empty());
        RunPlan plan = Planner.plan(with(bare, Reduction.direct(), 3), List.of(), NO_SENSOR);
        assertThat(plan.dwells()).isEmpty();
        assertThat(plan.coincident()).isNotEmpty();
        assertThat(plan.warnings()).extracting(warning -> warning.code().word()).containsExactly("no-speed");
    }

    @Test
    void aSpeedTheEngineDoesNotRunAtIsRefused() {
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> Planner.plan(trainer(), List.of(6000.0), NO_SENSOR))
                .withMessage("engine speed: 6000 rpm, expected an engine speed from 1600 (idle) to 5800 rpm"
                        + " (the stated maximum)");
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> Planner.plan(trainer(), List.of(Double.NaN), NO_SENSOR));
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> Planner.plan(trainer(), List.of(), OptionalDouble.of(0)))
                .withMessage("sample rate: 0.0 Hz, expected a rate above zero");
    }

    @Test
    void theCardCautionsAndDefersToMakersAndLocalRules() {
        RunCard card = Planner.plan(trainer(), List.of(), NO_SENSOR).card();
        assertThat(card.cautions())
                .extracting(Fact::code)
                .contains(CardFact.IGNITION_OFF, CardFact.KEEP_CLEAR, CardFact.MAKERS_LIMITS, CardFact.LICENSED_PERSON);
        assertThat(card.steps()).extracting(Fact::code).contains(CardFact.HOLD_TABLE);
    }

    @Test
    void theCardOfAnElectricDriveSpeaksOfTheBattery() {
        Installation electric = with(engine(Cycle.ELECTRIC, 0), Reduction.direct(), 2);
        assertThat(Planner.plan(electric, List.of(), NO_SENSOR)
                        .card()
                        .cautions()
                        .get(0)
                        .code())
                .isEqualTo(CardFact.CONTROLLER_OFF);
    }
}
