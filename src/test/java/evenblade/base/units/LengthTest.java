package evenblade.base.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LengthTest {
    private static final BadInput.Place PLACE = BadInput.in("--readings");

    /** 1 in = 25.4 mm exactly, by definition; the rest computed from it. */
    @ParameterizedTest
    @CsvSource({
        "1.70 m, 1700",
        "68 in, 1727.2",
        "3/16 in, 4.7625",
        "1 3/16 in, 30.1625",
        "1-3/16 in, 30.1625",
        "1/16 in, 1.5875",
        "1/8 in, 3.175",
        "0.125 in, 3.175",
        "0.2 mm, 0.2",
        "0.2mm, 0.2",
        ".5 mm, 0.5",
        "85 cm, 850",
        "50 µm, 0.05",
        "1 ft, 304.8",
        "0 in, 0",
        "-0.020 in, -0.508",
        "−1/16 in, -1.5875",
        "'3/4\"', 19.05",
        "1e3 mm, 1000",
    })
    void lengthsAreReadAsTheTradeWritesThem(String text, double millimetres) {
        assertThat(Length.parse(text, PLACE).millimetres()).isEqualTo(millimetres, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\0',
            value = {
                "3/0 in|\"3/0 in\", a fraction with 0 below the line, expected a fraction such as 3/16",
                "1.70|\"1.70\" without a unit, expected a length such as \"3/16 in\"",
                "3/16|\"3/16\" without a unit, expected a length such as \"3/16 in\"",
                "5 furlong|\"5 furlong\" in the unknown unit \"furlong\", expected a length in m, cm, mm, µm, in or ft",
                "5 MM|\"5 MM\" in the unknown unit \"MM\", expected a length in m, cm, mm, µm, in or ft",
                "in|\"in\", expected a length such as \"3/16 in\"",
                "1e400 m|\"1e400 m\", expected a length such as \"3/16 in\"",
                "1e300 mm|\"1e300 mm\", expected a length such as \"3/16 in\"",
                "-1e-300 mm|\"-1e-300 mm\", expected a length such as \"3/16 in\"",
                "NaN m|\"NaN m\", expected a length such as \"3/16 in\"",
                "3/-4 in|\"3/-4 in\", expected a length such as \"3/16 in\"",
            })
    void whatIsNoLengthIsRefused(String text, String complaint) {
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> Length.parse(text, PLACE))
                .withMessage("--readings: " + complaint);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1,70 m", "1 2 in", "1/2/3 in", "--1 mm", "1. 5 mm", "1 1.5 in"})
    void anythingDoubtfulIsRefusedRatherThanGuessed(String text) {
        assertThatExceptionOfType(BadInput.class).isThrownBy(() -> Length.parse(text, PLACE));
    }

    @Test
    void anEmptyTextIsCalledNothing() {
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> Length.parse("  ", PLACE))
                .withMessage("--readings: nothing, expected a length such as \"3/16 in\"");
    }

    @Test
    void aDiameterIsNeitherZeroNorNegative() {
        for (String text : new String[] {"0 m", "-1.7 m"}) {
            assertThatExceptionOfType(BadInput.class)
                    .isThrownBy(() -> Length.parsePositive(text, PLACE))
                    .withMessage("--readings: \"" + text + "\", expected a length above zero");
        }
    }

    @Test
    void whatIsWrittenReadsBackAsTheSameLength() {
        Random random = new Random(7);
        for (int i = 0; i < 500; i++) {
            String text = random.nextInt(4) + " " + random.nextInt(64) + "/" + (1 + random.nextInt(64)) + " in";
            Length length = Length.parse(text, PLACE);
            assertThat(Length.parse(length.text(), PLACE)).as(text).isEqualTo(length);
            Length decimal = Length.parse(random.nextInt(4_000_000) / 1000.0 + " mm", PLACE);
            assertThat(Length.parse(decimal.text(), PLACE)).isEqualTo(decimal);
        }
    }

    @Test
    void everySixtyFourthReadsBackFromItsInchText() {
        for (int parts = -200; parts <= 200; parts++) {
            Length length = Length.ofInches(parts / 64.0);
            assertThat(Length.parse(length.inchText(), PLACE).metres())
                    .as(length.inchText())
                    .isEqualTo(length.metres(), within(1e-15));
        }
    }

    @Test
    void inchesAreWrittenAsFractionsWhereARuleShowsThem() {
        assertThat(Length.ofMillimetres(4.7625).inchText()).isEqualTo("3/16 in");
        assertThat(Length.ofMillimetres(30.1625).inchText()).isEqualTo("1 3/16 in");
        assertThat(Length.ofMillimetres(-1.5875).inchText()).isEqualTo("-1/16 in");
        assertThat(Length.ofMillimetres(2.794).inchText()).isEqualTo("0.110 in");
        assertThat(Length.ofMetres(0).inchText()).isEqualTo("0 in");
        assertThat(Length.ofMillimetres(50.8).inchText()).isEqualTo("2 in");
    }
}
