package evenblade.judge.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must not change the answer: where 0° lies, the unit of the line, the order of the runs. Invented jobs. */
class BalancePropertiesTest {
    private static BalanceAnswer answer(List<WeightedReading> runs) {
        return Balancing.balance(Runs.request(runs));
    }

    private static void assertSame(BalanceAnswer one, BalanceAnswer other, double turnDeg, double unit) {
        assertThat(other.refused()).isEqualTo(one.refused());
        one.advice().ifPresent(a -> {
            Correction c = a.correction();
            BalanceAnswer.Advice b = other.advice().orElseThrow();
            assertThat(b.correction().value().gmm())
                    .isCloseTo(c.value().gmm(), within(1e-6 * c.value().gmm()));
            assertThat(Correction.turn(
                            c.value().angleDeg() + turnDeg,
                            b.correction().value().angleDeg()))
                    .isCloseTo(0, within(1e-6));
            assertThat(b.correction().lowGmm())
                    .isCloseTo(c.lowGmm(), within(1e-3 * c.value().gmm()));
            assertThat(b.correction().highGmm())
                    .isCloseTo(c.highGmm(), within(1e-3 * c.value().gmm()));
            assertThat(b.residual().amplitude())
                    .isCloseTo(
                            unit * a.residual().amplitude(),
                            within(1e-3 * unit * a.residual().amplitude()));
        });
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void originOfAnglesUnitAndOrderOfRunsDontMatter(boolean phase) {
        Random random = new Random(71);
        for (int job = 0; job < 5; job++) {
            List<WeightedReading> runs = new InventedMachine(random).job(0.7, phase, 2, 0, 120, 240);
            List<WeightedReading> turned = runs.stream()
                    .map(r -> new WeightedReading(
                            r.amplitude(), r.phaseDeg(), r.standardError(), turned(r.weights(), 77)))
                    .toList();
            List<WeightedReading> scaled = runs.stream()
                    .map(r -> new WeightedReading(
                            1000 * r.amplitude(), r.phaseDeg(), 1000 * r.standardError(), r.weights()))
                    .toList();
            List<WeightedReading> mixed = new ArrayList<>(runs);
            Collections.shuffle(mixed, random);

            BalanceAnswer plain = answer(runs);
            assertSame(plain, answer(turned), 77, 1);
            assertSame(plain, answer(scaled), 0, 1000);
            assertSame(plain, answer(mixed), 0, 1);
            List<WeightedReading> phased = runs.stream()
                    .map(r -> new WeightedReading(r.amplitude(), add(r.phaseDeg(), 33), r.standardError(), r.weights()))
                    .toList();
            assertSame(plain, answer(phased), 0, 1);
        }
    }

    private static OptionalDouble add(OptionalDouble degrees, double more) {
        return degrees.isPresent() ? OptionalDouble.of(degrees.getAsDouble() + more) : degrees;
    }

    private static List<Weight> turned(List<Weight> weights, double degrees) {
        return weights.stream()
                .map(w -> new Weight(w.massG(), w.radiusMm(), w.angleDeg() + degrees, w.massErrorG()))
                .toList();
    }
}
