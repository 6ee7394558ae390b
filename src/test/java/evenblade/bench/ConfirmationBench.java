package evenblade.bench;

import evenblade.base.problem.BadInput;
import evenblade.face.app.AnalyseRecording;
import evenblade.face.app.AnalysisRequest;
import evenblade.input.recording.TableReading;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.rig.Axis;
import evenblade.rig.Background;
import evenblade.rig.GroundRun;
import evenblade.rig.Machine;
import evenblade.rig.Rig;
import evenblade.rig.Sampling;
import evenblade.rig.Sensor;
import evenblade.rig.SpeedProgram;
import evenblade.rig.Truth;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Stream;

/**
 * Runs made by the rig and sounds that nobody here invented, through the whole program: what is confirmed, and is it
 * true? Prints a line per try; the long tests use the same tries.
 */
public final class ConfirmationBench {
    /** Share by which a confirmed speed may be off before it counts as wrong. */
    static final double RIGHT_WITHIN = 0.005;

    static final List<Machine> GEARED = List.of(
            Machine.random(1, Machine.Cycle.FOUR_STROKE, 4, Machine.Drive.TEETH, 3),
            Machine.random(2, Machine.Cycle.TWO_STROKE, 2, Machine.Drive.DECIMALS, 3),
            Machine.random(3, Machine.Cycle.FOUR_STROKE, 3, Machine.Drive.BELT_DECIMALS, 4),
            Machine.random(4, Machine.Cycle.TWO_STROKE, 1, Machine.Drive.BELT_TEETH, 2),
            Machine.random(5, Machine.Cycle.FOUR_STROKE, 4, Machine.Drive.TEETH, 2));
    static final List<Machine> DIRECT = List.of(
            Machine.random(6, Machine.Cycle.FOUR_STROKE, 4, Machine.Drive.DIRECT, 2),
            Machine.random(7, Machine.Cycle.ELECTRIC, 0, Machine.Drive.DIRECT, 5));
    static final List<String> OTHER_MACHINES = List.of("exercise-bike", "helicopter", "chainsaw");
    private static final Path SOUNDS = Path.of("src/test/resources/backgrounds");

    private final Path folder;

    ConfirmationBench(Path folder) {
        this.folder = folder;
    }

    /** What became of one dwell of one try. */
    record Outcome(String what, boolean confirmed, double rpm, double trueRpm, String words) {
        boolean right() {
            return Math.abs(rpm / trueRpm - 1) < RIGHT_WITHIN;
        }
    }

    static List<Path> sounds(boolean otherMachine) {
        try (Stream<Path> files = Files.list(SOUNDS)) {
            return files.filter(f -> f.toString().endsWith(".flac"))
                    .filter(f -> OTHER_MACHINES.stream()
                                    .anyMatch(o -> f.getFileName().toString().startsWith(o))
                            == otherMachine)
                    .sorted()
                    .toList();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    /** The program's answer for a made run. */
    RunOrders answer(GroundRun run, OptionalDouble engineRpm) throws IOException {
        return answer(run, run.machine(), engineRpm, false);
    }

    RunOrders answer(GroundRun run, Machine told, OptionalDouble engineRpm, boolean csv) throws IOException {
        Path file = folder.resolve(csv ? "run.csv" : "run.wav");
        if (csv) {
            run.writeCsv(file);
        } else {
            run.writeWav(file);
        }
        Path installation = Files.writeString(folder.resolve("installation.json"), told.installationJson());
        return answer(file, InstallationFile.read(installation), engineRpm);
    }

    static RunOrders answer(Path file, Installation installation, OptionalDouble engineRpm) {
        return AnalyseRecording.analyse(new AnalysisRequest(
                        file,
                        installation,
                        engineRpm,
                        OptionalDouble.empty(),
                        AnalysisRequest.DEFAULT_TOLERANCE_PERCENT,
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        TableReading.UNSAID,
                        Optional.empty(),
                        List.of()))
                .orders();
    }

    /** Rooms and other machines, engine standing. */
    List<Outcome> standing(boolean otherMachine) throws IOException {
        List<Outcome> all = new ArrayList<>();
        Random random = new Random(11);
        List<Machine> machines =
                List.of(GEARED.get(0), GEARED.get(1), GEARED.get(3), DIRECT.get(0), DIRECT.get(1), GEARED.get(2));
        for (Path sound : sounds(otherMachine)) {
            Background background = Background.read(sound);
            int pieces = background.seconds() > 20 ? 3 : 1;
            for (int piece = 0; piece < pieces; piece++) {
                for (Machine machine : machines) {
                    SpeedProgram program = SpeedProgram.still()
                            .hold(machine.maxRpm() * 0.8, pieces > 1 ? 15 : background.seconds() - 0.01);
                    GroundRun run = Rig.of(machine, 100 + piece)
                            .program(program)
                            .sensors(Sensor.microphone("microphone", 60).with(evenblade.rig.Floor.white(1e-5)))
                            .sampling(Sampling.even(background.rateHz()))
                            .with(background.behind(0))
                            .standing()
                            .make();
                    double entered = machine.idleRpm() + random.nextDouble() * (machine.maxRpm() - machine.idleRpm());
                    for (boolean enter : new boolean[] {false, true}) {
                        RunOrders got = answer(run, enter ? OptionalDouble.of(entered) : OptionalDouble.empty());
                        all.add(new Outcome(
                                sound.getFileName() + " " + machine.drive() + " " + machine.cycle()
                                        + (enter ? " entered" : ""),
                                got.speed().confirmed(),
                                got.speed()
                                        .main()
                                        .map(d -> d.propellerRpm() * got.ratio())
                                        .orElse(0.0),
                                0,
                                words(got)));
                    }
                }
            }
        }
        return all;
    }

    /** Geared machines in all those sounds. */
    List<Outcome> mixed(double levelDb) throws IOException {
        List<Outcome> all = new ArrayList<>();
        Random random = new Random(12);
        int turn = 0;
        for (boolean other : new boolean[] {false, true}) {
            for (Path sound : sounds(other)) {
                Background background = Background.read(sound);
                for (int each = 0; each < 2; each++) {
                    Machine machine = GEARED.get(turn++ % GEARED.size());
                    double rpm = machine.idleRpm()
                            + (0.25 + 0.7 * random.nextDouble()) * (machine.maxRpm() - machine.idleRpm());
                    GroundRun run = Rig.of(machine, 300 + turn)
                            .program(SpeedProgram.still().hold(rpm, 12).wandering(0.004, 4))
                            .sensors(Sensor.microphone("microphone", 70))
                            .sampling(Sampling.even(background.rateHz()))
                            .with(background.behind(levelDb))
                            .make();
                    boolean enter = each == 1;
                    RunOrders got = answer(
                            run,
                            enter
                                    ? OptionalDouble.of(rpm * (1 + 0.06 * random.nextGaussian()))
                                    : OptionalDouble.empty());
                    all.addAll(outcomes(
                            sound.getFileName() + " " + machine.name() + " " + machine.drive()
                                    + (enter ? " entered" : ""),
                            run,
                            got));
                }
            }
        }
        return all;
    }

    /** One outcome per true dwell. */
    static List<Outcome> outcomes(String what, GroundRun run, RunOrders got) {
        List<Outcome> all = new ArrayList<>();
        for (Truth.Dwell dwell : run.truth().dwells()) {
            double middle = (dwell.fromS() + dwell.toS()) / 2;
            Optional<Dwell> found = got.speed().dwells().stream()
                    .filter(d -> got.speed().confirmed()
                            && Math.min(d.toS(), dwell.toS()) - Math.max(d.fromS(), dwell.fromS()) > 1)
                    .max(java.util.Comparator.comparingDouble(
                            d -> Math.min(d.toS(), dwell.toS()) - Math.max(d.fromS(), dwell.fromS())));
            double rpm = found.map(d -> d.propellerRpm()).orElse(0.0);
            double truth = found.map(d -> run.truth().track().propellerRpm().mean(d.fromS(), d.toS()))
                    .orElse(run.truth().track().propellerRpm().at(middle));
            all.add(new Outcome(what, found.isPresent(), rpm, truth, words(got)));
        }
        return all;
    }

    /** Runs of chance machines, entry none, near, or 5 to 15 % wrong. */
    List<Outcome> chance(int from, int to) throws IOException {
        List<Outcome> all = new ArrayList<>();
        for (int seed = from; seed < to; seed++) {
            Random random = new Random(seed);
            GroundRun run = Rig.random(seed).make();
            boolean csv = run.sensors().get(0).name().equals("x");
            Truth.Dwell first = run.truth().dwells().get(0);
            double wrong = (random.nextBoolean() ? 1 : -1) * (0.05 + 0.1 * random.nextDouble());
            for (double off : new double[] {Double.NaN, 0.01, wrong}) {
                double rpm = Math.max(
                        run.machine().idleRpm(), Math.min(run.machine().maxRpm(), first.engineRpm() * (1 + off)));
                OptionalDouble entered = Double.isNaN(off) ? OptionalDouble.empty() : OptionalDouble.of(rpm);
                RunOrders got;
                try {
                    got = answer(run, run.machine(), entered, csv);
                } catch (BadInput bad) {
                    all.add(new Outcome("seed " + seed, false, 0, first.engineRpm(), "refused: " + bad.getMessage()));
                    continue;
                }
                all.addAll(outcomes(
                        String.format(
                                Locale.ROOT,
                                "seed %d %s %s %.3f b%d %s entry %+.2f",
                                seed,
                                run.machine().cycle(),
                                run.machine().drive(),
                                run.machine().ratio(),
                                run.machine().blades(),
                                run.sensors().get(0).name(),
                                off),
                        run,
                        got));
            }
        }
        return all;
    }

    /** What the program says to a wrong entry: a word about it, or a speed that isn't confirmed, or neither. */
    record Entry(String what, boolean confirmed, boolean told, String words) {}

    /** Ratio off by a slip of the pen or upside down, wrong number of blades; right rpm entered or none. */
    List<Entry> wrongEntries(int seeds) throws IOException {
        List<Entry> all = new ArrayList<>();
        for (int seed = 0; seed < seeds; seed++) {
            Machine base = GEARED.get(seed % GEARED.size());
            Random random = new Random(seed);
            double rpm = base.idleRpm() + (0.3 + 0.6 * random.nextDouble()) * (base.maxRpm() - base.idleRpm());
            GroundRun run = Rig.of(base, 900 + seed)
                    .program(SpeedProgram.still().hold(rpm, 20).wandering(0.003, 4))
                    .sensors(Sensor.accelerometer("up", Axis.UP))
                    .make();
            OptionalDouble entered = seed % 2 == 0 ? OptionalDouble.of(rpm) : OptionalDouble.empty();
            double off = Math.exp((random.nextBoolean() ? 1 : -1) * (0.05 + 0.2 * random.nextDouble()));
            all.add(entry("right", run, base, entered));
            all.add(entry("ratio", run, base.enteredAs(Math.round(base.ratio() * off * 100) / 100.0), entered));
            all.add(entry("upside down", run, base.enteredAs(Math.round(1000 / base.ratio()) / 1000.0), entered));
            all.add(entry("blades", run, blades(base, base.blades() == 3 ? 2 : 3), entered));
        }
        return all;
    }

    private static Machine blades(Machine m, int blades) {
        return new Machine(
                m.name(),
                m.cycle(),
                m.cylinders(),
                m.idleRpm(),
                m.maxRpm(),
                m.drive(),
                m.ratio(),
                m.drivingTeeth(),
                m.drivenTeeth(),
                m.enteredRatio(),
                blades,
                m.diameterM(),
                m.clockwise());
    }

    private Entry entry(String what, GroundRun run, Machine told, OptionalDouble rpm) throws IOException {
        RunOrders got = answer(run, told, rpm, false);
        boolean word = got.warnings().stream().anyMatch(w -> List.of(
                        "OTHER_RATIO_FITS", "OTHER_BLADES_FIT", "RATIO_DOUBTFUL", "PROPELLER_FASTER_THAN_ENGINE")
                .contains(w.code().name()));
        return new Entry(
                what,
                got.speed().confirmed(),
                word,
                String.format(
                        Locale.ROOT,
                        "%s b%d true ratio %.3f told %.3f: %s %s",
                        run.machine().cycle(),
                        run.machine().blades(),
                        run.machine().ratio(),
                        told.ratioAsEntered(),
                        words(got),
                        got.warnings().stream()
                                .filter(w -> w.code().name().startsWith("OTHER"))
                                .map(w -> w.values().toString())
                                .toList()));
    }

    static String words(RunOrders got) {
        return got.speed().doubt().map(d -> "doubt: " + d).orElse("") + " "
                + got.warnings().stream().map(w -> w.code()).toList();
    }

    static void print(String title, List<Outcome> outcomes, boolean every) {
        int confirmed = 0;
        int wrong = 0;
        for (Outcome o : outcomes) {
            confirmed += o.confirmed() ? 1 : 0;
            wrong += o.confirmed() && !o.right() ? 1 : 0;
            boolean odd = o.trueRpm() == 0 ? o.confirmed() : !o.confirmed() || !o.right();
            if (every || odd) {
                System.out.printf(
                        Locale.ROOT,
                        "   %-60s %s rpm %.1f true %.1f %s%n",
                        o.what(),
                        o.confirmed() ? "CONFIRMED" : "not",
                        o.rpm(),
                        o.trueRpm(),
                        o.words());
            }
        }
        System.out.printf(
                Locale.ROOT,
                "== %s: %d tries, %d confirmed, %d of them wrong%n",
                title,
                outcomes.size(),
                confirmed,
                wrong);
    }

    public static void main(String[] args) throws IOException {
        Path folder = Files.createTempDirectory("bench");
        ConfirmationBench bench = new ConfirmationBench(folder);
        for (String arg : args) {
            long start = System.nanoTime();
            if (arg.equals("rooms")) {
                print("rooms", bench.standing(false), false);
            } else if (arg.equals("others")) {
                print("other machines", bench.standing(true), false);
            } else if (arg.startsWith("mixed")) {
                print(arg, bench.mixed(Double.parseDouble(arg.substring(5))), false);
            } else if (arg.startsWith("entries")) {
                List<Entry> entries = bench.wrongEntries(Integer.parseInt(arg.substring(7)));
                for (String what : List.of("right", "ratio", "upside down", "blades")) {
                    List<Entry> of =
                            entries.stream().filter(e -> e.what().equals(what)).toList();
                    of.forEach(e -> System.out.println("   " + e));
                    System.out.printf(
                            "== %s: %d, told %d, confirmed without a word %d%n",
                            what,
                            of.size(),
                            of.stream().filter(Entry::told).count(),
                            of.stream().filter(e -> e.confirmed() && !e.told()).count());
                }
            } else if (arg.startsWith("chance")) {
                String[] range = arg.substring(6).split("-");
                print(arg, bench.chance(Integer.parseInt(range[0]), Integer.parseInt(range[1])), false);
            }
            System.out.printf("   took %.1f s%n", (System.nanoTime() - start) / 1e9);
        }
    }
}
