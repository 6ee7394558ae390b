package evenblade.tell.document;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.machine.installation.InstallationFile;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayName("Lines that lie on each other")
class OnePlaceTest {
    private static List<OrderLine> lines(String sample) {
        return InstallationFile.read(Path.of("samples", sample, "installation.json"))
                .orders()
                .lines();
    }

    private static List<OnePlace<OrderLine>> places(List<OrderLine> lines) {
        return OnePlace.of(lines, Function.identity());
    }

    @Test
    @DisplayName("are listed once, with all their names, where their first stood")
    void oneRowWithAllNames() {
        // Two blades on the crank of a four-stroke four: 1× is 1×, and the blades pass as often as it fires.
        assertThat(places(lines("direct-two-blade")))
                .extracting(OnePlace::name)
                .startsWith("propeller 1× = crank 1×", "blade pass = firing", "propeller 3× = crank 3×")
                .doesNotContain("crank 1×", "firing", "crank 3×")
                .contains("crank ½×", "crank 1½×");
    }

    @ParameterizedTest
    @ValueSource(strings = {"direct-two-blade", "electric-fan", "geared-three-blade"})
    @DisplayName("are never in two rows, and no line is lost or doubled")
    void everyLineIsInOneRow(String sample) {
        List<OrderLine> lines = lines(sample);

        List<OnePlace<OrderLine>> places = places(lines);

        assertThat(places.stream().flatMap(place -> place.all().stream())).containsExactlyInAnyOrderElementsOf(lines);
        for (OnePlace<OrderLine> one : places) {
            assertThat(places)
                    .filteredOn(other -> OrderTable.coincide(other.first(), one.first()))
                    .containsExactly(one);
        }
    }

    @Test
    @DisplayName("stay apart where they are two kinds of figure")
    void kindsStayApart() {
        OrderLine once = lines("direct-two-blade").get(0);

        assertThat(OnePlace.of(List.of("amplitude", "ratio"), each -> Optional.of(once), each -> each, each -> each))
                .hasSize(2);
    }
}
