package evenblade.judge.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import evenblade.base.units.Length;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadingsTextTest {
    @Test
    void fractions_of_an_inch_are_read_by_hub_position() {
        List<List<Length>> readings = ReadingsText.lengths("0 in,1/16 in,3/16 in", 3);
        // 1 in = 25.4 mm by definition.
        assertThat(readings.get(1).get(0).millimetres()).isCloseTo(1.5875, within(1e-12));
        assertThat(readings.get(2).get(0).millimetres()).isCloseTo(4.7625, within(1e-12));
    }

    @Test
    void repeats_follow_after_a_semicolon() {
        List<List<Length>> readings = ReadingsText.lengths("0 mm, 1.5 mm; 0.3 mm, 1.4 mm", 2);
        assertThat(readings.get(0)).hasSize(2);
        assertThat(readings.get(1).get(1).millimetres()).isCloseTo(1.4, within(1e-12));
    }

    @Test
    void names_of_the_same_unit_may_differ() {
        assertThat(ReadingsText.lengths("0 in, 1/8 inch, 1/8\"", 3)).hasSize(3);
        assertThat(ReadingsText.angles("17.4 deg, 17.5°", 2).get(1).get(0).degrees())
                .isEqualTo(17.5);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "0 in,1/16 in         | 2 in \"0 in,1/16 in\"",
                "0 in,3/0 in,1/8 in   | 3/0",
                "0 in,1/16,1/8 in     | without a unit",
                "0 in,2 mm,1/8 in     | \"2 mm\"",
                "0 mm,0 mm,0 mm;1 mm  | 1 in \"1 mm\"",
                "0,5 mm,1,5 mm,2 mm   | comma in a decimal",
                "0,5 mm;1,5 mm;2 mm   | comma in a decimal",
                "a mm,0 mm,0 mm       | \"a mm\"",
                "0 mm,,0 mm           | nothing",
                "0 kg,0 kg,0 kg       | unknown unit"
            })
    void faulty_readings_are_refused_with_what_was_found(String text, String found) {
        assertThatThrownBy(() -> ReadingsText.lengths(text, 3))
                .isInstanceOf(BadInput.class)
                .hasMessageStartingWith("reading")
                .hasMessageContaining(found);
    }
}
