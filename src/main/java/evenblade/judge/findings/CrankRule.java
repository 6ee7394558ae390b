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
    /** Gas torque falls to some third from 1× to 4×; a mass has no overtones. So an order down to a fifth counts. */
    static final double OVERTONE = 5;

    @Override
    public Cause cause() {
        return Cause.CRANK;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        EngineFeatures engine = new EngineFeatures(stage);
        Optional<EvidenceItem> raised = raised(engine);
        if (raised.isEmpty() || engine.fires(1)) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>(List.of(raised.get()));
        pieces.addAll(shape(stage, engine, 1, -2, 2));
        pieces.addAll(uneven(stage, engine));
        return Optional.of(new Assessment(
                        Fact.of(FindingFact.POINTS_TO_CRANK),
                        pieces,
                        false,
                        engine.overFiring(1).orElse(0),
                        Fact.of(
                                engine.likeFiring(1).isPresent()
                                        ? FindingFact.CHECK_FLYWHEEL
                                        : FindingFact.MEASURE_LEVEL_AND_UPRIGHT))
                // A body on a resonance gives each line a shape of its own, and firing's is no measure then.
                .toldApart(!new PropellerOnceFeatures(stage).lifted())
                .carrying(engine.carried(1)));
    }

    /** That crank 1× is large enough to be looked at. */
    static Optional<EvidenceItem> raised(EngineFeatures engine) {
        OptionalDouble share = engine.overFiring(1);
        Optional<OrderObservation> most = engine.crank(1).detected().strongest();
        if (share.isPresent()
                && most.isPresent()
                && share.getAsDouble() >= Thresholds.CRANK_OVER_FIRING
                && engine.worthBlaming(1)) {
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
     * How a crank order shakes, compared with firing.
     *
     * @param gas points where it shakes as firing does
     * @param other points where it surely doesn't
     */
    static List<EvidenceItem> shape(Stage stage, EngineFeatures engine, double order, int gas, int other) {
        OptionalDouble like = engine.likeFiring(order);
        boolean alike = like.orElse(0) >= Thresholds.LIKE_FIRING;
        if (like.isEmpty() || !alike && like.getAsDouble() >= Thresholds.UNLIKE_FIRING) {
            return List.of();
        }
        return List.of(running(
                alike ? gas : other,
                stage.ref(),
                FindingFact.LIKE_FIRING,
                EngineFeatures.order(order),
                Measure.NUMBER.of(like.getAsDouble()),
                Fact.of(alike ? FindingFact.GAS_TORQUE : FindingFact.NOT_GAS_TORQUE)));
    }

    /** Orders that would be up beside 1× if cylinders made it. */
    private static List<Double> neighbours(EngineFeatures engine) {
        List<Double> orders = new ArrayList<>(engine.pureCylinderOrders());
        engine.alternateOrder().stream()
                .map(order -> 3 * order)
                .filter(order -> engine.alternateOrder().getAsDouble() == 1)
                .forEach(orders::add);
        return orders;
    }

    /** Signs that the cylinders themselves differ. */
    private static List<EvidenceItem> uneven(Stage stage, EngineFeatures engine) {
        List<EvidenceItem> pieces = new ArrayList<>();
        double once = engine.overFiring(1).orElse(0);
        boolean others = false;
        for (double order : neighbours(engine)) {
            double share = engine.overFiring(order).orElse(0);
            if (share * OVERTONE > once && share > Thresholds.HALF_OVER_FIRING / 2 && !others) {
                others = true;
                pieces.add(running(
                        -3,
                        stage.ref(),
                        FindingFact.CRANK_THERE_TOO,
                        EngineFeatures.order(order),
                        Measure.SHARE.of(share)));
            }
        }
        if (!others && engine.severalCylinders()) {
            pieces.add(running(2, stage.ref(), FindingFact.NO_OTHER_CRANK_ORDER));
        }
        return pieces;
    }
}
