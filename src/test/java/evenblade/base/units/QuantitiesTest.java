package evenblade.base.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantitiesTest {
    private static final BadInput.Place PLACE = BadInput.in("--full-scale");

    @ParameterizedTest
    @CsvSource({
        "50 m/s2, 50, METRE_PER_SECOND_SQUARED",
        "50 m/s², 50, METRE_PER_SECOND_SQUARED",
        "50 m/s^2, 50, METRE_PER_SECOND_SQUARED",
        "8 g, 8, STANDARD_GRAVITY",
        "8g, 8, STANDARD_GRAVITY",
        "2 V, 2, VOLT",
        "500 mV, 0.5, VOLT",
        "20 mm/s, 20, MILLIMETRE_PER_SECOND",
        "0.2 in/s, 0.2, INCH_PER_SECOND",
        "1 1/2 V, 1.5, VOLT",
    })
    void aFullScaleIsAValueAndAUnit(String text, double value, SignalUnit unit) {
        assertThat(FullScale.parse(text, PLACE)).isEqualTo(new FullScale(value, unit));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\0',
            value = {
                "50|\"50\" without a unit, expected a full scale such as \"50 m/s2\"",
                "0 g|\"0 g\", expected a full scale above zero",
                "-8 g|\"-8 g\", expected a full scale above zero",
                "8 kg|\"8 kg\" in the unknown unit \"kg\", expected a full scale in m/s2, g, mm/s, m/s, in/s or V",
                "much|\"much\", expected a full scale such as \"50 m/s2\"",
            })
    void whatIsNoFullScaleIsRefused(String text, String complaint) {
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> FullScale.parse(text, PLACE))
                .withMessage("--full-scale: " + complaint);
    }

    @ParameterizedTest
    @CsvSource({
        "m/s2, 1, METRE_PER_SECOND_SQUARED, m/s2",
        "g, 1, STANDARD_GRAVITY, g",
        "mg, 0.001, STANDARD_GRAVITY, 0.001 g",
        "0.01 m/s², 0.01, METRE_PER_SECOND_SQUARED, 0.01 m/s2",
        "0.0000001 V, 1e-7, VOLT, 0.0000001 V",
        "1/4096 g, 0.000244140625, STANDARD_GRAVITY, 0.000244140625 g",
    })
    void aScaleIsWhatAOneStandsForAndIsWrittenToTheLastDigit(
            String text, double value, SignalUnit unit, String written) {
        ValueScale scale = ValueScale.parse(text, PLACE);
        assertThat(scale).isEqualTo(new ValueScale(value, unit));
        assertThat(scale.text()).isEqualTo(written);
        assertThat(ValueScale.parse(scale.text(), PLACE)).isEqualTo(scale);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "3", "0 g", "-1 g", "2 kg"})
    void whatIsNoScaleIsRefused(String text) {
        assertThatExceptionOfType(BadInput.class).isThrownBy(() -> ValueScale.parse(text, PLACE));
    }

    /**
     * One sine of 0.2 in/s peak at 40 Hz and its kin, in other units: exact factors 1 in = 25.4 mm and
     * g = 9.80665 m/s² (by definition); figures computed from them, given to the digits checked. The
     * pair 0.15 in/s = 3.81 mm/s: Electrical Apparatus Service Association, converting vibration units.
     */
    @ParameterizedTest
    @CsvSource({
        "0.2, 40, 5.0800, 0.13019",
        "0.1, 40, 2.5400, 0.06510",
        "0.07, 38.3333333333, 1.7780, 0.04367",
        "0.15, 40, 3.81, 0.09764",
    })
    void aLineKeepsItsSizeFromUnitToUnit(double inchPerSecond, double hz, double mmPerSecond, double g) {
        double metrePerSecond = inchPerSecond * SignalUnit.INCH_PER_SECOND.siFactor();
        assertThat(metrePerSecond / SignalUnit.MILLIMETRE_PER_SECOND.siFactor()).isEqualTo(mmPerSecond, within(1e-9));
        double acceleration = 2 * Math.PI * hz * metrePerSecond;
        assertThat(acceleration / SignalUnit.STANDARD_GRAVITY.siFactor()).isEqualTo(g, within(6e-6));
    }

    @Test
    void massesAndAnglesAreReadInTheUnitsOfTheShop() {
        // 1 lb = 0.45359237 kg exactly, by definition
        assertThat(Mass.parsePositive("1 lb", PLACE).grams()).isEqualTo(453.59237, within(1e-10));
        assertThat(Mass.parsePositive("1/2 oz", PLACE).grams()).isEqualTo(14.17476156, within(1e-8));
        assertThat(Mass.parsePositive("2.1 kg", PLACE).text()).isEqualTo("2.1 kg");
        assertThat(Mass.parsePositive("15 g", PLACE).text()).isEqualTo("15 g");
        assertThat(Angle.parse("17.4°", PLACE).degrees()).isEqualTo(17.4);
        assertThat(Angle.parse("-12 arcmin", PLACE).degrees()).isEqualTo(-0.2);
        assertThat(Angle.parse("0.2 deg", PLACE).text()).isEqualTo("0.2 deg");
    }

    @Test
    void aMassIsAboveZeroAndAnAngleHasAUnit() {
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> Mass.parsePositive("-1 g", PLACE))
                .withMessage("--full-scale: \"-1 g\", expected a mass above zero");
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> Angle.parse("17.4", PLACE))
                .withMessage("--full-scale: \"17.4\" without a unit, expected an angle such as \"0.2 deg\"");
    }
}
