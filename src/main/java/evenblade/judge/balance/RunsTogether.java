package evenblade.judge.balance;

import evenblade.judge.balance.Objection.BeyondLimitFirst;
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
public record RunsTogether(List<TrialConditions> runs, List<BeyondLimitFirst> beyondLimit, boolean senseConfirmed) {
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
            all.add(new Objection.SenseNotConfirmed());
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
        Objection.SpeedsApart apart = new Objection.SpeedsApart(low, high, MOST_APART_PERCENT);
        return apart.apartPercent() > MOST_APART_PERCENT ? Optional.of(apart) : Optional.empty();
    }

    private static void addOfRun(int number, TrialConditions run, List<Objection> all) {
        if (!run.speedConfirmed()) {
            all.add(new Objection.SpeedNotConfirmed(number));
        }
        run.sharedCrankOrder()
                .ifPresent(order -> all.add(new Objection.InseparableFromCrank(number, order, run.directDrive())));
        run.changes().forEach(what -> all.add(new Objection.ChangedBetween(number, what)));
        run.sensor().stream().sorted().forEach(aspect -> all.add(new Objection.SensorChanged(number, aspect)));
        resonance(number, run).ifPresent(all::add);
        run.halfOrderShare().stream()
                .filter(share -> share >= LOOSE_SHARE)
                .forEach(share -> all.add(new Objection.LooseMount(number, share)));
    }

    private static Optional<Objection> resonance(int number, TrialConditions run) {
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
                return Optional.of(new Objection.NearResonance(
                        number, from.propellerRpm(), to.propellerRpm(), turn, to.amplitude() / from.amplitude()));
            }
        }
        return Optional.empty();
    }

    private static boolean sure(DwellReading dwell) {
        return dwell.amplitude() > SURE * dwell.standardError();
    }
}
