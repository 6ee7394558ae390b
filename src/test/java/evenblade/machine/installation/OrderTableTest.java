package evenblade.machine.installation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.machine.installation.OrderLine.Role;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrderTableTest {
    private static Installation with(Engine.Cycle cycle, int cylinders, Reduction reduction, int blades) {
        return new Installation(
                Optional.empty(),
                new Engine(cycle, cylinders, OptionalDouble.empty(), OptionalDouble.empty()),
                reduction,
                new Installation.Propeller(blades, Optional.empty(), Optional.empty()),
                List.of());
    }

    private static double hz(Installation installation, String name, double engineRpm) {
        OrderLine line = installation.orders().lines().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
        return line.propellerOrder() * engineRpm / installation.reduction().ratio() / 60;
    }

    /**
     * Firings per second, rpm/60·N/2 for a four-stroke and rpm/60·N for a two-stroke: 75 and 100 Hz for
     * three and four cylinders restated from published tables, the others computed from the definition.
     */
    @ParameterizedTest
    @CsvSource({
        "FOUR_STROKE, 3, 3000, 75",
        "FOUR_STROKE, 4, 3000, 100",
        "FOUR_STROKE, 6, 3000, 150",
        "TWO_STROKE, 2, 3000, 100"
    })
    void firingFollowsCylindersAndCycle(Engine.Cycle cycle, int cylinders, double rpm, double firingHz) {
        Installation installation = with(cycle, cylinders, Reduction.ofRatio(Reduction.Kind.GEAR, 2.58), 3);
        assertThat(hz(installation, "firing", rpm)).isEqualTo(firingHz, within(1e-9));
    }

    /** Teeth 51/21 at 5000 engine rpm, three blades, four-stroke four: computed from the definition. */
    @Test
    void teethGiveTheExactPlaceOfEveryLine() {
        Reduction.Teeth teeth = new Reduction.Teeth(21, 51);
        Installation installation = with(Engine.Cycle.FOUR_STROKE, 4, Reduction.ofTeeth(Reduction.Kind.GEAR, teeth), 3);
        assertThat(60 * hz(installation, "propeller 1×", 5000)).isEqualTo(2058.8235, within(5e-5));
        assertThat(hz(installation, "propeller 1×", 5000)).isEqualTo(34.313725, within(5e-7));
        assertThat(hz(installation, "blade pass", 5000)).isEqualTo(102.941176, within(5e-7));
        assertThat(hz(installation, "firing", 5000)).isEqualTo(166.666667, within(5e-7));
        assertThat(hz(installation, "gear mesh", 5000)).isEqualTo(1750, within(1e-9));
    }

    /** gcd(51, 21) = 3: computed. A pair without common divisor takes as many turns as it has teeth. */
    @Test
    void theSameTeethMeetAgainAfterTheCommonCycle() {
        Reduction.Teeth common = new Reduction.Teeth(21, 51);
        assertThat(common.engineRevolutionsPerRepeat()).isEqualTo(17);
        assertThat(common.propellerRevolutionsPerRepeat()).isEqualTo(7);
        Reduction.Teeth hunting = new Reduction.Teeth(19, 49);
        assertThat(hunting.engineRevolutionsPerRepeat()).isEqualTo(49);
        assertThat(hunting.propellerRevolutionsPerRepeat()).isEqualTo(19);
    }

    /** 51/21 = 2.428571, 50/22 = 2.272727, 49/19 = 2.578947; 2.43 for 51/21 is 0.059 % off (computed). */
    @Test
    void aRoundedRatioIsNotTheRatioOfTheTeeth() {
        assertThat(new Reduction.Teeth(21, 51).ratio()).isEqualTo(2.428571, within(5e-7));
        assertThat(new Reduction.Teeth(22, 50).ratio()).isEqualTo(2.272727, within(5e-7));
        assertThat(new Reduction.Teeth(19, 49).ratio()).isEqualTo(2.578947, within(5e-7));
        assertThat(100 * (2.43 / new Reduction.Teeth(21, 51).ratio() - 1)).isEqualTo(0.059, within(5e-4));
    }

    @Test
    void aBeltIsNotCalledGears() {
        Reduction belt = Reduction.ofTeeth(Reduction.Kind.BELT, new Reduction.Teeth(20, 50));
        assertThat(with(Engine.Cycle.TWO_STROKE, 2, belt, 3).orders().lines())
                .extracting(OrderLine::name)
                .contains("belt teeth")
                .doesNotContain("gear mesh");
    }

    @Test
    void anElectricMotorHasNoFiringAndNoHalfOrders() {
        assertThat(with(Engine.Cycle.ELECTRIC, 0, Reduction.direct(), 11)
                        .orders()
                        .lines())
                .extracting(OrderLine::role)
                .doesNotContain(Role.FIRING, Role.HALF_CRANK);
    }

    @Test
    void everyInstallationListsWhatIsAlwaysListed() {
        for (Engine.Cycle cycle : Engine.Cycle.values()) {
            for (int cylinders = 1; cylinders <= Engine.MOST_CYLINDERS; cylinders++) {
                for (int blades = 2; blades <= 12; blades++) {
                    Installation installation =
                            with(cycle, cylinders, Reduction.ofRatio(Reduction.Kind.GEAR, 2.43), blades);
                    List<OrderLine> lines = installation.orders().lines();
                    for (int k = 1; k <= 2 * blades; k++) {
                        assertThat(has(lines, Shaft.PROPELLER, k)).isTrue();
                    }
                    assertThat(has(lines, Shaft.CRANK, 1)).isTrue();
                    assertThat(has(lines, Shaft.CRANK, 2)).isTrue();
                    assertThat(has(lines, Shaft.CRANK, 0.5)).isEqualTo(cycle == Engine.Cycle.FOUR_STROKE);
                    double firing = installation.engine().firingOrder();
                    assertThat(firing == 0 || has(lines, Shaft.CRANK, firing)).isTrue();
                    assertThat(new HashSet<>(lines.stream().map(OrderLine::name).toList()))
                            .as("names are unique")
                            .hasSameSizeAs(lines);
                }
            }
        }
    }

    private static boolean has(List<OrderLine> lines, Shaft shaft, double order) {
        return lines.stream().anyMatch(line -> line.of() == shaft && line.order() == order);
    }

    /** Firing of four cylinders is order 2 of the crank: at a ratio of 1½ it lies on the pass of three blades, to a millionth. */
    @ParameterizedTest
    @CsvSource({"0, true", "0.8e-6, true", "-0.8e-6, true", "1.3e-6, false", "-1.3e-6, false", "0.01, false"})
    void linesCoincideToAMillionthOfTheirOrder(double off, boolean coincide) {
        Installation machine = with(
                Engine.Cycle.FOUR_STROKE, 4, new Reduction(Reduction.Kind.BELT, 1.5 * (1 + off), Optional.empty()), 3);
        OrderLine firing = named(machine, "firing");
        OrderLine pass = named(machine, "blade pass");
        assertThat(OrderTable.coincide(firing, pass)).isEqualTo(coincide);
        assertThat(OrderTable.coincide(pass, firing)).isEqualTo(coincide);
    }

    private static OrderLine named(Installation machine, String name) {
        return machine.orders().lines().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
