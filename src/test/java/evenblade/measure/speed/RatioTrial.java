package evenblade.measure.speed;

import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Recording;
import evenblade.keep.practice.Line;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.OrderMeter;
import evenblade.measure.orders.RatioCheck;
import evenblade.measure.orders.RatioDoubt;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * An invented run of a machine analysed with a ratio that may be wrong.
 *
 * @param trueRatio of the machine
 * @param enteredRatio with which it was analysed
 * @param confirmed whether a speed was found
 * @param strongEngineLines engine lines 10 dB over the noise that fall on no propeller line
 * @param strongPropellerLines likewise
 * @param doubt what the check says
 */
public record RatioTrial(
        double trueRatio,
        double enteredRatio,
        boolean confirmed,
        int strongEngineLines,
        int strongPropellerLines,
        Optional<RatioDoubt> doubt,
        Optional<Double> told) {
    private static final double RATE_HZ = 2400;

    /** What was said of the speed. */
    public enum Entered {
        ENGINE,
        PROPELLER,
        NOTHING
    }

    /** Which shaft's lines are in the signal. */
    public enum Visible {
        BOTH,
        PROPELLER,
        ENGINE
    }

    /** Whether both shafts show enough for a wrong ratio to be told. */
    public boolean telling() {
        return strongEngineLines >= 2 && strongPropellerLines >= 2;
    }

    public boolean named() {
        return doubt.isPresent() && Math.abs(doubt.get().pointsTo() / trueRatio - 1) < 0.005;
    }

    public static int machines() {
        return Machine.ALL.size();
    }

    public static double ratioOf(int machine) {
        return Machine.ALL.get(machine).ratio();
    }

    public static RatioTrial of(
            int index,
            double enteredRatio,
            boolean byTeeth,
            Entered entered,
            Visible visible,
            double aboveNoiseDb,
            double wander,
            double seconds,
            long seed) {
        Machine machine = Machine.ALL.get(index);
        Random random = new Random(104_729 * seed + index);
        random.nextDouble();
        double rpm = machine.idleRpm() + (0.2 + 0.75 * random.nextDouble()) * (machine.maxRpm() - machine.idleRpm());
        double hz = rpm / 60 / machine.ratio();
        SpeedProfile profile = SpeedProfile.steady(hz, seconds);
        if (wander > 0) {
            profile = profile.wandering(wander, seed);
        }
        List<Line> lines = new ArrayList<>(machine.lines(random));
        lines.removeIf(line -> line.propellerOrder() > 1.5 && random.nextInt(4) == 0);
        OrderTable truth = machine.table();
        lines.removeIf(line -> visible != Visible.BOTH
                && truth.lines().stream()
                        .noneMatch(each -> Math.abs(each.propellerOrder() - line.propellerOrder()) < 1e-6
                                && (each.of() == Shaft.PROPELLER) == (visible == Visible.PROPELLER)));
        SyntheticRun run = SyntheticRun.at(profile)
                .withLines(lines)
                .withStrongestLineAbove(aboveNoiseDb)
                .withSeed(seed);
        Recording recording = run.recording(RATE_HZ);
        OrderTable table = installation(machine, enteredRatio, byTeeth).orders();
        double said = 0.98 + 0.04 * random.nextDouble();
        SpeedPrior expectation =
                switch (entered) {
                    case ENGINE -> SpeedPrior.around(said * hz * machine.ratio() / enteredRatio, 0.05);
                    case PROPELLER -> SpeedPrior.around(said * hz, 0.05);
                    case NOTHING ->
                        SpeedPrior.between(
                                0.95 * machine.idleRpm() / 60 / enteredRatio,
                                1.05 * machine.maxRpm() / 60 / enteredRatio);
                };
        SpeedResult speed = SpeedFinder.find(recording, recording.channels(), table, expectation);
        Optional<RatioDoubt> doubt =
                RatioCheck.of(OrderMeter.measure(recording, recording.channels(), table, speed), table, speed);
        double strong = run.noise().whiteRms() * Math.sqrt(2 * 10);
        return new RatioTrial(
                machine.ratio(),
                enteredRatio,
                speed.confirmed(),
                strong(lines, truth, Shaft.CRANK, strong),
                strong(lines, truth, Shaft.PROPELLER, strong),
                doubt,
                speed.warnings().stream()
                        .filter(w -> w.code() == WarningCode.OTHER_RATIO_FITS)
                        .map(w -> ((Amount) w.values().get(0)).value())
                        .findFirst());
    }

    private static int strong(List<Line> lines, OrderTable truth, Shaft shaft, double least) {
        int count = 0;
        for (Line line : lines) {
            List<OrderLine> same = truth.lines().stream()
                    .filter(each -> Math.abs(each.propellerOrder() - line.propellerOrder()) < 1e-6)
                    .toList();
            boolean own = same.stream().allMatch(each -> each.of() == shaft);
            count += own && line.law().at(30).magnitude() >= least ? 1 : 0;
        }
        return count;
    }

    private static Installation installation(Machine machine, double ratio, boolean byTeeth) {
        Installation right = machine.installation();
        Reduction reduction = Reduction.ofRatio(Reduction.Kind.UNSTATED, ratio);
        if (byTeeth) {
            int driving = 21;
            reduction = Reduction.ofTeeth(
                    Reduction.Kind.GEAR, new Reduction.Teeth(driving, (int) Math.round(driving * ratio)));
        }
        Engine engine = right.engine();
        return new Installation(right.name(), engine, reduction, right.propeller(), List.of());
    }
}
