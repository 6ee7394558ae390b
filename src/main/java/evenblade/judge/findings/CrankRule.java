package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Crank 1× alone, with the same size level and upright: mass of crank or flywheel. */
final class CrankRule implements Rule {
    /** Upright over level of crank 1×, over that of firing: from here on it isn't gas torque. */
    private static final double NOT_AS_FIRING = 1.6;

    @Override
    public Cause cause() {
        return Cause.CRANK;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        EngineFeatures engine = EngineFeatures.of(stage);
        Optional<EvidenceItem> raised = raised(engine);
        if (raised.isEmpty()) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>(List.of(raised.get()));
        engine.uprightOfCrankAgainstFiring().ifPresent(r -> pieces.add(direction(stage, r, 2, -4)));
        pieces.addAll(uneven(stage, engine));
        return Optional.of(new Assessment(
                Fact.of(FindingFact.POINTS_TO_CRANK),
                pieces,
                false,
                engine.overFiring(1).orElse(0),
                Fact.of(
                        engine.uprightOfCrankAgainstFiring().isPresent()
                                ? FindingFact.CHECK_FLYWHEEL
                                : FindingFact.MEASURE_LEVEL_AND_UPRIGHT)));
    }

    /** That crank 1× is large enough to be looked at. */
    static Optional<EvidenceItem> raised(EngineFeatures engine) {
        OptionalDouble share = engine.overFiring(1);
        Optional<OrderObservation> most = engine.crank(1).detected().strongest();
        if (share.isPresent() && most.isPresent() && share.getAsDouble() >= Thresholds.CRANK_OVER_FIRING) {
            return Optional.of(running(
                    3,
                    most.get().ref(),
                    FindingFact.CRANK_ONCE_RAISED,
                    Measure.SHARE.of(share.getAsDouble()),
                    engine.firingName(),
                    most.get().size(),
                    most.get().where()));
        }
        Optional<OrderObservation> fastest = engine.crank(1).detected().fastest();
        if (!engine.severalCylinders()
                && fastest.isPresent()
                && fastest.get().velocityMmS().getAsDouble() >= Thresholds.CRANK_MM_S) {
            return Optional.of(running(
                    5,
                    fastest.get().ref(),
                    FindingFact.MOTOR_ONCE,
                    fastest.get().size(),
                    fastest.get().velocity(),
                    fastest.get().where()));
        }
        return Optional.empty();
    }

    /**
     * Which way crank 1× shakes, compared with firing.
     *
     * @param ratio upright over level of crank 1×, over that of firing
     * @param mass points where it isn't like firing
     * @param gas points where it is
     */
    static EvidenceItem direction(Stage stage, double ratio, int mass, int gas) {
        boolean isMass = ratio > NOT_AS_FIRING || ratio < 1 / NOT_AS_FIRING;
        return running(
                isMass ? mass : gas,
                stage.ref(),
                FindingFact.UPRIGHT_OVER_LEVEL,
                Measure.NUMBER.of(ratio),
                Fact.of(isMass ? FindingFact.NOT_GAS_TORQUE : FindingFact.GAS_TORQUE));
    }

    /** Signs that the cylinders themselves differ. */
    private static List<EvidenceItem> uneven(Stage stage, EngineFeatures engine) {
        List<EvidenceItem> pieces = new ArrayList<>();
        OptionalDouble half = engine.weakOrder() < 1 ? engine.overFiring(0.5) : OptionalDouble.empty();
        OptionalDouble third = engine.overFiring(3);
        if (half.orElse(0) > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(
                    -3,
                    stage.ref(),
                    FindingFact.CRANK_THERE_TOO,
                    EngineFeatures.order(0.5),
                    Measure.SHARE.of(half.getAsDouble())));
        }
        if (third.orElse(0) > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(
                    -2,
                    stage.ref(),
                    FindingFact.CRANK_THERE_TOO,
                    EngineFeatures.order(3),
                    Measure.SHARE.of(third.getAsDouble())));
        } else if (engine.severalCylinders()) {
            pieces.add(running(1, stage.ref(), FindingFact.NO_OTHER_CRANK_ORDER));
        }
        return pieces;
    }
}
