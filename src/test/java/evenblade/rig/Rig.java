package evenblade.rig;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * Sets up an invented machine with sensors and makes runs of it. Each setter gives a new rig; the machine's own strengths
 * depend on the machine seed, what swings and the noise on the run seed.
 */
public final class Rig {
    private final long runSeed;
    private final Machine machine;
    private final SpeedProgram program;
    private final double ratioWander;
    private final List<LineSource> sources;
    private final List<Sensor> sensors;
    private final Sampling sampling;
    private final List<Disturbance> disturbances;
    private final Function<LineId, Phasor> factor;
    private final Map<String, Object> facts;

    private Rig(
            long runSeed,
            Machine machine,
            SpeedProgram program,
            double ratioWander,
            List<LineSource> sources,
            List<Sensor> sensors,
            Sampling sampling,
            List<Disturbance> disturbances,
            Function<LineId, Phasor> factor,
            Map<String, Object> facts) {
        this.runSeed = runSeed;
        this.machine = machine;
        this.program = program;
        this.ratioWander = ratioWander;
        this.sources = List.copyOf(sources);
        this.sensors = List.copyOf(sensors);
        this.sampling = sampling;
        this.disturbances = List.copyOf(disturbances);
        this.factor = factor;
        this.facts = new LinkedHashMap<>(facts);
    }

    /** A machine, its lines, its speed program and its sensor, all by chance. */
    public static Rig random(long seed) {
        Rig rig = of(Machine.random(seed), seed);
        Dice dice = new Dice(seed).fork(41);
        Sensor microphone = Sensor.microphone("microphone", dice.uniform(60, 100));
        double quiet = dice.logUniform(0.2, 2);
        return switch (dice.between(0, 3)) {
            case 0 ->
                rig.sensors(microphone.with(microphone.floor().times(quiet))).sampling(Sampling.even(8000));
            case 1 ->
                rig.sensors(Sensor.phone("x", Axis.RIGHT), Sensor.phone("y", Axis.FORWARD), Sensor.phone("z", Axis.UP))
                        .sampling(Sampling.phone(dice.logUniform(100, 500), dice.uniform(0, 0.15)));
            case 2 -> rig.sensors(Sensor.accelerometer("up", Axis.UP), Sensor.mark("mark", Shaft.PROPELLER));
            default -> rig.sensors(Sensor.accelerometer("up", Axis.UP));
        };
    }

    /** A given machine with lines of random strength, a random speed program, one accelerometer at 8 kHz. */
    public static Rig of(Machine machine, long seed) {
        Dice dice = new Dice(seed).fork(42);
        double creep = machine.drive().belt() ? dice.uniform(0.0025, 0.005) / 2 : 0;
        return new Rig(
                seed,
                machine,
                SpeedProgram.random(machine, seed),
                creep,
                List.of(new RandomLines(machine, seed)),
                List.of(Sensor.accelerometer("up", Axis.UP)),
                Sampling.even(8000),
                List.of(),
                id -> new Phasor(1, 0),
                Map.of());
    }

    /**
     * The random lines of a machine with a stated swing of their strengths (deviation as share, memory in s; combustion
     * varies from cycle to cycle besides). For {@link #sources}.
     */
    public static LineSource randomLines(Machine machine, long seed, double swing, double memoryS) {
        return new RandomLines(machine, seed, swing, memoryS);
    }

    /** Another day: other noise, other wander, other start, the same machine. */
    public Rig runSeed(long seed) {
        return new Rig(seed, machine, program, ratioWander, sources, sensors, sampling, disturbances, factor, facts);
    }

    public Machine machine() {
        return machine;
    }

    public SpeedProgram program() {
        return program;
    }

    public List<Sensor> sensors() {
        return sensors;
    }

    public Sampling sampling() {
        return sampling;
    }

    /** The same machine, told otherwise in its installation (entered ratio). The lines don't change. */
    public Rig told(Machine other) {
        return new Rig(runSeed, other, program, ratioWander, sources, sensors, sampling, disturbances, factor, facts);
    }

    public Rig program(SpeedProgram other) {
        return new Rig(runSeed, machine, other, ratioWander, sources, sensors, sampling, disturbances, factor, facts);
    }

    /** Standard deviation of the slow wander of the drive's ratio (share). */
    public Rig ratioWander(double deviation) {
        return new Rig(runSeed, machine, program, deviation, sources, sensors, sampling, disturbances, factor, facts);
    }

    /** What shakes, in place of the random lines. */
    public Rig sources(LineSource... others) {
        return new Rig(
                runSeed,
                machine,
                program,
                ratioWander,
                List.of(others),
                sensors,
                sampling,
                disturbances,
                factor,
                facts);
    }

    /** One more thing that shakes. */
    public Rig plus(LineSource source) {
        List<LineSource> more = new ArrayList<>(sources);
        more.add(source);
        return new Rig(runSeed, machine, program, ratioWander, more, sensors, sampling, disturbances, factor, facts);
    }

    public Rig sensors(Sensor... others) {
        return new Rig(
                runSeed,
                machine,
                program,
                ratioWander,
                sources,
                List.of(others),
                sampling,
                disturbances,
                factor,
                facts);
    }

    public Rig sampling(Sampling other) {
        return new Rig(runSeed, machine, program, ratioWander, sources, sensors, other, disturbances, factor, facts);
    }

    public Rig with(Disturbance disturbance) {
        List<Disturbance> more = new ArrayList<>(disturbances);
        more.add(disturbance);
        return new Rig(runSeed, machine, program, ratioWander, sources, sensors, sampling, more, factor, facts);
    }

    /** A complex factor for each line, the same on all channels, on top of the factors already set. */
    public Rig factor(Function<LineId, Phasor> other) {
        return new Rig(
                runSeed,
                machine,
                program,
                ratioWander,
                sources,
                sensors,
                sampling,
                disturbances,
                id -> factor.apply(id).times(other.apply(id)),
                facts);
    }

    /** A fact for the truth record. */
    public Rig fact(String name, Object value) {
        Map<String, Object> more = new LinkedHashMap<>(facts);
        more.put(name, value);
        return new Rig(runSeed, machine, program, ratioWander, sources, sensors, sampling, disturbances, factor, more);
    }

    /** Facts for the truth record, for example {@code pulses.facts()}. */
    public Rig facts(Map<String, Object> others) {
        Map<String, Object> more = new LinkedHashMap<>(facts);
        more.putAll(others);
        return new Rig(runSeed, machine, program, ratioWander, sources, sensors, sampling, disturbances, factor, more);
    }

    /** The engine stands still: noise and disturbances only. */
    public Rig standing() {
        return sources();
    }

    public GroundRun make() {
        Dice dice = new Dice(runSeed).fork(51);
        SpeedTrack track = SpeedTrack.of(program, machine, ratioWander, dice.fork(1));
        double[] times = sampling.trueTimes(program.seconds(), dice.fork(2));
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < sources.size(); i++) {
            lines.addAll(sources.get(i).lines(track, dice.fork(100 + i)));
        }
        Disturbance.Scene scene = new Disturbance.Scene(
                machine,
                track,
                sensors.toArray(Sensor[]::new),
                new Disturbance.Times(times),
                sampling.rateHz(),
                dice.fork(3));
        Synthesis synthesis = new Synthesis(times, track);
        double[][] x = new double[sensors.size()][times.length];
        TruthBook book = new TruthBook(track, machine, ratioWander);
        for (int c = 0; c < x.length; c++) {
            Sensor sensor = sensors.get(c);
            Dice own = dice.fork(1000 + c);
            boolean mark = sensor.kind() == Sensor.Kind.MARK;
            if (mark) {
                synthesis.addMark(x[c], sensor, own.fork(1));
            } else {
                book.add(sensor.name(), synthesis.add(x[c], lines, sensor, machine, factor));
                disturb(scene, c, x[c], Disturbance.Place.OUTSIDE, own);
            }
            sensor.floor().addTo(x[c], sampling.rateHz(), own.fork(2));
            if (!mark) {
                disturb(scene, c, x[c], Disturbance.Place.SENSOR, own);
            }
            for (int i = 0; i < x[c].length; i++) {
                x[c][i] += sensor.offset();
            }
        }
        Truth truth = new Truth(
                runSeed,
                machine,
                !sources.isEmpty(),
                track,
                book.dwells(),
                disturbances.stream().map(Disturbance::truth).toList(),
                Map.copyOf(facts));
        return new GroundRun(sampling, sensors, times, x, truth);
    }

    private void disturb(Disturbance.Scene scene, int channel, double[] x, Disturbance.Place place, Dice dice) {
        for (int i = 0; i < disturbances.size(); i++) {
            if (disturbances.get(i).place() == place) {
                disturbances.get(i).apply(scene, channel, x, dice.fork(200 + i));
            }
        }
    }
}
