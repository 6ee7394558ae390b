package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What people who see colours differently make of the pictures, by simulation. */
class PaletteTest {
    /** A difference of 2 is just seen side by side; 15 and more is plain at a glance (CIE 1976, common practice). */
    private static final double PLAIN = 15;

    private static final List<List<Ink>> SIDE_BY_SIDE = List.of(
            List.of(Ink.PROPELLER, Ink.CRANK, Ink.BOTH, Ink.OTHER),
            List.of(Ink.BEFORE, Ink.AFTER),
            List.of(Ink.AFTER, Ink.PROPELLER, Ink.CRANK),
            List.of(Ink.AFTER, Ink.LIMIT));

    @ParameterizedTest
    @EnumSource
    void inksThatStandSideBySideStayApartHoweverColoursAreSeen(Sight sight) {
        for (Palette palette : Palette.values()) {
            for (List<Ink> group : SIDE_BY_SIDE) {
                for (Ink a : group) {
                    for (Ink b : group) {
                        if (a != b) {
                            assertThat(Lab.difference(sight.of(palette.of(a)), sight.of(palette.of(b))))
                                    .as("%s and %s in %s as seen by %s", a, b, palette, sight)
                                    .isGreaterThan(PLAIN);
                        }
                    }
                }
            }
        }
    }

    /** Contrast as defined by WCAG 2, where graphics need 3 to 1 and text 4.5 to 1. */
    @ParameterizedTest
    @EnumSource
    void everyInkStandsOutFromThePaper(Palette palette) {
        Color paper = palette.of(Ink.PAPER);
        for (Ink ink : List.of(Ink.PROPELLER, Ink.CRANK, Ink.BOTH, Ink.OTHER, Ink.BEFORE, Ink.AFTER, Ink.LIMIT)) {
            assertThat(contrast(palette.of(ink), paper)).as("%s", ink).isGreaterThan(3);
        }
        assertThat(contrast(palette.of(Ink.TEXT), paper)).isGreaterThan(4.5);
        assertThat(contrast(palette.of(Ink.QUIET_TEXT), paper)).isGreaterThan(4.5);
    }

    @ParameterizedTest
    @EnumSource
    void noTwoKindsOfMarkShareShapeOrDash(MarkKind kind) {
        for (MarkKind other : MarkKind.values()) {
            // Lines that no order explains and steady lines where none was looked for never stand in one picture.
            boolean apart = EnumSet.of(kind, other).equals(EnumSet.of(MarkKind.OTHER, MarkKind.STEADY));
            if (other != kind && !apart) {
                assertThat(other.glyph()).isNotEqualTo(kind.glyph());
                assertThat(other.dash()).isNotEqualTo(kind.dash());
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void theRampGoesInEvenStepsOfLightnessHoweverColoursAreSeen(Sight sight) {
        for (Palette palette : Palette.values()) {
            ColourRamp ramp = ColourRamp.of(palette);
            double direction = palette == Palette.LIGHT ? -1 : 1;
            double whole = direction
                    * (Lab.of(sight.of(ramp.at(1))).lightness()
                            - Lab.of(sight.of(ramp.at(0))).lightness());
            assertThat(whole).isGreaterThan(60);
            for (int i = 0; i < 20; i++) {
                double step = direction
                        * (Lab.of(sight.of(ramp.at((i + 1) / 20.0))).lightness()
                                - Lab.of(sight.of(ramp.at(i / 20.0))).lightness());
                assertThat(step / whole * 20)
                        .as("step %d of %s as seen by %s", i, palette, sight)
                        .isBetween(0.6, 1.5);
            }
        }
    }

    private static double contrast(Color a, Color b) {
        double ya = Lab.luminance(a);
        double yb = Lab.luminance(b);
        return (Math.max(ya, yb) + 0.05) / (Math.min(ya, yb) + 0.05);
    }
}
