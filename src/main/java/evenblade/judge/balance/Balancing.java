package evenblade.judge.balance;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Count;
import evenblade.judge.balance.BalanceAnswer.Advice;
import evenblade.judge.balance.BalanceAnswer.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Finds the correction that runs with and without weights call for, or says why there is none. */
public final class Balancing {
    /**
     * A trial that does nothing may pass for one that does so rarely. Set by this project: of 8,000 simulated trials that
     * moved the line by less than its scatter none got a correction; at 3 standard deviations (0.011) 33 did.
     */
    private static final double FALSE_TRIAL = 5e-4;
    /** A weight is proposed that would move it by so many: the correction's error is then about a fifth. */
    static final double USEFUL_EFFECT = 5;
    /** And by so many times what is needed, to be sure of it. */
    private static final double USEFUL_TIMES = 1.3;
    /** Closures off 1 by more than this are told, by more than {@link #CLOSURE_FAILED} refused. */
    static final double CLOSURE_POOR = 0.05;

    static final double CLOSURE_FAILED = 0.20; // ours: readings that contradict by a fifth answer nothing
    /** Ground runs scatter 3 to 8 %: more is told. */
    static final double SCATTER_LARGE = 0.10;
    /** Without phase: V, direction and closure need so many trials. */
    private static final int LEAST_TRIALS = 3;

    private final BalanceRequest request;
    private final List<Objection> refusals = new ArrayList<>();
    private final List<Objection> warnings = new ArrayList<>();
    private OptionalDouble closure = OptionalDouble.empty();
    private Optional<Advice> advice = Optional.empty();

    private Balancing(BalanceRequest request) {
        this.request = request;
    }

    /** The answer; never fails for readings of any size. */
    public static BalanceAnswer balance(BalanceRequest request) {
        return new Balancing(request).balance();
    }

    private BalanceAnswer balance() {
        List<WeightedReading> runs = request.readings();
        long phases = runs.stream().filter(r -> r.phaseDeg().isPresent()).count();
        Method method = phases > 0 ? Method.WITH_PHASE : Method.WITHOUT_PHASE;
        refusals.addAll(request.together().objections());
        if (runs.stream().noneMatch(WeightedReading::bare)) {
            refusals.add(Objection.of(ObjectionCode.NO_RUN_WITHOUT_WEIGHTS));
        } else if (runs.stream().allMatch(WeightedReading::bare)) {
            refusals.add(Objection.of(ObjectionCode.NO_TRIAL));
        } else if (phases > 0 && phases < runs.size()) {
            refusals.add(Objection.of(
                    ObjectionCode.PHASES_MISSING, new Count(runs.size() - phases), new Count(runs.size())));
        } else if (method == Method.WITH_PHASE) {
            withPhase();
        } else {
            withoutPhase();
        }
        return done(method);
    }

    private BalanceAnswer done(Method method) {
        Optional<Advice> given = refusals.isEmpty() ? advice : Optional.empty();
        return new BalanceAnswer(method, refusals, warnings, given, closure);
    }

    private void withPhase() {
        Optional<Influence> fit = InfluenceFit.withPhase(request.readings());
        if (fit.isEmpty()) {
            refusals.add(Objection.of(ObjectionCode.NO_TRIAL));
            return;
        }
        if (SenseCheck.of(request.readings()).filter(SenseCheck::looksOther).isPresent()) {
            refusals.add(Objection.of(ObjectionCode.SENSE_LOOKS_OTHER));
        } else if (moves(fit.get())) {
            advise(fit.get(), Correction.of(fit.get()));
        }
    }

    private void withoutPhase() {
        List<WeightedReading> runs = request.readings();
        int trials = (int) runs.stream()
                .filter(r -> !r.bare())
                .map(WeightedReading::weights)
                .distinct()
                .count();
        if (trials < LEAST_TRIALS) {
            refusals.add(Objection.of(ObjectionCode.TRIALS_TOO_FEW, new Count(trials)));
            return;
        }
        Optional<SquaredFit> squared = SquaredFit.of(runs);
        if (squared.isEmpty()) {
            boolean open = !SquaredFit.solvable(runs);
            refusals.add(
                    open
                            ? Objection.of(ObjectionCode.TRIALS_TOO_FEW, new Count(trials))
                            : Objection.of(
                                    ObjectionCode.CLOSURE_FAILED, Fact.of(Objection.BalanceFact.NO_UNBALANCE_FITS)));
            return;
        }
        double close = squared.get().closure();
        closure = OptionalDouble.of(close);
        Optional<Influence> fit = InfluenceFit.withoutPhase(runs, squared.get().start());
        if (Math.abs(close - 1) > CLOSURE_FAILED || fit.isEmpty()) {
            refusals.add(Objection.of(
                    ObjectionCode.CLOSURE_FAILED,
                    Fact.of(Objection.BalanceFact.CLOSURE_OFF, Measure.NUMBER.of(close))));
            return;
        }
        if (Math.abs(close - 1) > CLOSURE_POOR) {
            warnings.add(Objection.of(
                    ObjectionCode.CLOSURE_POOR,
                    Measure.NUMBER.of(close),
                    Objection.gramMillimetres(squared.get().correctionGmm().magnitude()),
                    Objection.gramMillimetres(squared.get().byCosinesGmm())));
        }
        if (moves(fit.get())) {
            Correction byFit = Correction.of(fit.get());
            advise(
                    fit.get(),
                    AmplitudeProfile.of(runs, fit.get())
                            .interval(byFit, squared.get().correctionGmm()));
        }
    }

    /** Whether the weights moved the line far enough to be read. */
    private boolean moves(Influence fit) {
        double needed = neededEffect(fit.freedomOfReadings(), fit.scatterShare());
        double effect = fit.trialEffect();
        if (effect >= needed) {
            return true;
        }
        WeightedReading heaviest = heaviest();
        double useful =
                heaviest.weightGmm().magnitude() * Math.max(USEFUL_EFFECT, USEFUL_TIMES * needed) / Math.max(1, effect);
        double radius = radiusMm();
        OptionalDouble largest = request.largestMassG();
        boolean within = largest.isEmpty() || useful / radius <= largest.getAsDouble();
        Value mass = Objection.grams(useful / radius);
        Value at = Objection.millimetres(radius);
        refusals.add(Objection.of(
                ObjectionCode.TRIAL_TOO_LIGHT,
                Measure.NUMBER.of(effect),
                Measure.NUMBER.of(needed),
                within
                        ? Fact.of(Objection.BalanceFact.WEIGHT_TO_TAKE, mass, at)
                        : Fact.of(
                                Objection.BalanceFact.WEIGHT_NOT_ALLOWED,
                                mass,
                                at,
                                Objection.grams(largest.getAsDouble()))));
        return false;
    }

    /**
     * How many standard deviations a trial has to move the line, so that chance alone does it in {@link #FALSE_TRIAL} of
     * cases. For a vector whose deviation is known that is √(−2·ln p); where it is known with ν degrees of freedom, by
     * Fisher's F with 2 and ν, √(ν·(p^(−2/ν) − 1)). No more than it takes at the largest scatter that is usual.
     */
    static double neededEffect(double freedom, double scatterShare) {
        double twice = -2 * Math.log(FALSE_TRIAL);
        double byReadings = Math.sqrt(freedom * Math.expm1(twice / freedom));
        return scatterShare > TrialScatter.LARGEST_USUAL_SHARE
                ? byReadings
                : Math.min(byReadings, Math.sqrt(twice) * TrialScatter.LARGEST_USUAL_SHARE / scatterShare);
    }

    private void advise(Influence fit, Correction correction) {
        if (!fit.scatterMeasured()) {
            warnings.add(Objection.of(
                    ObjectionCode.SCATTER_ASSUMED,
                    Measure.SHARE.of(fit.scatterShare()),
                    Fact.of(
                            fit.scatterSeenInPart()
                                    ? Objection.BalanceFact.SEEN_IN_PART
                                    : Objection.BalanceFact.AS_USUAL)));
        }
        if (fit.scatterShare() > SCATTER_LARGE) {
            warnings.add(Objection.of(ObjectionCode.RUNS_DISAGREE, Measure.SHARE.of(fit.scatterShare())));
        }
        if (correction.withinError()) {
            warnings.add(Objection.of(ObjectionCode.CORRECTION_WITHIN_ERROR));
        }
        double radius = radiusMm();
        double needed = correction.value().gramsAt(radius);
        if (request.largestMassG().isPresent()
                && needed > request.largestMassG().getAsDouble()) {
            refusals.add(beyondLargest(needed));
            return;
        }
        Optional<Split> exact =
                request.places().isEmpty() ? Optional.empty() : Split.exact(correction.value(), request.places());
        Optional<Split> split = split(correction, exact);
        List<Weight> on = split.map(Split::weights)
                .orElseGet(() -> List.of(Weight.of(
                        Math.max(needed, Double.MIN_NORMAL),
                        radius,
                        correction.value().angleDeg())));
        advice = Optional.of(new Advice(fit, correction, radius, exact, split, Residual.of(fit, on)));
    }

    private Optional<Split> split(Correction correction, Optional<Split> exact) {
        if (request.places().isEmpty()) {
            return Optional.empty();
        }
        double error = correction.standardErrorGmm();
        if (exact.isEmpty() || exact.get().leftGmm() > error) {
            warnings.add(Objection.of(
                    ObjectionCode.PLACES_DONT_REACH,
                    Objection.gramMillimetres(
                            exact.map(Split::leftGmm).orElse(correction.value().gmm()))));
        }
        if (request.stockG().isEmpty()) {
            exact.map(Split::heaviestG)
                    .filter(g -> g > request.largestMassG().orElse(Double.MAX_VALUE))
                    .ifPresent(g -> refusals.add(beyondLargest(g)));
            return exact;
        }
        Split best =
                StockSearch.best(correction.value(), error, request.places(), request.stockG(), request.largestMassG());
        if (best.leftGmm() > error) {
            warnings.add(Objection.of(
                    ObjectionCode.STOCK_COARSE,
                    Objection.gramMillimetres(best.leftGmm()),
                    Objection.gramMillimetres(error)));
        }
        return Optional.of(best);
    }

    private Objection beyondLargest(double neededG) {
        return Objection.of(
                ObjectionCode.BEYOND_LARGEST_MASS,
                Objection.grams(neededG),
                Objection.millimetres(radiusMm()),
                Objection.grams(request.largestMassG().getAsDouble()));
    }

    private WeightedReading heaviest() {
        return request.readings().stream()
                .max(java.util.Comparator.comparingDouble(r -> r.weightGmm().magnitude()))
                .orElseThrow();
    }

    /** The radius of the first weight that was on. */
    private double radiusMm() {
        return request.readings().stream()
                .flatMap(r -> r.weights().stream())
                .mapToDouble(Weight::radiusMm)
                .findFirst()
                .orElseThrow();
    }
}
