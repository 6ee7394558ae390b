package evenblade.judge.findings;

import evenblade.base.numeric.Phasor;
import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import evenblade.base.units.SignalUnit;
import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.judge.findings.RunEvidence.RunRef;
import evenblade.judge.tracking.FaceRunOut;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.PitchReadings;
import evenblade.judge.tracking.RunOutTest;
import evenblade.judge.tracking.SwapFit;
import evenblade.judge.tracking.TrackingAnalysis;
import evenblade.judge.tracking.TrackingSession;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.SensorPlace;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.DwellOrders.UnexplainedLine;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.speed.Dwell;
import evenblade.rig.Fault;
import evenblade.rig.Machine;
import evenblade.rig.Sampling;
import evenblade.rig.Shaft;
import evenblade.rig.ShakingMachine;
import evenblade.rig.SpeedProgram;
import evenblade.rig.Truth;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;

/**
 * One job on a machine of the rig, whose makers didn't see the rules: one run with three dwells of 20 s and three
 * directions. The lines are taken from the rig's own record of what it made, with the scatter of a good measurement added
 * (1 % and 0.003 m/s²), so that the rules alone are judged; how well lines are measured is judged elsewhere.
 */
record RigCase(
        Installation installation,
        List<Fault> faults,
        ShakingMachine.Seat seat,
        double madeMmS,
        double ownOnceMmS,
        RunEvidence run,
        StaticEvidence still) {
    private static final Instant MORNING = Instant.parse("2026-05-04T08:00:00Z");
    private static final double SCATTER = 0.01;
    /** Standard error of a line in a dwell of 20 s over the rig's noise, rounded up. */
    private static final double FLOOR_MS2 = 0.003;

    private static final double DWELL_S = 20;
    /** The rig's record needs no long dwell: it has no noise. */
    private static final double MADE_S = 5;

    /** The mark sessions' usual pencil, mm, and the protractor's usual reading error, degrees. */
    private static final double PENCIL_MM = 0.4;

    private static final double PROTRACTOR_DEG = 0.07;
    private static final double DIAL_RADIUS_M = 0.05;

    static RigCase of(long seed, List<Fault.Kind> kinds) {
        Machine machine = Machine.random(seed);
        ShakingMachine shaking = ShakingMachine.sound(machine, seed);
        for (Fault.Kind kind : kinds) {
            shaking = shaking.with(Fault.random(kind, machine, seed));
        }
        Random errors = new Random(seed);
        Installation installation = installation(machine, shaking.facts());
        Truth truth = truth(shaking, machine, seed);
        RunEvidence run = new RunEvidence(
                new RunRef("e1", "run"),
                MORNING.plusSeconds(7200),
                Optional.empty(),
                List.of(),
                numbers(truth, installation, errors),
                Map.of("along", Direction.ALONG, "across", Direction.ACROSS, "up", Direction.UP),
                false);
        Truth sound = truth(ShakingMachine.sound(machine, seed), machine, seed);
        return new RigCase(
                installation,
                shaking.faults(),
                shaking.seat(),
                made(truth, sound),
                once(sound),
                run,
                still(machine, shaking, truth, errors));
    }

    private static Truth truth(ShakingMachine shaking, Machine machine, long seed) {
        return shaking.rig(seed)
                .program(program(machine))
                .sampling(Sampling.even(50))
                .make()
                .truth();
    }

    /** What the faults change: the largest difference of any line in any direction and dwell, as vectors, mm/s. */
    private static double made(Truth faulty, Truth sound) {
        double most = 0;
        for (int d = 0; d < faulty.dwells().size(); d++) {
            Truth.Dwell was = sound.dwells().get(d);
            for (String channel : List.of("along", "across", "up")) {
                for (Truth.LineTruth l : faulty.dwells().get(d).channels().get(channel)) {
                    Phasor now = phasor(l);
                    Phasor before = was.line(channel, l.id().shaft(), l.id().order())
                            .map(RigCase::phasor)
                            .orElse(new Phasor(0, 0));
                    double change = now.minus(before).magnitude();
                    most = Math.max(most, 1000 * change / (2 * Math.PI * l.frequencyHz()));
                }
            }
        }
        return most;
    }

    /** Propeller 1× of the machine before any fault, the largest of all directions and dwells, mm/s. */
    private static double once(Truth sound) {
        return sound.dwells().stream()
                .flatMap(d ->
                        List.of("along", "across", "up").stream().flatMap(c -> d.line(c, Shaft.PROPELLER, 1).stream()))
                .mapToDouble(l -> 1000 * l.amplitude() / (2 * Math.PI * l.frequencyHz()))
                .max()
                .orElse(0);
    }

    private static Phasor phasor(Truth.LineTruth line) {
        return Phasor.ofDegrees(line.amplitude(), line.phaseDeg());
    }

    /** Doublings for a pull over a couple. */
    int pullPoints() {
        return DiscFit.of(List.of(run), installation.sensor().place())
                .map(DiscFit::pullPoints)
                .orElse(0);
    }

    /** Whether the machine can have the fault at all. */
    static boolean possible(long seed, Fault.Kind kind) {
        Machine machine = Machine.random(seed);
        return switch (kind) {
            case WEAK_CYLINDER, CARBURETTORS -> machine.cylinders() > 1;
            case DRIVE -> machine.drive() == Machine.Drive.TEETH;
            default -> true;
        };
    }

    /** Findings of this run with or without what is read with the engine off. */
    List<Finding> findings(boolean withStill) {
        return Findings.weigh(new JobEvidence(
                        installation, List.of(run), withStill ? still : StaticEvidence.NONE, Optional.empty()))
                .list();
    }

    private static SpeedProgram program(Machine machine) {
        double max = machine.maxRpm();
        return SpeedProgram.still()
                .hold(0.6 * max, MADE_S)
                .rampTo(0.76 * max, 1)
                .hold(0.76 * max, MADE_S)
                .rampTo(0.92 * max, 1)
                .hold(0.92 * max, MADE_S)
                .wandering(0.003, 4);
    }

    private static Installation installation(Machine machine, Map<String, Object> facts) {
        try {
            Path file = Files.createTempFile("rig", ".json");
            Files.writeString(file, machine.installationJson());
            Installation read = InstallationFile.read(file);
            Files.delete(file);
            return Boolean.getBoolean("rig.noplace") ? read : with(read, place(facts));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The sensor's place as somebody would measure it: to the next 5 cm, from the middle between the mounts. */
    private static SensorPlace.OnEngine place(Map<String, Object> facts) {
        List<?> place = (List<?>) facts.get("sensorPlaceM");
        double above = (Double) place.get(2) - (Double) facts.get("mountHeightM");
        return new SensorPlace.OnEngine(
                Length.ofMetres(Math.round(20 * (Double) place.get(0)) / 20.0),
                Length.ofMetres(Math.round(20 * above) / 20.0));
    }

    private static Installation with(Installation i, SensorPlace.OnEngine place) {
        return new Installation(
                i.name(),
                i.engine(),
                i.reduction(),
                i.propeller(),
                i.limits(),
                i.pitchLimits(),
                i.hubWeights(),
                new SensorPlace(Optional.of(place), OptionalInt.empty()));
    }

    private static RunNumbers numbers(Truth truth, Installation installation, Random errors) {
        List<ChannelOrders> channels = new ArrayList<>();
        for (String name : List.of("along", "across", "up")) {
            List<DwellOrders> dwells = truth.dwells().stream()
                    .map(dwell -> dwell(dwell, name, installation, errors))
                    .toList();
            channels.add(new ChannelOrders(name, SignalUnit.METRE_PER_SECOND_SQUARED, dwells));
        }
        return new RunNumbers(
                List.of("along", "across", "up"),
                3 * DWELL_S,
                Optional.empty(),
                truth.machine().ratio(),
                channels,
                List.of(),
                Optional.empty());
    }

    private static DwellOrders dwell(Truth.Dwell dwell, String channel, Installation installation, Random errors) {
        double hz = dwell.propellerRpm() / 60;
        List<Truth.LineTruth> made = dwell.channels().get(channel);
        List<OrderReading> readings = new ArrayList<>();
        for (OrderLine line : installation.orders().lines()) {
            double at = line.propellerOrder() * hz;
            List<OrderLine> near = installation.orders().lines().stream()
                    .filter(o -> !o.equals(line) && Math.abs(o.propellerOrder() * hz - at) < 1.5 / DWELL_S)
                    .toList();
            readings.add(new OrderReading(line, at, level(amplitude(made, line, !near.isEmpty()), errors), near));
        }
        List<UnexplainedLine> others = made.stream()
                .filter(l -> l.amplitude() > 4 * FLOOR_MS2)
                .filter(l -> installation.orders().lines().stream()
                        .noneMatch(o -> Math.abs(o.propellerOrder() * hz - l.frequencyHz()) < 0.004 * l.frequencyHz()))
                .map(l -> new UnexplainedLine(
                        l.frequencyHz(),
                        l.amplitude(),
                        l.frequencyHz() / hz,
                        l.frequencyHz() / hz / installation.reduction().ratio(),
                        true,
                        false))
                .sorted(Comparator.comparingDouble(UnexplainedLine::amplitude).reversed())
                .limit(10)
                .toList();
        return new DwellOrders(new Dwell(0, DWELL_S, hz, 0.001, hz, hz), readings, others, Optional.empty());
    }

    private static double amplitude(List<Truth.LineTruth> made, OrderLine line, boolean shared) {
        Shaft shaft = line.of() == evenblade.machine.installation.Shaft.PROPELLER ? Shaft.PROPELLER : Shaft.CRANK;
        return made.stream()
                .filter(l -> l.id().shaft() == shaft && Math.abs(l.id().order() - line.order()) < 1e-9
                        || line.role() == OrderLine.Role.MESH
                                && Math.abs(l.frequencyHz()
                                                        / made.get(0).frequencyHz()
                                                        * made.get(0).id().order()
                                                - line.propellerOrder())
                                        < 0.01)
                .mapToDouble(l -> shared ? l.amplitudeAtFrequency() : l.amplitude())
                .max()
                .orElse(0);
    }

    private static Level level(double amplitude, Random errors) {
        double error = Math.max(FLOOR_MS2, SCATTER * amplitude);
        double seen = Math.hypot(amplitude + error * errors.nextGaussian(), error * errors.nextGaussian());
        return new Level.Measured(
                seen,
                error,
                Math.max(0, seen - 2 * error),
                seen + 2 * error,
                OptionalDouble.empty(),
                seen > 4 * error,
                Level.Estimator.COHERENT);
    }

    private static StaticEvidence still(Machine machine, ShakingMachine shaking, Truth truth, Random errors) {
        int blades = machine.blades();
        Optional<Fault> flange = shaking.faults().stream()
                .filter(f -> f.kind() == Fault.Kind.FLANGE_RUN_OUT)
                .findFirst();
        double radius = machine.diameterM() / 2;
        double[] hub = new double[blades];
        double[] own = new double[blades];
        for (int b = 0; b < blades; b++) {
            double angle = 2 * Math.PI * b / blades;
            hub[b] = flange.map(f -> 1000 * f.size() / 2 / DIAL_RADIUS_M * radius * Math.cos(angle - f.place()))
                    .orElse(0.0);
            own[b] = shaking.trackMm(b) - hub[b];
        }
        List<TrackingSession> sessions = List.of(session(0, hub, own, errors), session(1, hub, own, errors));
        FaceRunOut runOut = new FaceRunOut(
                MORNING.plusSeconds(300),
                Length.ofMetres(flange.map(Fault::size).orElse(0.000008)),
                Length.ofMetres(DIAL_RADIUS_M),
                flange.map(f -> new Angle((Math.toDegrees(f.place()) + 360) % 360)));
        Length tip = Length.ofMetres(radius);
        Optional<RunOutTest> test =
                runOut.predictedMarksMm(blades, tip).flatMap(marks -> RunOutTest.of(SwapFit.of(sessions), marks));
        List<?> deviations = (List<?>) truth.facts().get("pitchDeviationDeg");
        List<List<Angle>> angles = deviations.stream()
                .map(d -> List.of(new Angle(20 + (Double) d + PROTRACTOR_DEG * errors.nextGaussian())))
                .toList();
        return new StaticEvidence(
                List.of(new StaticEvidence.Track(TrackingAnalysis.of(sessions), List.of(), test)),
                List.of(new StaticEvidence.Pitch(
                        new PitchReadings(
                                MORNING,
                                layout(blades, 0),
                                angles,
                                new Angle(0),
                                PitchReadings.Reference.HUB,
                                Optional.empty(),
                                PitchReadings.USUAL_SIGMA),
                        List.of())),
                List.of(new StaticEvidence.RunOut(runOut, Optional.of(runOut.atTip(tip)), List.of())));
    }

    private static TrackingSession session(int moved, double[] hub, double[] own, Random errors) {
        List<Length> marks = new ArrayList<>();
        for (int p = 0; p < hub.length; p++) {
            double blade = own[(p + moved) % hub.length];
            marks.add(Length.ofMillimetres(50 + hub[p] + blade + PENCIL_MM * errors.nextGaussian()));
        }
        return TrackingSession.of(
                MORNING.plusSeconds(600L * moved), layout(hub.length, moved), marks, TrackingSession.USUAL_SIGMA);
    }

    private static Layout layout(int blades, int moved) {
        List<String> names = new ArrayList<>();
        for (int p = 0; p < blades; p++) {
            names.add(String.valueOf((char) ('A' + (p + moved) % blades)));
        }
        return new Layout(names);
    }

    /** Strongest velocity of any line in any direction, mm/s peak: with the share of the faults' lines. */
    double strongest(Shaft shaft, double order) {
        return OrderObservations.of(List.of(run))
                .of(
                        shaft == Shaft.PROPELLER
                                ? evenblade.machine.installation.Shaft.PROPELLER
                                : evenblade.machine.installation.Shaft.CRANK,
                        order)
                .fastest()
                .map(o -> o.velocityMmS().getAsDouble())
                .orElse(0.0);
    }
}
