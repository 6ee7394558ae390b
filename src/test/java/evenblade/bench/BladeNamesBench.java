package evenblade.bench;

import evenblade.face.app.AnalyseRecording;
import evenblade.face.app.AnalysisRequest;
import evenblade.input.recording.TableReading;
import evenblade.machine.installation.InstallationFile;
import evenblade.measure.orders.BladeShares;
import evenblade.rig.Background;
import evenblade.rig.BladePulses;
import evenblade.rig.GroundRun;
import evenblade.rig.LineSource;
import evenblade.rig.Machine;
import evenblade.rig.Rig;
import evenblade.rig.Sampling;
import evenblade.rig.Sensor;
import evenblade.rig.Shaft;
import evenblade.rig.SpeedProgram;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** Which blade is named, in invented runs with a mark in sounds that nobody here invented: through the whole program. */
public final class BladeNamesBench {
    private static final double SECONDS = 14;

    private final Path folder;

    BladeNamesBench(Path folder) {
        this.folder = folder;
    }

    /**
     * One try.
     *
     * @param out by how many of its own standard errors the odd blade truly stands out; 0 where all are alike
     * @param named whether one was named
     * @param right whether it was the odd one
     */
    record Outcome(String what, double out, boolean named, boolean right) {}

    /** As many tries as asked for, every second one with blades alike. */
    List<Outcome> tries(int count, long seed) throws IOException {
        List<Path> sounds = new ArrayList<>(ConfirmationBench.sounds(false));
        sounds.addAll(ConfirmationBench.sounds(true));
        List<Outcome> all = new ArrayList<>();
        Random dice = new Random(seed);
        for (int i = 0; i < count; i++) {
            Background background = Background.read(sounds.get(dice.nextInt(sounds.size())));
            int blades = 3 + dice.nextInt(3);
            Machine machine =
                    Machine.random(seed * 1000 + i, Machine.Cycle.FOUR_STROKE, 4, Machine.Drive.TEETH, blades);
            double[] strength = new double[blades];
            Arrays.fill(strength, 1);
            int odd = dice.nextInt(blades);
            double by = i % 2 == 0 ? 0.02 * Math.pow(10, dice.nextDouble()) : 0;
            strength[odd] += dice.nextBoolean() ? by : -by;
            double levelDb = -3 + 9 * dice.nextDouble();
            double rpm = machine.maxRpm() * (0.6 + 0.3 * dice.nextDouble());
            GroundRun run = Rig.of(machine, seed * 1000 + i)
                    .program(SpeedProgram.still().hold(rpm, SECONDS).wandering(0.004, 4))
                    .sources(BladePulses.of(
                            machine, 0.1, 0.015 + 0.015 * dice.nextDouble(), strength, new double[blades]))
                    .plus(LineSource.line(Shaft.CRANK, 2, 0.05, 30, 0.05))
                    .plus(LineSource.line(Shaft.CRANK, 4, 0.02, 100, 0.05))
                    .sensors(Sensor.microphone("microphone", 70), Sensor.mark("mark", Shaft.PROPELLER))
                    .sampling(Sampling.even(background.rateHz()))
                    .with(background.behind(levelDb))
                    .make();
            Path file = run.writeWav(folder.resolve("blade.wav"));
            Path installation = Files.writeString(folder.resolve("installation.json"), machine.installationJson());
            Optional<BladeShares> shares = AnalyseRecording.analyse(new AnalysisRequest(
                            file,
                            InstallationFile.read(installation),
                            OptionalDouble.empty(),
                            OptionalDouble.empty(),
                            AnalysisRequest.DEFAULT_TOLERANCE_PERCENT,
                            List.of("1"),
                            Optional.of("2"),
                            Optional.empty(),
                            TableReading.UNSAID,
                            Optional.empty(),
                            List.of()))
                    .orders()
                    .channels()
                    .stream()
                    .flatMap(c -> c.dwells().stream())
                    .flatMap(d -> d.blades().stream())
                    .findFirst();
            all.add(outcome(
                    String.format(Locale.ROOT, "%s %d blades %.3f at %.0f dB", background.name(), blades, by, levelDb),
                    shares,
                    odd,
                    (strength[odd] - 1) * (blades - 1) / blades,
                    blades));
            System.out.println(all.get(all.size() - 1));
        }
        return all;
    }

    private static Outcome outcome(String what, Optional<BladeShares> shares, int odd, double truly, int blades) {
        if (shares.isEmpty()) {
            return new Outcome(what + " (no blades seen)", 0, false, false);
        }
        int at = 0;
        for (int b = 0; b < blades; b++) {
            double off = shares.get().shares().get(b).atTurns() - (double) odd / blades;
            at = Math.abs(off - Math.rint(off)) < 0.5 / blades ? b : at;
        }
        double out = Math.abs(truly) / shares.get().shares().get(at).strength().standardError();
        Optional<Integer> named =
                shares.get().standsOut(true).or(() -> shares.get().standsOut(false));
        return new Outcome(what, out, named.isPresent(), named.isPresent() && named.get() == at);
    }

    public static void main(String[] args) throws IOException {
        Path folder = Files.createTempDirectory("blades");
        List<Outcome> all = new BladeNamesBench(folder).tries(Integer.parseInt(args[0]), Long.parseLong(args[1]));
        report(all);
    }

    /** What is kept in docs/. */
    static void report(List<Outcome> all) {
        System.out.printf(
                Locale.ROOT,
                "alike: named %d of %d; named at all where one is odd: %d right, %d wrong%n",
                all.stream().filter(o -> o.out() == 0 && o.named()).count(),
                all.stream().filter(o -> o.out() == 0).count(),
                all.stream().filter(o -> o.out() > 0 && o.right()).count(),
                all.stream().filter(o -> o.out() > 0 && o.named() && !o.right()).count());
        for (double[] band : new double[][] {{0.0001, 3}, {3, 4.5}, {4.5, 6}, {6, 1e9}}) {
            List<Outcome> in = all.stream()
                    .filter(o -> o.out() >= band[0] && o.out() < band[1])
                    .toList();
            System.out.printf(
                    Locale.ROOT,
                    "stands %.1f to %.1f errors out: %d tries, named right %d, wrong %d%n",
                    band[0],
                    band[1],
                    in.size(),
                    in.stream().filter(Outcome::right).count(),
                    in.stream().filter(o -> o.named() && !o.right()).count());
        }
    }
}
