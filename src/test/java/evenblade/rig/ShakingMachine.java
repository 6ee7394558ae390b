package evenblade.rig;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A whole machine that shakes by the laws of a rigid body: propeller and engine forces in, acceleration at a triaxial
 * sensor out. Sound machines have their usual small unbalances and firing pulses; faults add to them.
 */
public final class ShakingMachine implements LineSource {
    /** Where the sensor sits. */
    public enum Seat {
        GEARBOX,
        CRANKCASE,
        FRONT
    }

    private final Machine machine;
    private final long seed;
    private final Body body;
    private final PropellerForces propeller;
    private final EngineForces engine;
    private final double[] discPlace;
    private final Seat seat;
    private final double[] sensorPlace;
    private final double[][] sensorAxes;
    private final List<Fault> faults;

    private ShakingMachine(
            Machine machine,
            long seed,
            Body body,
            PropellerForces propeller,
            EngineForces engine,
            double[] discPlace,
            Seat seat,
            double[] sensorPlace,
            double[][] sensorAxes,
            List<Fault> faults) {
        this.machine = machine;
        this.seed = seed;
        this.body = body;
        this.propeller = propeller;
        this.engine = engine;
        this.discPlace = discPlace;
        this.seat = seat;
        this.sensorPlace = sensorPlace;
        this.sensorAxes = sensorAxes;
        this.faults = faults;
    }

    /** A sound machine: body, mounts, seat of the sensor by chance. */
    public static ShakingMachine sound(Machine machine, long seed) {
        Dice dice = new Dice(seed).fork(91);
        double mass = dice.uniform(60, 110);
        double[] disc = {dice.uniform(0.4, 0.6), 0, dice.uniform(0.02, 0.12)};
        double[] mesh = {disc[0] - 0.15, 0, disc[2] / 2};
        double[] crank = {dice.uniform(-0.05, 0.08), 0, dice.uniform(-0.04, 0.02)};
        double bounceHz = dice.uniform(7, 12);
        double stiffness = mass * Math.pow(2 * Math.PI * bounceHz, 2) / 4;
        double loss = dice.uniform(0.08, 0.2);
        double half = dice.uniform(0.13, 0.2);
        double length = dice.uniform(0.1, 0.18);
        double low = dice.uniform(-0.18, -0.05);
        List<Body.Mount> mounts = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            double k = stiffness * dice.uniform(0.9, 1.1);
            mounts.add(new Body.Mount(
                    i < 2 ? length : -length,
                    i % 2 == 0 ? half : -half,
                    low,
                    k * dice.uniform(0.7, 1.3),
                    k * dice.uniform(0.6, 1),
                    k,
                    loss));
        }
        Body body = new Body(
                mass,
                mass * Math.pow(dice.uniform(0.14, 0.2), 2),
                mass * Math.pow(dice.uniform(0.2, 0.28), 2),
                mass * Math.pow(dice.uniform(0.2, 0.28), 2),
                mounts);
        Seat seat = dice.pick(List.of(Seat.values()));
        double[] place =
                switch (seat) {
                    case GEARBOX ->
                        new double[] {disc[0] - dice.uniform(0.08, 0.2), dice.uniform(-0.08, 0.08), disc[2] + 0.1};
                    case CRANKCASE ->
                        new double[] {dice.uniform(-0.12, 0.12), dice.uniform(-0.12, 0.12), dice.uniform(0.05, 0.15)};
                    case FRONT ->
                        new double[] {dice.uniform(0.18, 0.28), dice.uniform(-0.12, 0.12), dice.uniform(-0.12, 0.05)};
                };
        return new ShakingMachine(
                machine,
                seed,
                body,
                PropellerForces.sound(machine, disc, dice.fork(1)),
                EngineForces.sound(machine, crank, mesh, dice.fork(2)),
                disc,
                seat,
                place,
                tilted(dice.fork(3)),
                List.of());
    }

    /** Directions forward, right, up of a sensor that is stuck on some degrees askew (rotations about z, then y, then x). */
    private static double[][] tilted(Dice dice) {
        double[] a = {dice.uniform(-0.1, 0.1), dice.uniform(-0.1, 0.1), dice.uniform(-0.1, 0.1)};
        double[][] axes = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
        for (int about = 0; about < 3; about++) {
            int p = (about + 1) % 3;
            int q = (about + 2) % 3;
            for (double[] axis : axes) {
                double keep = axis[p];
                axis[p] = keep * Math.cos(a[about]) - axis[q] * Math.sin(a[about]);
                axis[q] = keep * Math.sin(a[about]) + axis[q] * Math.cos(a[about]);
            }
        }
        return axes;
    }

    /** The same machine with one more fault. */
    public ShakingMachine with(Fault fault) {
        List<Fault> more = new ArrayList<>(faults);
        more.add(fault);
        Body changed =
                switch (fault.kind()) {
                    case MOUNT_RESONANCE -> resonant(fault.size());
                    case LOOSE_MOUNT -> loosened((int) fault.place());
                    default -> body;
                };
        return new ShakingMachine(
                machine,
                seed,
                changed,
                propeller.with(fault),
                engine.with(fault),
                discPlace,
                seat,
                sensorPlace,
                sensorAxes,
                List.copyOf(more));
    }

    private Body loosened(int mount) {
        List<Body.Mount> mounts = new ArrayList<>(body.mounts());
        mounts.set(mount, mounts.get(mount).times(0.4)); // bears only part of the time
        return body.on(mounts);
    }

    /** Scales all mounts until a force across the disc shakes the sensor most at the speed wished for; loss 0.04. */
    private Body resonant(double shareOfMax) {
        double omega = machine.maxRpm() * shareOfMax / machine.ratio() / 60 * 2 * Math.PI;
        Phasor[] across = Body.forceAt(discPlace, Phasor.ZERO, new Phasor(1, 0), new Phasor(0, -1));
        Body best = body;
        double most = 0;
        for (double factor = 0.3; factor < 40; factor *= 1.02) {
            double scale = factor;
            Body tried = body.on(body.mounts().stream()
                    .map(m -> m.times(scale).withLoss(0.04))
                    .toList());
            double size = 0;
            for (double[] axis : sensorAxes) {
                size += Math.pow(
                        tried.acceleration(omega, across, sensorPlace, axis).amplitude(), 2);
            }
            if (size > most) {
                most = size;
                best = tried;
            }
        }
        return best;
    }

    public List<Fault> faults() {
        return faults;
    }

    public Seat seat() {
        return seat;
    }

    /** A rig with this machine, a triaxial accelerometer (along, across, up) and a mark; program by chance. */
    public Rig rig(long runSeed) {
        return Rig.of(machine, runSeed)
                .sources(this)
                .sensors(
                        Sensor.accelerometer("along", Axis.FORWARD), Sensor.accelerometer("across", Axis.RIGHT),
                        Sensor.accelerometer("up", Axis.UP), Sensor.mark("mark", Shaft.PROPELLER))
                .facts(facts());
    }

    /** Faults with sizes, the sensor's seat, the blades as they are. */
    public Map<String, Object> facts() {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put(
                "faults",
                faults.stream()
                        .map(f -> Map.of("kind", f.kind(), "size", f.size(), "place", f.place()))
                        .toList());
        facts.put("sensorSeat", seat);
        facts.put("sensorPlaceM", List.of(sensorPlace[0], sensorPlace[1], sensorPlace[2]));
        facts.put("mountHeightM", body.mounts().get(0).z());
        facts.put("massKg", body.massKg());
        List<Double> track = new ArrayList<>();
        List<Double> pitch = new ArrayList<>();
        for (int b = 0; b < machine.blades(); b++) {
            track.add(propeller.trackOf(b) * 1000);
            pitch.add(Math.toDegrees(propeller.pitchOf(b)));
        }
        facts.put("trackMm", track);
        facts.put("pitchDeviationDeg", pitch);
        facts.put("unbalanceGmm", propeller.unbalance().amplitude() * 1e6);
        facts.put("unbalanceDeg", propeller.unbalance().phaseDeg());
        return facts;
    }

    /** Tip track of each blade in mm forward, flange and blade together: what a block under the tips would show. */
    public double trackMm(int blade) {
        return propeller.trackOf(blade) * 1000;
    }

    /** Acceleration of one line at a speed, m/s²: for checks without making a run. Coinciding parts of one id only. */
    public Phasor propellerLine(int order, double engineRpm, Axis axis) {
        return felt(propeller.at(order, engineRpm), new LineId(Shaft.PROPELLER, order), engineRpm, axis);
    }

    private Phasor felt(Phasor[] force, LineId id, double engineRpm, Axis axis) {
        if (axis == Axis.SOUND) {
            return Phasor.ZERO; // this model makes no sound
        }
        double omega = id.propellerOrder(machine.ratio()) * engineRpm / machine.ratio() / 60 * 2 * Math.PI;
        return body.acceleration(omega, force, sensorPlace, sensorAxes[axis.ordinal()]);
    }

    @Override
    public List<Line> lines(SpeedTrack track, Dice dice) {
        List<Line> lines = new ArrayList<>();
        for (int order = 1; order <= propeller.highestOrder(); order++) {
            int k = order;
            LineId id = new LineId(Shaft.PROPELLER, k);
            lines.add(Line.swinging(
                    id,
                    (rpm, axis) -> felt(propeller.at(k, rpm), id, rpm, axis),
                    track,
                    k == 1 ? 0.01 : 0.04,
                    0.6,
                    dice.fork(k)));
        }
        LineId once = new LineId(Shaft.CRANK, 1);
        lines.add(Line.swinging(
                once, (rpm, axis) -> felt(engine.crankOnce(rpm), once, rpm, axis), track, 0.01, 0.6, dice.fork(1001)));
        if (engine.strength().length > 0) {
            LineId twice = new LineId(Shaft.CRANK, 2);
            lines.add(Line.swinging(
                    twice,
                    (rpm, axis) -> felt(engine.crankTwice(rpm), twice, rpm, axis),
                    track,
                    0.01,
                    0.6,
                    dice.fork(1002)));
            int highest = (int) Math.round(3 * machine.firingOrder() * machine.cycle().turnsPerCycle);
            lines.addAll(new Combustion(
                            machine,
                            engine.strength(),
                            engine.cycleVariation(),
                            (order, rpm, axis) ->
                                    felt(engine.firing(order, rpm), new LineId(Shaft.CRANK, order), rpm, axis),
                            highest)
                    .lines(track, dice.fork(1003)));
        }
        if (machine.drive() == Machine.Drive.TEETH || machine.drive() == Machine.Drive.DECIMALS) {
            mesh(lines, track, dice);
        }
        if (engine.looseness() > 0) {
            knocks(lines, track, dice);
        }
        return lines;
    }

    private void mesh(List<Line> lines, SpeedTrack track, Dice dice) {
        Shaft shaft = engine.drivenWheel() ? Shaft.PROPELLER : Shaft.CRANK;
        int teeth = engine.drivenWheel() ? machine.drivenTeeth() : machine.drivingTeeth();
        double depth = engine.modulation();
        double[] share = {depth * depth / 8, depth / 2, 1, depth / 2, depth * depth / 8};
        for (int side = -2; side <= 2; side++) {
            LineId id = new LineId(shaft, teeth + side);
            double size = share[side + 2];
            lines.add(Line.swinging(
                    id,
                    (rpm, axis) -> felt(engine.mesh(rpm), id, rpm, axis).times(size),
                    track,
                    0.05,
                    0.6,
                    dice.fork(2000 + side)));
        }
    }

    private void knocks(List<Line> lines, SpeedTrack track, Dice dice) {
        Body.Mount mount = body.mounts().get(engine.looseMount());
        double[] place = {mount.x(), mount.y(), mount.z()};
        double[] strength = Wander.bounded(track.points(), SpeedTrack.STEP_S, 0.1, 0.3, dice.fork(3000));
        for (int i = 0; i < strength.length; i++) {
            strength[i] += 1;
        }
        for (int k = 1; k <= 12; k++) {
            LineId id = new LineId(Shaft.CRANK, k / 2.0);
            lines.add(new Line(
                    id,
                    (rpm, axis) -> felt(engine.knock(id.order(), rpm, place), id, rpm, axis),
                    strength,
                    new double[strength.length]));
        }
    }
}
