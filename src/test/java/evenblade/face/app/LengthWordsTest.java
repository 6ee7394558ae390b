package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.units.LengthUnit;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayName("Lengths in sentences")
class LengthWordsTest {
    /** One inch is 25.4 mm by definition; each figure is the number over 25.4. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "6.40 mm largest minus smallest|0.252 in = 6.40 mm largest minus smallest",
                "tip marks spread 6.4 mm: beyond|tip marks spread 0.252 in = 6.4 mm: beyond",
                "blade B (+5.8 ± 0.5 mm).|blade B (+0.228 ± 0.020 in = +5.8 ± 0.5 mm).",
                "predicted spread 0.00 to 1.12 mm|predicted spread 0.000 to 0.044 in = 0.00 to 1.12 mm",
                "0.010 mm at the dial is 0.17 mm (0.007 in) of track|0.0004 in = 0.010 mm at the dial is 0.007 in = 0.17 mm of track",
                "the limit of 3.18 mm (1/8 in) (a sheet)|the limit of 1/8 in = 3.18 mm (a sheet)",
                "4.7 mm/s peak stays|4.7 mm/s peak stays",
                "at a radius of 50 mm is|at a radius of 1.97 in = 50 mm is"
            })
    @DisplayName("stand in inches first, with what was said in mm behind, and no velocity is touched")
    void inInches(String said, String shown) {
        assertThat(LengthWords.in(LengthUnit.INCH, said)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "Marks by position: 0 in, 3/16 in, 1 1/16 in.|Marks by position: 0 in = 0.00 mm, 3/16 in = 4.76 mm, 1 1/16 in = 26.99 mm.",
                "0.005 in in all, dial 2 in from|0.005 in = 0.13 mm in all, dial 2 in from",
                "0.17 mm (0.007 in) of track|0.17 mm (0.007 in) of track",
                "seen 3 in 'as found'|seen 3 in 'as found'",
                "6.40 mm within|6.40 mm within"
            })
    @DisplayName("read in inches get their mm, and what only looks like a length is left alone")
    void inMillimetres(String said, String shown) {
        assertThat(LengthWords.in(LengthUnit.MILLIMETRE, said)).isEqualTo(shown);
    }
}
