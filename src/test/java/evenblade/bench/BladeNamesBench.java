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
     * @param attainable share in which chance lets it be named right at all
     */
    record Outcome(String what, int blades, double out, boolean named, boolean right, double attainable) {}

    /** A machine in a sound, all blades alike so far. */
    private record Setting(
            Background background, Machine machine, double levelDb, double rpm, double width, long seed) {}

    /** Each setting twice: with blades alike, then with one that stands out by 2.5 to 6 of the errors found there. */
    List<Outcome> tries(int settings, long seed) throws IOException {
        List<Path> sounds = new ArrayList<>(ConfirmationBench.sounds(false));
        sounds.addAll(ConfirmationBench.sounds(true));
        List<Outcome> all = new ArrayList<>();
        Random dice = new Random(seed);
        for (int i = 0; i < settings; i++) {
            Background background = Background.read(sounds.get(dice.nextInt(sounds.size())));
            int blades = 3 + dice.nextInt(3);
            Machine machine =
                    Machine.random(seed * 1000 + i, Machine.Cycle.FOUR_STROKE, 4, Machine.Drive.TEETH, blades);
            Setting setting = new Setting(
                    background,
                    machine,
                    -3 + 9 * dice.nextDouble(),
                    machine.maxRpm() * (0.6 + 0.3 * dice.nextDouble()),
                    0.015 + 0.015 * dice.nextDouble(),
                    seed * 1000 + i);
            Optional<BladeShares> alike = shares(setting, 0, 0, 0);
            double out = (dice.nextBoolean() ? 1 : -1) * (2.5 + 3.5 * dice.nextDouble());
            int odd = dice.nextInt(blades);
            if (alike.isEmpty()) {
                continue;
            }
            all.add(outcome(setting, alike.get(), odd, 0));
            double by = out * alike.get().shares().get(0).strength().standardError() * blades / (blades - 1);
            Optional<BladeShares> found = shares(setting, odd, by, 500);
            if (found.isPresent()) {
                all.add(outcome(setting, found.get(), odd, by * (blades - 1) / blades));
            }
        }
        return all;
    }

    private Optional<BladeShares> shares(Setting s, int odd, double by, int otherNoise) throws IOException {
        double[] strength = new double[s.machine().blades()];
        Arrays.fill(strength, 1);
        strength[odd] += by;
        GroundRun run = Rig.of(s.machine(), s.seed() + otherNoise)
                .program(SpeedProgram.still().hold(s.rpm(), SECONDS).wandering(0.004, 4))
                .sources(BladePulses.of(s.machine(), 0.1, s.width(), strength, new double[strength.length]))
                .plus(LineSource.line(Shaft.CRANK, 2, 0.05, 30, 0.05))
                .plus(LineSource.line(Shaft.CRANK, 4, 0.02, 100, 0.05))
                .sensors(Sensor.microphone("microphone", 70), Sensor.mark("mark", Shaft.PROPELLER))
                .sampling(Sampling.even(s.background().rateHz()))
                .with(s.background().behind(s.levelDb()))
                .make();
        Path file = run.writeWav(folder.resolve("blade.wav"));
        Path installation = Files.writeString(
                folder.resolve("installation.json"), s.machine().installationJson());
        return AnalyseRecording.analyse(new AnalysisRequest(
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
    }

    private static Outcome outcome(Setting s, BladeShares shares, int odd, double truly) {
        int blades = s.machine().blades();
        int at = 0;
        for (int b = 0; b < blades; b++) {
            double off = shares.shares().get(b).atTurns() - (double) odd / blades;
            at = Math.abs(off - Math.rint(off)) < 0.5 / blades ? b : at;
        }
        double out = Math.abs(truly) / shares.shares().get(at).strength().standardError();
        Optional<Integer> named = shares.standsOut(true).or(() -> shares.standsOut(false));
        Outcome one = new Outcome(
                String.format(Locale.ROOT, "%s %.3f at %.0f dB", s.background().name(), truly, s.levelDb()),
                blades,
                out,
                named.isPresent(),
                named.isPresent() && named.get() == at,
                BladeNameLimit.of(blades, 0.05).namedRight(out));
        System.out.println(one);
        return one;
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
        for (double[] band : new double[][] {{0.0001, 3}, {3, 3.75}, {3.75, 4.5}, {4.5, 6}, {6, 1e9}}) {
            List<Outcome> in = all.stream()
                    .filter(o -> o.out() >= band[0] && o.out() < band[1])
                    .toList();
            System.out.printf(
                    Locale.ROOT,
                    "stands %.2f to %.2f errors out: %d tries, named right %d, wrong %d; attainable %.1f%n",
                    band[0],
                    band[1],
                    in.size(),
                    in.stream().filter(Outcome::right).count(),
                    in.stream().filter(o -> o.named() && !o.right()).count(),
                    in.stream().mapToDouble(Outcome::attainable).sum());
        }
    }
}
