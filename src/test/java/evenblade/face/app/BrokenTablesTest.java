package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.problem.BadInput;
import evenblade.input.intake.TableFaults;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.speed.Dwell;
import evenblade.rig.Axis;
import evenblade.rig.GroundRun;
import evenblade.rig.Machine;
import evenblade.rig.Rig;
import evenblade.rig.Sampling;
import evenblade.rig.Sensor;
import evenblade.rig.SpeedProgram;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Predicate;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables with broken stamps, rows and bytes give right figures within their intervals, or one refusal. */
@DisplayName("A broken table")
class BrokenTablesTest {
    private static final Installation DIRECT =
            InstallationFile.read(Path.of("samples/direct-two-blade/installation.json"));
    /** Propeller orders and amplitudes of the run made here, m/s². */
    private static final double[][] LINES = {
        {0.5, 0.4}, {1, 1.0}, {1.5, 0.4}, {2, 2.0}, {2.5, 0.5}, {3, 0.5}, {3.5, 0.4}, {4, 0.6}
    };

    private static final double SHAFT_HZ = 25;
    private static final double SECONDS = 26;

    @TempDir
    Path folder;

    /** What became of the tables. */
    private record Outcome(int right, int unconfirmed, int refused, List<String> wrong) {
        @Override
        public String toString() {
            return right + " right, " + unconfirmed + " not confirmed, " + refused + " refused, " + wrong.size()
                    + " wrong: \n" + String.join("\n", wrong);
        }
    }

    /** Two channels of steady lines in noise at 400 Hz. */
    private static String table(double jitterShare, double perSecond, int decimals, String unit, long seed) {
        Random random = new Random(seed);
        double rate = 400;
        StringBuilder text = new StringBuilder("time (" + unit + "),x (m/s2),y (m/s2)\n");
        for (int i = 0; i < SECONDS * rate; i++) {
            double t = 0.5 + (i + jitterShare * random.nextGaussian()) / rate;
            double x = 0;
            for (double[] line : LINES) {
                x += line[1] * Math.cos(2 * Math.PI * line[0] * SHAFT_HZ * t + line[0]);
            }
            text.append(String.format(
                    Locale.ROOT,
                    "%." + decimals + "f,%.5f,%.5f\n",
                    t * perSecond,
                    x + 0.15 * random.nextGaussian(),
                    0.5 * x + 9.81 + 0.15 * random.nextGaussian()));
        }
        return text.toString();
    }

    /** Says what is wrong with figures. */
    private interface Judge {
        List<String> off(AnalysedRecording analysed);
    }

    private Outcome outcome(TableFaults faults, Predicate<String> chosen) throws IOException {
        return outcome(faults, chosen, DIRECT, BrokenTablesTest::off);
    }

    private Outcome outcome(TableFaults faults, Predicate<String> chosen, Installation runs, Judge judge)
            throws IOException {
        int right = 0;
        int unconfirmed = 0;
        int refused = 0;
        List<String> wrong = new ArrayList<>();
        for (Map.Entry<String, TableFaults.Broken> each : faults.all().entrySet()) {
            if (!chosen.test(each.getKey())) {
                continue;
            }
            Path file = Files.write(folder.resolve("run.csv"), each.getValue().file());
            try {
                AnalysisRequest plain = AnalysisRequest.of(file, runs);
                // What a dial shows: one shaft with few lines is confirmed only beside it.
                AnalysisRequest read = new AnalysisRequest(
                        file,
                        runs,
                        runs == DIRECT ? OptionalDouble.of(60 * SHAFT_HZ) : OptionalDouble.empty(),
                        plain.propellerRpm(),
                        plain.tolerancePercent(),
                        plain.channels(),
                        plain.markChannel(),
                        plain.fullScale(),
                        plain.table(),
                        Optional.empty(),
                        List.of());
                AnalysedRecording analysed = AnalyseRecording.analyse(read);
                if (!analysed.orders().speed().confirmed()) {
                    unconfirmed++;
                    if (each.getValue().mustBeRead()) {
                        wrong.add(each.getKey() + ": not confirmed "
                                + analysed.orders().speed().doubt());
                    }
                    continue;
                }
                List<String> off = judge.off(analysed);
                if (off.isEmpty()) {
                    right++;
                } else {
                    wrong.add(each.getKey() + ": " + off + analysed.orders().warnings());
                }
            } catch (BadInput e) {
                refused++;
                if (each.getValue().mustBeRead()) {
                    wrong.add(each.getKey() + ": refused: " + e.getMessage());
                } else {
                    assertThat(e).hasMessageStartingWith(file.toString()).hasMessageContaining("expected");
                }
            } catch (RuntimeException e) {
                wrong.add(each.getKey() + ": " + e + " at " + e.getStackTrace()[0]);
            }
        }
        return new Outcome(right, unconfirmed, refused, wrong);
    }

    /** Figures of the first channel outside four standard errors, one per cent of the amplitude allowed beside. */
    private static List<String> off(AnalysedRecording analysed) {
        List<String> off = new ArrayList<>();
        List<DwellOrders> dwells = analysed.orders().channels().stream()
                .filter(channel -> channel.channel().equals("x"))
                .findFirst()
                .map(channel -> channel.dwells())
                .orElse(List.of());
        for (DwellOrders dwell : dwells) {
            Dwell at = dwell.dwell();
            // 50 ppm: the clock of a sound card or a logger (common practice, no source).
            if (Math.abs(at.propellerHz() - SHAFT_HZ) > 4 * at.standardErrorHz() + 5e-5 * SHAFT_HZ) {
                off.add(String.format(Locale.ROOT, "%.5f ± %.5f Hz", at.propellerHz(), at.standardErrorHz()));
            }
            for (OrderReading reading : dwell.readings()) {
                for (double[] line : LINES) {
                    if (Math.abs(reading.line().propellerOrder() - line[0]) < 1e-9
                            && reading.level() instanceof Level.Measured level
                            && Math.abs(level.amplitude() - line[1]) > 4 * level.standardError() + 0.01 * line[1]) {
                        off.add(String.format(
                                Locale.ROOT,
                                "order %.1f: %.4f ± %.4f for %.2f",
                                line[0],
                                level.amplitude(),
                                level.standardError(),
                                line[1]));
                    }
                }
            }
        }
        return off;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "clock steps by -5.0 s at 0.37",
                "board reboots at 0.5",
                "counter of 16 bits of us",
                "0.3 % of stamps with a wrong digit",
                "60 bytes of noise at the start",
                "1 % of rows of noise",
                "rows in bursts of 32 with one stamp",
                "150 rows sent again",
                "time stands still from 0.7 on"
            })
    @DisplayName("gives right figures where it can be read")
    void someFaults(String name) throws IOException {
        TableFaults faults = TableFaults.of(table(0.002, 1, 6, "s", 1), 1, 6, 11);
        assertThat(outcome(faults, name::equals)).hasToString("1 right, 0 not confirmed, 0 refused, 0 wrong: \n");
    }

    /** Before the reboot and after it the shaft has turned 75 times, and only the half orders tell. */
    @ParameterizedTest
    @ValueSource(strings = {"board reboots at 0.02", "150 rows sent again", "rows out of order"})
    @DisplayName("gives right figures where its lines hardly tell that rows are missing")
    void hardlyTold(String name) throws IOException {
        TableFaults faults = TableFaults.of(table(0.002, 1e6, 0, "us", 4), 1e6, 0, 14);
        assertThat(outcome(faults, name::equals)).hasToString("1 right, 0 not confirmed, 0 refused, 0 wrong: \n");
    }

    @Test
    @DisplayName("gives right figures or a refusal, whatever is broken in it")
    @Tag("long")
    void allFaults() throws IOException {
        String[] said = new String[4];
        said[0] = "even s: " + outcome(TableFaults.of(table(0.002, 1, 6, "s", 1), 1, 6, 11), name -> true);
        said[1] = "even ms: " + outcome(TableFaults.of(table(0.002, 1e3, 3, "ms", 2), 1e3, 3, 12), name -> true);
        said[2] = "uneven s: "
                + outcome(TableFaults.of(table(0.08, 1, 6, "s", 3), 1, 6, 13), name -> !name.contains("bursts"));
        said[3] = "us: " + outcome(TableFaults.of(table(0.002, 1e6, 0, "us", 4), 1e6, 0, 14), name -> true);
        System.out.println(String.join("\n", said));
        assertThat(said).allSatisfy(each -> assertThat(each).contains(" 0 wrong"));
    }

    /** Speed against the rig's truth, lines of a twentieth of the strongest and above against the unbroken table. */
    private static Judge against(GroundRun run, AnalysedRecording unbroken) {
        return analysed -> {
            List<String> off = new ArrayList<>();
            double truth = run.truth().dwells().get(0).propellerRpm() / 60;
            for (ChannelOrders channel : analysed.orders().channels()) {
                // A heading that was destroyed leaves the column's number.
                String name = channel.channel().equals("column 2")
                        ? "x"
                        : channel.channel().equals("column 3") ? "z" : channel.channel();
                ChannelOrders before = unbroken.orders().channels().stream()
                        .filter(each -> name.contains(each.channel()))
                        .findFirst()
                        .orElseThrow();
                for (DwellOrders dwell : channel.dwells()) {
                    Dwell at = dwell.dwell();
                    if (Math.abs(at.propellerHz() - truth) > 4 * at.standardErrorHz() + 1e-4 * truth) {
                        off.add(String.format(
                                Locale.ROOT, "%.5f ± %.5f for %.5f Hz", at.propellerHz(), at.standardErrorHz(), truth));
                    }
                    for (int i = 0; i < dwell.readings().size(); i++) {
                        OrderReading was = before.dwells().get(0).readings().get(i);
                        // Weaker lines carry what leaks from lines beyond the range of so slow a phone.
                        if (was.level() instanceof Level.Measured strong
                                && strong.amplitude() > 0.05 * strongest(before)
                                && dwell.readings().get(i).level() instanceof Level.Measured now
                                && Math.abs(now.amplitude() - strong.amplitude())
                                        > 4 * Math.hypot(now.standardError(), strong.standardError())
                                                + 0.03 * strong.amplitude()) {
                            off.add(channel.channel() + " " + was.line().propellerOrder() + ": " + now.amplitude()
                                    + " ± " + now.standardError() + " for " + strong.amplitude());
                        }
                    }
                }
            }
            return off;
        };
    }

    private static double strongest(ChannelOrders channel) {
        return channel.dwells().get(0).readings().stream()
                .map(OrderReading::level)
                .filter(Level.Measured.class::isInstance)
                .mapToDouble(level -> ((Level.Measured) level).amplitude())
                .max()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(longs = {101, 102, 103})
    @DisplayName("of another maker's machine and phone gives right figures or a refusal too")
    @Tag("long")
    void tablesOfTheRig(long seed) throws IOException {
        Machine machine = Machine.random(seed);
        double rpm = machine.idleRpm() + 0.7 * (machine.maxRpm() - machine.idleRpm());
        GroundRun run = Rig.of(machine, seed)
                .program(SpeedProgram.still().hold(rpm, 26))
                .sources(Rig.randomLines(machine, seed, 0, 1))
                .sensors(Sensor.phone("x", Axis.RIGHT), Sensor.phone("z", Axis.UP))
                .sampling(Sampling.phone(420, 0.03))
                .make();
        Path clean = run.writeCsv(folder.resolve("clean.csv"));
        Installation runs = InstallationFile.read(run.writeInstallation(folder.resolve("installation.json")));
        AnalysedRecording unbroken = AnalyseRecording.analyse(AnalysisRequest.of(clean, runs));
        assertThat(unbroken.orders().speed().confirmed()).isTrue();
        TableFaults faults = TableFaults.of(Files.readString(clean), 1, 6, seed);
        String said = "rig " + seed + ": " + outcome(faults, name -> true, runs, against(run, unbroken));
        System.out.println(said);
        assertThat(said).contains(" 0 wrong");
    }
}
