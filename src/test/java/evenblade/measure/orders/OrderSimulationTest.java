package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.measure.speed.OrderTrial;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Amplitudes over many trials; the figures it prints are kept in docs/figures.md. */
@Tag("long")
class OrderSimulationTest {
    private static final int PER_MACHINE = 40;

    @ParameterizedTest
    @CsvSource({"-5, 0", "-5, 0.01", "5, 0.01", "20, 0.01"})
    void intervalsHoldTheTruthAndErrorsAreSmall(double aboveNoiseDb, double wander) {
        List<OrderTrial.Outcome> all = new ArrayList<>();
        for (int machine = 0; machine < OrderTrial.machines(); machine++) {
            for (int seed = 0; seed < PER_MACHINE; seed++) {
                all.addAll(OrderTrial.of(machine, aboveNoiseDb, wander, 20, 5000L + seed));
            }
        }
        double held = all.stream().filter(OrderTrial.Outcome::held).count() / (double) all.size();
        List<OrderTrial.Outcome> strong =
                all.stream().filter(OrderTrial.Outcome::strong).toList();
        double overBound = Math.sqrt(strong.stream()
                .mapToDouble(o -> Math.pow(o.error() / o.bound(), 2))
                .average()
                .orElseThrow());
        double beyond = strong.stream().filter(OrderTrial.Outcome::beyond).count() / (double) strong.size();
        long falsely = all.stream().filter(OrderTrial.Outcome::falselyDetected).count();
        long absent = all.stream().filter(o -> o.truth() == 0).count();
        System.out.println(String.format(
                Locale.ROOT,
                "%.0f dB, wander %.0f %%: %d lines, interval holds %.4f, RMS error over bound %.3f, "
                        + "beyond 1 %% + 2 se %.4f, falsely detected %d of %d",
                aboveNoiseDb,
                100 * wander,
                all.size(),
                held,
                overBound,
                beyond,
                falsely,
                absent));
        assertThat(held).isBetween(0.93, 0.97);
        assertThat(beyond).isLessThan(0.05);
        assertThat(falsely).isLessThanOrEqualTo(absent / 50);
    }
}
