package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Fact;
import evenblade.measure.orders.Level;
import evenblade.measure.speed.SpeedFact;
import evenblade.measure.speed.SpeedResult;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class OrderRowsTest {
    @Test
    void linesThatLieOnEachOtherBecomeOneRowNamedAfterBoth() {
        List<OrderBar> bars = OrderRows.bars(InventedRun.coinciding().orders());
        // Ratio 3 with three blades puts blade pass on crank 1x; two-stroke twin fires at crank 2x = propeller 6x.
        assertThat(bars)
                .filteredOn(b -> b.kind() == MarkKind.BOTH)
                .extracting(OrderBar::name)
                .containsExactly("blade pass = crank 1×", "2× blade pass = firing");
        assertThat(bars).extracting(OrderBar::frequencyHz).doesNotHaveDuplicates();
        assertThat(bars).allMatch(b -> b.notToldApartFrom().isEmpty());
    }

    @Test
    void aLineBeyondTheRangeIsMarkedWithoutAnAmplitude() {
        List<OrderMark> marks = OrderRows.marks(InventedRun.coinciding().orders());
        List<OrderBar> bars = OrderRows.bars(InventedRun.coinciding().orders());
        for (int i = 0; i < bars.size(); i++) {
            boolean measured = bars.get(i).level() instanceof Level.Measured;
            assertThat(marks.get(i).amplitude().isPresent()).isEqualTo(measured);
        }
        assertThat(bars).anyMatch(b -> b.level() instanceof Level.BeyondRange);
    }

    @Test
    void aSteadyLineThatNoOrderExplainsIsMarkedByItsFrequency() {
        assertThat(OrderRows.marks(InventedRun.usual().orders()))
                .filteredOn(m -> m.kind() == MarkKind.OTHER)
                .extracting(OrderMark::name)
                .containsExactly("50.0 Hz");
    }

    @Test
    void theCaptionSaysWhenTheSpeedIsNotConfirmed() {
        assertThat(Caption.speedWords(speed(false))).contains("NOT confirmed");
        assertThat(Caption.speedWords(speed(true))).isEqualTo("speed confirmed by the signal");
    }

    private static SpeedResult speed(boolean confirmed) {
        return new SpeedResult(
                SpeedResult.Origin.SIGNAL,
                confirmed,
                confirmed ? Optional.empty() : Optional.of(Fact.of(SpeedFact.NO_LINES)),
                null,
                Optional.of(InventedRun.usual().dwell()),
                List.of(),
                0,
                List.of());
    }
}
