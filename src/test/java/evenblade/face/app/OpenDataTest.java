package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Reduction;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderMeter;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedFinder;
import evenblade.measure.speed.SpeedPrior;
import evenblade.measure.speed.SpeedResult;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * An open series that this program had no part in: weekly carbon dioxide in the air, 1958 to 2001, data
 * set 'co2' of the Python package statsmodels 0.13.5, public domain; how it was exported is said in the
 * file. It has gaps, a trend twenty times as high as its cycle, and a period known beforehand: a year.
 */
class OpenDataTest {
    /** 365.2425 days at 5 ms a week. */
    private static final double YEARLY_HZ = 1000 / (365.2425 / 7 * 5);

    @Test
    void theYearlyCycleIsFoundInAPublishedSeries() throws URISyntaxException {
        Path file = Path.of(Objects.requireNonNull(OpenDataTest.class.getResource("/reference/co2/co2.csv"))
                .toURI());
        Recording recording = ((Intake.Whole) RecordingReader.open(file, IntakeOptions.NONE)).recording();
        Installation shaft = new Installation(
                Optional.empty(),
                new Engine(Engine.Cycle.ELECTRIC, 0, OptionalDouble.empty(), OptionalDouble.empty()),
                new Reduction(Reduction.Kind.DIRECT, 1, Optional.empty()),
                new Installation.Propeller(2, Optional.empty(), Optional.empty()),
                List.of());

        // One cycle and its double are no machine: the program refuses the speed, so the published one is given.
        assertThat(SpeedFinder.find(
                                recording,
                                recording.channels(),
                                shaft.orders(),
                                SpeedPrior.around(0.98 * YEARLY_HZ, 0.05))
                        .confirmed())
                .isFalse();
        double lastS = recording.time().at(recording.time().size() - 1);
        Dwell dwell = new Dwell(0, lastS, YEARLY_HZ, 0, YEARLY_HZ, YEARLY_HZ);
        SpeedResult speed = new SpeedResult(
                SpeedResult.Origin.MARK,
                true,
                Optional.empty(),
                new KeptRun.SampledTrack(0, lastS, Series.of(new double[] {YEARLY_HZ, YEARLY_HZ})),
                Optional.of(dwell),
                List.of(dwell),
                0,
                List.of());
        Level.Measured yearly =
                (Level.Measured) OrderMeter.measure(recording, recording.channels(), shaft.orders(), speed)
                        .get(0)
                        .dwells()
                        .get(0)
                        .readings()
                        .get(0)
                        .level();
        assertThat(yearly.detected()).isTrue();
    }
}
