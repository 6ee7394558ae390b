package evenblade.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import evenblade.problem.BadInput;
import evenblade.units.FullScale;
import evenblade.units.SignalUnit;
import java.io.PrintWriter;
import java.io.StringWriter;
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
