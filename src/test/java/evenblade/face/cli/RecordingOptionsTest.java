package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.base.units.SignalUnit;
import evenblade.base.units.ValueScale;
import evenblade.input.recording.TableReading;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

class RecordingOptionsTest {
    private static RecordingOptions said(String... words) {
        CommandSpec spec = CommandSpec.create().name("orders");
        RecordingOptions.addTo(spec);
        return new RecordingOptions(new CommandLine(spec).parseArgs(words));
    }

    @Test
    void everyOptionIsReadBack() {
        RecordingOptions options = said(
                "--engine-rpm",
                "4800",
                "--tolerance",
                "3",
                "--channel",
                "x",
                "--channel",
                "2",
                "--mark-channel",
                "tach",
                "--full-scale",
                "50 m/s2");
        assertThat(options.engineRpm()).hasValue(4800);
        assertThat(options.propellerRpm()).isEmpty();
        assertThat(options.tolerancePercent()).isEqualTo(3);
        assertThat(options.channels()).containsExactly("x", "2");
        assertThat(options.markChannel()).contains("tach");
        assertThat(options.fullScale()).contains(new FullScale(50, SignalUnit.METRE_PER_SECOND_SQUARED));
    }

    @Test
    void theReadingOfATableIsSaidInWords() {
        TableReading table = said(
                        "--separator",
                        "semicolon",
                        "--decimal-sign",
                        "comma",
                        "--time-column",
                        "2",
                        "--time-unit",
                        "ms",
                        "--column-scale",
                        "3=0.01 m/s2",
                        "--column-name",
                        "3=across")
                .table();
        assertThat(table)
                .isEqualTo(new TableReading(
                        Optional.of(TableReading.Separator.SEMICOLON),
                        Optional.of(TableReading.DecimalSign.COMMA),
                        Optional.of("2"),
                        Optional.of(TableReading.TimeUnit.MILLISECONDS),
                        List.of(new TableReading.ColumnReading(
                                "3",
                                Optional.of("across"),
                                Optional.of(new ValueScale(0.01, SignalUnit.METRE_PER_SECOND_SQUARED))))));
        assertThat(said().table()).isEqualTo(TableReading.UNSAID);
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> said("--separator", "semicolons").table())
                .withMessage("--separator: \"semicolons\", expected one of comma, semicolon, tab, bar, spaces;"
                        + " did you mean 'semicolon'?");
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> said("--column-scale", "3").table())
                .withMessage("--column-scale: \"3\", expected a column, = and a value, such as \"2=...\"");
    }

    @Test
    void nothingSaidLeavesTheSearchOpen() {
        RecordingOptions options = said();
        assertThat(options.engineRpm()).isEmpty();
        assertThat(options.tolerancePercent()).isEqualTo(5);
        assertThat(options.channels()).isEmpty();
        assertThat(options.markChannel()).isEmpty();
        assertThat(options.fullScale()).isEmpty();
    }

    @Test
    void numbersThatCannotBeAreRefused() {
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> said("--engine-rpm", "-5").engineRpm())
                .withMessage("--engine-rpm: -5.0, expected a speed in rpm above zero");
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> said("--propeller-rpm", "NaN").propellerRpm());
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> said("--tolerance", "60").tolerancePercent())
                .withMessage("--tolerance: 60.0, expected a percentage above 0 and at most 50");
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> said("--full-scale", "8").fullScale())
                .withMessage("--full-scale: \"8\" without a unit, expected a full scale such as \"50 m/s2\"");
    }

    @Test
    void aSpeedIsSaidForOneShaftOnly() {
        StringWriter errors = new StringWriter();
        try {
            said("--engine-rpm", "4800", "--propeller-rpm", "1975");
        } catch (ParameterException e) {
            assertThat(Complaints.wrongUsage(e, new PrintWriter(errors, true))).isEqualTo(2);
        }
        assertThat(errors.toString())
                .isEqualTo("evenblade: only one of --engine-rpm and --propeller-rpm can be given\n"
                        + "See 'orders --help'.\n");
    }
}
