package evenblade.judge.balance;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.judge.balance.TrialConditions.DwellReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whether the runs of a job may be used together for balancing.
 *
 * @param runs one for each reading, in the same order; empty where only readings were typed in
 * @param beyondLimit track, pitch and run-out that are past their limits now
 * @param senseConfirmed whether the user has said which way angles are counted
 */
public record RunsTogether(List<TrialConditions> runs, List<Objection> beyondLimit, boolean senseConfirmed) {
    /** Speeds further apart than this in percent aren't like with like: the pull rises with the square. */
    static final double MOST_APART_PERCENT = 2;
    /** Through a resonance the phase turns by 180°; a quarter of that within one step of speed. Set by this project. */
    static final double RESONANCE_TURN_DEG = 45;
    /** Mass pulls with the square of speed: a line that falls while speed rises does so near a resonance only. */
    static final double RESONANCE_FALL = 0.8;
    /** ½× from this share of 1× on; half orders of the propeller have no cause in its mass. Set by this project. */
    static final double LOOSE_SHARE = 0.2;
    /** Standard deviations by which a fall has to be sure. */
    private static final double SURE = 3;

    public RunsTogether {
        runs = List.copyOf(runs);
        beyondLimit = List.copyOf(beyondLimit);
    }

    /** Readings from outside, given with angles counted as they should be: nothing more is known of the runs. */
    public static RunsTogether typedIn() {
        return new RunsTogether(List.of(), List.of(), true);
    }

    /** Everything that stands against using them. */
    List<Objection> objections() {
        List<Objection> all = new ArrayList<>();
        if (!senseConfirmed) {
            all.add(Objection.of(ObjectionCode.SENSE_NOT_CONFIRMED));
        }
        all.addAll(beyondLimit);
        speedsApart().ifPresent(all::add);
        for (int i = 0; i < runs.size(); i++) {
            addOfRun(i + 1, runs.get(i), all);
        }
        return all;
    }

    private Optional<Objection> speedsApart() {
        if (runs.isEmpty()) {
            return Optional.empty();
        }
        double low =
                runs.stream().mapToDouble(TrialConditions::propellerRpm).min().orElseThrow();
        double high =
                runs.stream().mapToDouble(TrialConditions::propellerRpm).max().orElseThrow();
        double apartShare = 2 * (high - low) / (high + low);
        return 100 * apartShare > MOST_APART_PERCENT
                ? Optional.of(Objection.of(
                        ObjectionCode.SPEEDS_APART,
                        Measure.SHARE.of(apartShare),
                        Measure.PROPELLER_RPM.of(low),
                        Measure.PROPELLER_RPM.of(high),
                        Measure.SHARE.of(MOST_APART_PERCENT / 100)))
                : Optional.empty();
    }

    private static void addOfRun(int place, TrialConditions run, List<Objection> all) {
        Count number = new Count(place);
        if (!run.speedConfirmed()) {
            all.add(Objection.of(ObjectionCode.SPEED_NOT_CONFIRMED, number));
        }
        run.sharedCrankOrder()
                .ifPresent(order -> all.add(Objection.of(
                        ObjectionCode.INSEPARABLE_FROM_CRANK,
                        number,
                        order == Math.rint(order) ? new Count((long) order) : Measure.NUMBER.of(order),
                        new Listed(
                                run.directDrive() ? List.of(Fact.of(Objection.BalanceFact.ONE_SHAFT)) : List.of()))));
        run.changes().forEach(what -> all.add(Objection.of(ObjectionCode.CHANGED_BETWEEN, number, new Quoted(what))));
        run.sensor().stream()
                .sorted()
                .forEach(aspect -> all.add(Objection.of(ObjectionCode.SENSOR_CHANGED, number, Fact.of(aspect))));
        resonance(number, run).ifPresent(all::add);
        run.halfOrderShare().stream()
                .filter(share -> share >= LOOSE_SHARE)
                .forEach(share -> all.add(Objection.of(ObjectionCode.LOOSE_MOUNT, number, Measure.SHARE.of(share))));
    }

    private static Optional<Objection> resonance(Count number, TrialConditions run) {
        for (int i = 1; i < run.dwells().size(); i++) {
            DwellReading from = run.dwells().get(i - 1);
            DwellReading to = run.dwells().get(i);
            double fall = from.amplitude() - to.amplitude();
            boolean falls = to.amplitude() < RESONANCE_FALL * from.amplitude()
                    && fall > SURE * Math.hypot(from.standardError(), to.standardError());
            double turn = from.phaseDeg().isPresent() && to.phaseDeg().isPresent()
                    ? Correction.turn(
                            from.phaseDeg().getAsDouble(), to.phaseDeg().getAsDouble())
                    : 0;
            if (falls || Math.abs(turn) >= RESONANCE_TURN_DEG && sure(from) && sure(to)) {
                return Optional.of(Objection.of(
                        ObjectionCode.NEAR_RESONANCE,
                        number,
                        Measure.PROPELLER_RPM.of(from.propellerRpm()),
                        Measure.PROPELLER_RPM.of(to.propellerRpm()),
                        Measure.ANGLE.of(turn),
                        Measure.NUMBER.of(to.amplitude() / from.amplitude())));
            }
        }
        return Optional.empty();
    }

    private static boolean sure(DwellReading dwell) {
        return dwell.amplitude() > SURE * dwell.standardError();
    }
}
