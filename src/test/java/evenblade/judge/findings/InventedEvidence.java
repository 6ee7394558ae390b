package evenblade.judge.findings;

import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import evenblade.input.recording.Recording;
import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.judge.findings.RunEvidence.RunRef;
import evenblade.judge.tracking.FaceRunOut;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.PitchReadings;
import evenblade.judge.tracking.RunOutTest;
import evenblade.judge.tracking.SwapFit;
import evenblade.judge.tracking.TrackingAnalysis;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.practice.Blade;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.Machine;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeRun;
import evenblade.keep.practice.SpeedProfile;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.OrderMeter;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.SpeedFinder;
import evenblade.measure.speed.SpeedPrior;
import evenblade.measure.speed.SpeedResult;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/** One invented run in memory, three dwells and three directions, with the static checks of the same machine. */
final class InventedEvidence {
    static final Installation GEARED = PracticeInstallation.geared();
    private static final Map<String, Direction> DIRECTIONS =
            Map.of("along shaft", Direction.ALONG, "across, level", Direction.ACROSS, "across, upright", Direction.UP);
    private static final double[] ENGINE_RPM = {3980, 4820, 5320};
    private static final Instant MORNING = Instant.parse("2026-05-04T08:00:00Z");

    /** Gear mesh lies at 1.4 to 1.9 kHz; everything else below 400 Hz. */
    static final int RATE_WITH_MESH_HZ = 4000;

    private static final int RATE_HZ = 1000;

    private InventedEvidence() {}

    /** A run of a machine with one fault; 1 kHz, or enough for gear mesh where the drive is meant. */
    static RunEvidence run(Fault fault, long seed) {
        return run(GEARED, fault, seed);
    }

    static RunEvidence run(Installation installation, Fault fault, long seed) {
        return run(installation, fault, seed, fault == Fault.GEAR ? RATE_WITH_MESH_HZ : RATE_HZ);
    }

    static RunEvidence run(Installation installation, Fault fault, long seed, int rateHz) {
        double ratio = installation.reduction().ratio();
        SpeedProfile speeds = SpeedProfile.startingAt(ENGINE_RPM[0] / 60 / ratio)
                .thenDwell(6.5)
                .thenRampTo(ENGINE_RPM[1] / 60 / ratio, 3)
                .thenDwell(6.5)
                .thenRampTo(ENGINE_RPM[2] / 60 / ratio, 3)
                .thenDwell(6.5);
        Recording recording = PracticeRun.of(fault.in(Machine.healthy(installation, seed)))
                .following(speeds)
                .wandering(0.003)
                .seeded(seed)
                .recording(rateHz);
        return new RunEvidence(
                new RunRef("e1", "invented run"),
                MORNING.plusSeconds(7200),
                Optional.empty(),
                List.of(),
                RunNumbers.of(orders(recording, installation)),
                DIRECTIONS,
                false);
    }

    private static RunOrders orders(Recording recording, Installation installation) {
        double ratio = installation.reduction().ratio();
        OrderTable table = installation.orders();
        SpeedResult speed = SpeedFinder.find(
                recording, recording.channels(), table, SpeedPrior.between(1500 / ratio / 60, 5900 / ratio / 60));
        List<ChannelOrders> channels = OrderMeter.measure(recording, recording.channels(), table, speed);
        return new RunOrders(
                recording.source(), installation, speed, channels, recording.quality(), recording.stamps(), List.of());
    }

    /** Tip marks in two layouts, blade angles and the dial, read with the usual errors. */
    static StaticEvidence still(Fault fault, long seed) {
        Machine machine = fault.in(Machine.healthy(GEARED, seed));
        Random errors = new Random(seed);
        List<TrackingSession> sessions = List.of(
                marks(machine, MORNING, errors),
                marks(machine.withBladesAt(List.of("C", "A", "B")), MORNING.plusSeconds(600), errors));
        FaceRunOut runOut = new FaceRunOut(
                MORNING.plusSeconds(300),
                Length.ofMetres(machine.runOut().totalM()),
                Length.ofMetres(machine.runOut().dialRadiusM()),
                Optional.of(new Angle(machine.runOut().highDeg())));
        Length tip = Length.ofMetres(machine.tipRadiusM());
        Optional<RunOutTest> test =
                runOut.predictedMarksMm(3, tip).flatMap(marks -> RunOutTest.of(SwapFit.of(sessions), marks));
        return new StaticEvidence(
                List.of(new StaticEvidence.Track(
                        TrackingAnalysis.of(sessions),
                        LimitCheck.track(GEARED.limits(), sessions.get(1).marksMm()),
                        test)),
                List.of(new StaticEvidence.Pitch(angles(machine, errors), List.of())),
                List.of(new StaticEvidence.RunOut(runOut, Optional.of(runOut.atTip(tip)), List.of())));
    }

    private static TrackingSession marks(Machine machine, Instant at, Random errors) {
        List<Length> marks = new ArrayList<>();
        for (int p = 1; p <= 3; p++) {
            marks.add(Length.ofMillimetres(1000 * machine.trackAtM(p) + 0.3 * errors.nextGaussian()));
        }
        return TrackingSession.of(at, layout(machine), marks, Length.ofMillimetres(0.4));
    }

    private static PitchReadings angles(Machine machine, Random errors) {
        List<List<Angle>> angles = machine.blades().stream()
                .map(blade -> List.of(new Angle(20 + blade.pitchDeg() + 0.07 * errors.nextGaussian())))
                .toList();
        return new PitchReadings(
                MORNING,
                layout(machine),
                angles,
                new Angle(0),
                PitchReadings.Reference.HUB,
                Optional.empty(),
                PitchReadings.USUAL_SIGMA);
    }

    private static Layout layout(Machine machine) {
        return new Layout(machine.blades().stream().map(Blade::name).toList());
    }

    static JobEvidence job(List<RunEvidence> runs, StaticEvidence still) {
        return new JobEvidence(GEARED, runs, still, Optional.empty());
    }
}
