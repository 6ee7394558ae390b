package evenblade.bench;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.measure.orders.RunOrders;
import evenblade.rig.Axis;
import evenblade.rig.Disturbance;
import evenblade.rig.Machine;
import evenblade.rig.Rig;
import evenblade.rig.Sensor;
import evenblade.rig.SensorFault;
import evenblade.rig.SpeedProgram;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sensors that let go, rattle or spit spikes, and sound ones, in runs of the rig; other seeds than those looked at. */
@Tag("long")
class SensorHoldTest {
    private static final int RUNS = 10;
    private static final double SECONDS = 20;

    @TempDir
    private Path folder;

    private RunOrders run(int seed, Optional<Disturbance> fault) throws IOException {
        Random random = new Random(seed);
        Machine machine = ConfirmationBench.GEARED.get(seed % ConfirmationBench.GEARED.size());
        double rpm = machine.idleRpm() + (0.3 + 0.6 * random.nextDouble()) * (machine.maxRpm() - machine.idleRpm());
        Rig rig = Rig.of(machine, seed)
                .program(SpeedProgram.still().hold(rpm, SECONDS).wandering(0.004, 4))
                .sensors(Sensor.accelerometer("up", Axis.UP));
        if (fault.isPresent()) {
            rig = rig.with(fault.get());
        }
        return new ConfirmationBench(folder).answer(rig.make(), OptionalDouble.of(rpm));
    }

    private static List<Warning> told(RunOrders run, WarningCode code) {
        return run.warnings().stream().filter(w -> w.code() == code).toList();
    }

    @Test
    void aSensorThatLetsGoIsToldWithItsTimeAndWhatLiesBeforeIsMeasured() throws IOException {
        for (int seed = 0; seed < RUNS; seed++) {
            double atS = 5 + new Random(900 + seed).nextDouble() * 10;
            RunOrders run = run(1900 + seed, Optional.of(SensorFault.letGo(atS, 0.35)));
            List<Warning> told = told(run, WarningCode.SENSOR_LET_GO);
            assertThat(told).as("seed %d", seed).hasSize(1);
            assertThat(((Amount) told.get(0).values().get(1)).value()).isBetween(atS - 0.3, atS + 0.3);
            assertThat(run.speed().dwells()).allMatch(dwell -> dwell.toS() <= atS);
        }
    }

    @Test
    void rattleAndSpikesAreToldAndSoundSensorsAreNot() throws IOException {
        for (int seed = 0; seed < RUNS; seed++) {
            RunOrders sound = run(1900 + seed, Optional.empty());
            assertThat(told(sound, WarningCode.SENSOR_RATTLES)).isEmpty();
            assertThat(told(sound, WarningCode.SENSOR_LET_GO)).isEmpty();
            RunOrders rattling = run(1900 + seed, Optional.of(SensorFault.rattle(0.5, 5)));
            assertThat(told(rattling, WarningCode.SENSOR_RATTLES))
                    .as("seed %d", seed)
                    .isNotEmpty();
            RunOrders spiked = run(1900 + seed, Optional.of(SensorFault.spikes(1, 8)));
            assertThat(told(spiked, WarningCode.SENSOR_RATTLES))
                    .as("seed %d", seed)
                    .isNotEmpty();
        }
    }
}
