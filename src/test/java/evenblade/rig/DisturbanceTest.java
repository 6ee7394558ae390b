package evenblade.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What disturbances and pairs of runs do, in closed form or within chance. */
class DisturbanceTest {
    private static final Machine MACHINE = Machine.random(3, Machine.Cycle.FOUR_STROKE, 4, Machine.Drive.TEETH, 3);

    private static Rig rig() {
        return Rig.of(MACHINE, 6)
                .program(SpeedProgram.still().hold(3600, 20))
                .sensors(Sensor.accelerometer("up", Axis.UP).with(Floor.NONE));
    }

    private static double rms(double[] x, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += x[i] * x[i];
        }
        return Math.sqrt(sum / (to - from));
    }

    @Test
    void aSensorThatLetsGoFallsToItsShare() {
        double[] whole = rig().make().samples(0);
        double[] loose = rig().with(SensorFault.letGo(10, 0.35)).make().samples(0);
        assertEquals(whole[1000], loose[1000], 1e-12);
        assertEquals(0.35, rms(loose, 81_000, 160_000) / rms(whole, 81_000, 160_000), 1e-9);
    }

    @Test
    void humHasItsLevelAndLiesOnTheGrid() {
        double[] quiet = rig().standing().with(Sound.hum(50, 0.2)).make().samples(0);
        assertEquals(0.2, rms(quiet, 0, quiet.length), 0.01);
        double low = Spectra.powerBelow(quiet, 8000, 45);
        double first = Spectra.powerBelow(quiet, 8000, 55) - low;
        assertTrue(low < first / 30, low + " against " + first);
    }

    @Test
    void aSecondEngineLiesApartByWhatWasAskedFor() {
        double hz = MACHINE.firingOrder() * 60; // 3600 rpm
        double[] both = rig().standing()
                .with(OtherMachine.secondEngine(MACHINE, SpeedProgram.still().hold(3600, 20), 1.5, 1, 8))
                .make()
                .samples(0);
        double at = tone(both, hz + 1.5);
        assertTrue(at > 5 * tone(both, hz), at + " against " + tone(both, hz));
    }

    private static double tone(double[] x, double hz) {
        double re = 0;
        double im = 0;
        for (int i = 0; i < x.length; i++) {
            double window = 1 - Math.cos(2 * Math.PI * i / x.length); // Hann
            re += window * x[i] * Math.cos(2 * Math.PI * hz * i / 8000);
            im += window * x[i] * Math.sin(2 * Math.PI * hz * i / 8000);
        }
        return Math.hypot(re, im) / x.length;
    }

    @Test
    void aLoggerThatPausesShiftsItsStampsAndBurstsShareOne() {
        Sampling sampling = Sampling.even(100).pausing(10, 600).inBursts(10);
        GroundRun run = rig().sampling(sampling).make();
        double[] stamps = run.stamps();
        assertEquals(stamps[0], stamps[9], 0);
        assertEquals(0.09, stamps[0], 1e-9);
        assertEquals(600.1, stamps[1000] - stamps[990], 1e-6);
    }

    @Test
    void aPoorLoggerLosesSamplesAndWritesRowsTwice(@TempDir Path folder) throws IOException {
        GroundRun run = rig().sampling(Sampling.even(100).losing(6, 0.1)).make();
        double[] stamps = run.stamps();
        int gaps = 0;
        for (int i = 1; i < stamps.length; i++) {
            gaps += stamps[i] - stamps[i - 1] > 0.05 ? 1 : 0;
        }
        assertTrue(gaps == 1 || gaps == 2, gaps + " gaps"); // two in 20 s, that may touch
        int rows = Files.readAllLines(run.writeCsv(folder.resolve("run.csv"))).size() - 1;
        assertEquals(1.1, rows / (double) stamps.length, 0.03); // chance: sqrt(0.09/1900) = 0.7 %
    }

    @Test
    void aPairTakesAsMuchAsWasChangedOnceRemountingIsDividedOut() {
        LineId first = new LineId(Shaft.PROPELLER, 1);
        BeforeAfter pair =
                BeforeAfter.of(rig().sources(Rig.randomLines(MACHINE, 6, 0, 1)), Map.of(first, 0.7), 0.06, 0.03, 4);
        for (LineId id : List.of(first, new LineId(Shaft.PROPELLER, 3))) {
            double before = amplitude(pair.before(), id);
            double after = amplitude(pair.after(), id);
            double expected = pair.trueFactor().apply(id) * pair.remounting().apply(id);
            assertEquals(expected, after / before, 1e-6);
        }
        assertEquals(0.7, pair.trueFactor().apply(first), 0);
    }

    private static double amplitude(GroundRun run, LineId id) {
        return run.truth()
                .dwells()
                .get(0)
                .line("up", id.shaft(), id.order())
                .orElseThrow()
                .meanSize();
    }

    @Test
    void remountingScattersAsStated() {
        List<Double> logs = new ArrayList<>();
        List<Double> between = new ArrayList<>();
        for (int seed = 0; seed < 2000; seed++) {
            var factor = BeforeAfter.remount(0.06, 0.03, seed);
            double one = Math.log(factor.apply(new LineId(Shaft.PROPELLER, 1)));
            logs.add(one);
            between.add(one - Math.log(factor.apply(new LineId(Shaft.CRANK, 0.5))));
        }
        // 2000 draws: a deviation scatters by 1/sqrt(4000) = 1.6 %
        assertEquals(Math.hypot(0.06, 0.03), deviation(logs), 0.06 * 0.07);
        assertEquals(0.03 * Math.sqrt(2), deviation(between), 0.0424 * 0.07);
    }

    private static double deviation(List<Double> values) {
        double mean = values.stream().mapToDouble(d -> d).average().orElseThrow();
        return Math.sqrt(values.stream()
                .mapToDouble(d -> (d - mean) * (d - mean))
                .average()
                .orElseThrow());
    }
}
