package evenblade.rig;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Another machine in the same place, with its own speed: a second engine, a fan, a compressor. Level: root mean square
 * over that of the own machine's lines on the channel; absolute behind a standing machine (so a standing rig with another
 * machine is that machine alone).
 */
public final class OtherMachine implements Disturbance {
    private final String kind;
    private final Machine machine;
    private final LineSource source;
    private final SpeedProgram program;
    private final double level;
    private final Map<String, Object> truth = new LinkedHashMap<>();

    private OtherMachine(String kind, Machine machine, LineSource source, SpeedProgram program, double level) {
        this.kind = kind;
        this.machine = machine;
        this.source = source;
        this.program = program;
        this.level = level;
        truth.put("kind", kind);
        truth.put("level", level);
        truth.put("otherRpm", program.steps().get(0).engineRpm());
    }

    /**
     * The second engine of the same type: the same program but every line of it lies apart; its firing line (crank 1× of
     * an electric motor) lies {@code apartHz} above ours at the first hold; strengths and wander are its own.
     */
    public static OtherMachine secondEngine(
            Machine ours, SpeedProgram program, double apartHz, double level, long seed) {
        double order = ours.firingOrder() > 0 ? ours.firingOrder() : 1;
        double first = program.steps().get(0).engineRpm();
        SpeedProgram other = program.scaled(1 + apartHz / (order * first / 60));
        OtherMachine second = new OtherMachine("second-engine", ours, new RandomLines(ours, seed), other, level);
        second.truth.put("apartHzAtFiring", apartHz);
        return second;
    }

    /** Any other ground-running engine at its own speeds. */
    public static OtherMachine engine(Machine other, double seconds, double level, long seed) {
        Dice dice = new Dice(seed).fork(61);
        SpeedProgram steady = SpeedProgram.still()
                .hold(dice.uniform(other.idleRpm(), other.maxRpm()), seconds)
                .wandering(dice.uniform(0, 0.006), 4);
        return new OtherMachine("other-engine", other, new RandomLines(other, seed), steady, level);
    }

    /** A fan driven by an asynchronous motor on a 50 or 60 Hz grid: 4 poles, slip 2–6 %, 5–12 blades, shaft 1× and 2×. */
    public static OtherMachine fan(double gridHz, double seconds, double level, long seed) {
        Dice dice = new Dice(seed).fork(62);
        double rpm = gridHz * 30 * (1 - dice.uniform(0.02, 0.06));
        int blades = dice.between(5, 12);
        Map<Double, Double> sizes = new LinkedHashMap<>();
        sizes.put(1.0, 0.4);
        sizes.put(2.0, 0.15);
        for (int k = 1; k <= 3; k++) {
            sizes.put((double) k * blades, Math.pow(0.4, k - 1.0));
        }
        return steady("fan", rpm, 0.001, sizes, seconds, level, dice);
    }

    /** A piston compressor: 600–1400 rpm, two strokes a turn, many harmonics, belt at 0.3–0.45 of the shaft. */
    public static OtherMachine compressor(double seconds, double level, long seed) {
        Dice dice = new Dice(seed).fork(63);
        Map<Double, Double> sizes = new LinkedHashMap<>();
        sizes.put(dice.uniform(0.3, 0.45), 0.1);
        for (int k = 1; k <= 16; k++) {
            sizes.put((double) k, (k % 2 == 0 ? 1 : 0.4) * dice.logUniform(0.3, 1) * Math.pow(k, -0.5));
        }
        return steady("compressor", dice.uniform(600, 1400), 0.003, sizes, seconds, level, dice);
    }

    private static OtherMachine steady(
            String kind,
            double rpm,
            double wander,
            Map<Double, Double> sizes,
            double seconds,
            double level,
            Dice dice) {
        Machine motor = new Machine(
                kind, Machine.Cycle.ELECTRIC, 1, rpm * 0.9, rpm * 1.1, Machine.Drive.DIRECT, 1, 1, 1, 1, 2, 1, true);
        List<LineId> ids = new ArrayList<>();
        List<Phasor> strengths = new ArrayList<>();
        sizes.forEach((order, size) -> {
            ids.add(new LineId(Shaft.CRANK, order));
            strengths.add(Phasor.polar(size, dice.angle()));
        });
        LineSource source = (track, d) -> {
            List<Line> lines = new ArrayList<>();
            for (int i = 0; i < ids.size(); i++) {
                Phasor z = strengths.get(i);
                lines.add(Line.swinging(ids.get(i), (r, axis) -> z, track, 0.05, 1, d.fork(i)));
            }
            return lines;
        };
        return new OtherMachine(
                kind, motor, source, SpeedProgram.still().hold(rpm, seconds).wandering(wander, 5), level);
    }

    @Override
    public Place place() {
        return Place.OUTSIDE;
    }

    @Override
    public void apply(Scene scene, int channel, double[] x, Dice dice) {
        Dice common = scene.dice().fork(8_000L + kind.hashCode());
        SpeedProgram longEnough = program.seconds() >= scene.track().seconds()
                ? program
                : program.hold(
                        program.steps().get(program.steps().size() - 1).engineRpm(),
                        scene.track().seconds() - program.seconds() + 1);
        SpeedTrack track = SpeedTrack.of(longEnough, machine, 0, common.fork(1));
        double[] own = new double[x.length];
        new Synthesis(scene.times().seconds, track)
                .add(
                        own,
                        source.lines(track, common.fork(2)),
                        scene.sensors()[channel],
                        machine,
                        id -> new Phasor(1, 0));
        double factor = Levels.factor(x, level, Levels.rms(own));
        for (int i = 0; i < x.length; i++) {
            x[i] += factor * own[i];
        }
    }

    @Override
    public Map<String, Object> truth() {
        return Map.copyOf(truth);
    }
}
