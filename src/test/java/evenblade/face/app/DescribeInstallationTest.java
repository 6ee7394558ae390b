package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import evenblade.face.app.DescribeInstallation.Form;
import evenblade.machine.installation.Installation.Propeller;
import java.util.Map;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("A filled-in form")
class DescribeInstallationTest {
    /** An inch is 25.4 mm and a pound 0.45359237 kg by definition: 4 in, 13 3/4 in and 4.6 lb. */
    @Test
    @DisplayName("takes width, mass and balance point of a blade in inches and pounds")
    void takesABladeInInchesAndPounds() {
        Propeller propeller = DescribeInstallation.describe(form("4 in", "4.6 lb", "13 3/4 in"))
                .propeller();
        assertThat(propeller.chord().orElseThrow().metres()).isCloseTo(0.1016, within(1e-12));
        assertThat(propeller.bladeMass().orElseThrow().kilograms()).isCloseTo(4.6 * 0.45359237, within(1e-12));
        assertThat(propeller.centreOfGravity().orElseThrow().metres()).isCloseTo(0.34925, within(1e-12));
    }

    @Test
    @DisplayName("may leave them out")
    void mayLeaveThemOut() {
        Propeller propeller = DescribeInstallation.describe(form("", " ", "")).propeller();
        assertThat(propeller.chord()).isEmpty();
        assertThat(propeller.bladeMass()).isEmpty();
        assertThat(propeller.centreOfGravity()).isEmpty();
    }

    @Test
    @DisplayName("is refused where the balance point lies past the half diameter or the mass has no unit")
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> DescribeInstallation.describe(form("", "", "0.86 m")))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("centreOfGravity");
        assertThatThrownBy(() -> DescribeInstallation.describe(form("", "2.1", "")))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("\"2.1\" without a unit, expected a mass");
    }

    private static Form form(String chord, String mass, String centreOfGravity) {
        return new Form(
                "invented",
                "four-stroke",
                "4",
                "1600",
                "5800",
                "gear",
                "",
                "21",
                "51",
                "3",
                "1.70 m",
                chord,
                mass,
                centreOfGravity,
                "clockwise",
                "",
                "",
                "",
                "250 mm",
                "-20 mm",
                "2");
    }

    @Test
    void aFormOverAnInstallationChangesItsFieldsAndKeepsWhatItHasNoFieldFor() {
        Map<String, Object> written = Map.of(
                "name", "invented",
                "engine", Map.of("cycle", "two-stroke", "cylinders", 2, "idleRpm", 1800, "maxRpm", 6200),
                "reduction", Map.of("kind", "gear", "ratio", 2.58, "accessory", "kept"),
                "propeller", Map.of("blades", 3, "diameter", "1.70 m"),
                "limits", Map.of("trackSpread", Map.of("value", "1/8 in"), "other", Map.of("value", 3)));
        Form now = DescribeInstallation.form(written);
        assertThat(now.cylinders()).isEqualTo("2");
        assertThat(now.ratio()).isEqualTo("2.58");
        Form changed = new Form(
                now.name(),
                now.cycle(),
                now.cylinders(),
                now.idleRpm(),
                "6500",
                now.drive(),
                "2.62",
                "",
                "",
                "3",
                "",
                "",
                "",
                "",
                "",
                "",
                now.trackLimit(),
                "",
                "",
                "",
                "");

        Map<String, Object> over = DescribeInstallation.over(written, changed);

        assertThat(((Map<?, ?>) over.get("engine")).get("maxRpm").toString()).startsWith("6500");
        assertThat((Map<?, ?>) over.get("reduction")).hasSize(3);
        assertThat((Map<?, ?>) over.get("propeller")).hasSize(1);
        assertThat((Map<?, ?>) over.get("limits")).hasSize(2);
    }
}
