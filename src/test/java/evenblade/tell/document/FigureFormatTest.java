package evenblade.tell.document;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Measure;
import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.measure.orders.Level;
import java.time.Instant;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayName("Figures as people read them")
class FigureFormatTest {
    private static final FigureFormat METRIC = new FigureFormat(LengthUnit.MILLIMETRE);
    private static final FigureFormat INCH = new FigureFormat(LengthUnit.INCH);

    @ParameterizedTest
    @CsvSource({"4799.74,4800", "0.012345,0.0123", "0.00001234,0.0000123", "1.2e-7,1.20e−07", "-1.5,−1.50", "0,0"})
    @DisplayName("have three figures where nothing is known of their error")
    void plain(double value, String shown) {
        assertThat(FigureFormat.plain(value)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({
        "1.23456,0.0123,1.235 ± 0.012",
        "0.0028,0.00174,0.0028 ± 0.0017",
        "5309.907,27,5310 ± 27",
        "2,0,2.00",
        "1.2e-8,3e-9,1.20e−08 ± 3.0e−09"
    })
    @DisplayName("have two figures of their error")
    void withError(double value, double error, String shown) {
        assertThat(FigureFormat.withError(value, error)).isEqualTo(shown);
    }

    @Test
    @DisplayName("that round to zero have no sign")
    void noSignedZero() {
        assertThat(FigureFormat.fixed(-0.001, 2)).isEqualTo("0.00");
        assertThat(FigureFormat.offset(-0.001, 2)).isEqualTo("0.00");
        assertThat(FigureFormat.offset(-1.3, 2)).isEqualTo("−1.30");
        assertThat(FigureFormat.offset(1.3, 2)).isEqualTo("+1.30");
        assertThat(FigureFormat.percent(-0.01)).isEqualTo("0.0 %");
        assertThat(METRIC.both(-0.001)).startsWith("0.00 mm");
    }

    @Test
    @DisplayName("of a line in the noise say what it lies below, never less than twice its own error")
    void below() {
        assertThat(FigureFormat.level(measured(0.0005, 0.0004, 0, 0.00174, false)))
                .isEqualTo("below 0.0017");
        assertThat(FigureFormat.level(measured(0.0001, 0.0009, 0, 0.00174, false)))
                .isEqualTo("below 0.0018");
        assertThat(FigureFormat.level(measured(0.6562, 0.0036, 0.6491, 0.6633, true)))
                .isEqualTo("0.6562 ± 0.0071");
    }

    private static Level.Measured measured(double amplitude, double error, double low, double high, boolean detected) {
        return new Level.Measured(
                amplitude, error, low, high, OptionalDouble.empty(), detected, Level.Estimator.COHERENT);
    }

    @Test
    @DisplayName("of a range have the decimals that its width leaves")
    void ranges() {
        assertThat(FigureFormat.range(0.5973, 0.6116)).isEqualTo("0.5973 to 0.6116");
        assertThat(FigureFormat.range(0.5, Double.POSITIVE_INFINITY)).isEqualTo("0.500 or more");
        assertThat(FigureFormat.withRange(0.6044, 0.57, 0.64)).isEqualTo("0.604 (0.570 to 0.640)");
    }

    @Test
    @DisplayName("of a change keep a decimal where it matters, and an open end is said in words")
    void changes() {
        assertThat(FigureFormat.percent(4.24)).isEqualTo("+4.2 %");
        assertThat(FigureFormat.percent(-48.3)).isEqualTo("−48 %");
        assertThat(FigureFormat.percent(-95.5)).isEqualTo("−95.5 %");
        assertThat(FigureFormat.percent(9.96)).isEqualTo("+10 %");
        assertThat(FigureFormat.change(-12)).isEqualTo("12 %");
        assertThat(FigureFormat.change(1100)).isEqualTo("12 times");
        assertThat(FigureFormat.percentRange(OptionalDouble.of(-100), OptionalDouble.of(-40)))
                .isEqualTo("−40 % or lower");
        assertThat(FigureFormat.percentRange(OptionalDouble.of(20), OptionalDouble.empty()))
                .isEqualTo("+20 % or more");
        assertThat(FigureFormat.percentRange(OptionalDouble.empty(), OptionalDouble.empty()))
                .isEqualTo("not known");
    }

    @Test
    @DisplayName("of lengths stand in the reader's unit first; 3/16 in is 4.7625 mm by definition of the inch")
    void lengths() {
        assertThat(METRIC.both(4.7625)).isEqualTo("4.76 mm (3/16 in)");
        assertThat(INCH.both(4.7625)).isEqualTo("3/16 in (4.76 mm)");
        assertThat(INCH.first(2.54)).isEqualTo("0.100 in");
        assertThat(METRIC.first(2.54)).isEqualTo("2.54 mm");
        assertThat(METRIC.large(Length.ofMetres(1.7))).isEqualTo("1.700 m (66.93 in)");
        assertThat(INCH.offset(-2.54)).isEqualTo("−0.100");
    }

    @Test
    @DisplayName("of time are to the minute, in UTC where no clock was noted")
    void times() {
        assertThat(FigureFormat.minute(Instant.parse("2026-03-02T09:20:40Z"))).isEqualTo("2 Mar 2026, 09:20");
    }

    @Test
    void velocitiesAreInInchesWhereLengthsAre() {
        // 0.2 in/s is 5.08 mm/s exactly.
        assertThat(INCH.text(Measure.VELOCITY.of(0.00508), 1)).isEqualTo("0.200 in/s");
        assertThat(new FigureFormat(LengthUnit.MILLIMETRE).text(Measure.VELOCITY.of(0.00508), 1))
                .isEqualTo("5.1 mm/s");
        assertThat(new VelocityFigures(INCH).plain(25.4)).isEqualTo("1.00");
        assertThat(new VelocityFigures(INCH).below(2.54)).isEqualTo("below 0.10");
    }

    @Test
    void aLengthBelowAThousandthOfAnInchIsNotShownAsNone() {
        assertThat(INCH.both(0.0127)).isEqualTo("0.0005 in (0.01 mm)");
        assertThat(INCH.both(0)).isEqualTo("0 in (0.00 mm)");
    }
}
