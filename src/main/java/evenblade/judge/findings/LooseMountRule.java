package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.SignalValue;
import evenblade.judge.findings.PropellerOnceFeatures.HalfOrder;
import evenblade.machine.installation.OrderTable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A joint that opens and shuts makes a row of half and whole propeller orders. */
final class LooseMountRule implements Rule {
    @Override
    public Cause cause() {
        return Cause.LOOSE_MOUNT;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        PropellerOnceFeatures once = new PropellerOnceFeatures(stage);
        EngineFeatures engine = new EngineFeatures(stage);
        List<Double> strange = engine.strangeHalves();
        if (strange.size() > 1) {
            return Optional.of(new Assessment(
                            Fact.of(FindingFact.POINTS_TO_MOUNT),
                            List.of(strange(stage, 5, strange)),
                            false,
                            engine.carried(strange.get(0)).map(Carried::mmS).orElse(1.0),
                            Fact.of(FindingFact.CHECK_MOUNTS))
                    .carrying(engine.carried(strange.get(0))));
        }
        List<HalfOrder> halves = once.halfOrders();
        if (engine.halvesUnlikeFiring() && !several(halves)) {
            Optional<Carried> carried = engine.largestHalf().flatMap(engine::carried);
            return Optional.of(new Assessment(
                            Fact.of(FindingFact.POINTS_TO_MOUNT),
                            List.of(unlike(stage, 5, engine)),
                            false,
                            carried.map(Carried::mmS).orElse(1.0),
                            Fact.of(FindingFact.CHECK_MOUNTS))
                    .toldApart(false)
                    .carrying(carried));
        }
        if (halves.isEmpty()) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>();
        pieces.add(told(several(halves) ? 5 : 2, halves));
        once.large(1).ifPresent(pieces::add);
        long runs = halves.stream().map(HalfOrder::run).distinct().count();
        if (halves.size() > 2 * runs && several(halves)) {
            pieces.add(running(1, stage.ref(), FindingFact.SEEN_TIMES, new Count(halves.size()), stage.names()));
        }
        return Optional.of(new Assessment(
                Fact.of(FindingFact.POINTS_TO_MOUNT),
                pieces,
                false,
                strongest(halves).amplitude(),
                Fact.of(FindingFact.CHECK_MOUNTS)));
    }

    /** That crank half orders don't shake as firing does. */
    static EvidenceItem strange(Stage stage, int points, List<Double> orders) {
        return running(
                points,
                stage.ref(),
                FindingFact.STRANGE_HALVES,
                Listed.quoted(orders.stream().map(OrderTable::orderText).toList()),
                stage.names());
    }

    /** That crank half orders shake a little otherwise than firing does. */
    static EvidenceItem unlike(Stage stage, int points, EngineFeatures engine) {
        return running(
                points,
                stage.ref(),
                FindingFact.UNLIKE_HALVES,
                Measure.NUMBER.of(engine.halvesLikeFiring().orElseThrow()),
                Measure.NUMBER.of(Thresholds.LIKE_FIRING));
    }

    /** Half orders beside the whole ones of a two-stroke: a row that knocks make, and no cylinder. */
    static List<EvidenceItem> rowOf(Stage stage, EngineFeatures engine, int points) {
        List<HalfOrder> halves = new PropellerOnceFeatures(stage).halfOrders();
        return engine.weakOrder() == 1 && several(halves) ? List.of(told(points, halves)) : List.of();
    }

    /** Whether at least two different half orders are there. */
    static boolean several(List<HalfOrder> halves) {
        return halves.stream().map(HalfOrder::order).distinct().count() > 1;
    }

    static EvidenceItem told(int points, List<HalfOrder> halves) {
        HalfOrder most = strongest(halves);
        return running(
                points,
                most.ref(),
                FindingFact.HALF_ORDERS,
                new Count(halves.stream().map(HalfOrder::order).distinct().count()),
                Measure.NUMBER.of(most.order()),
                new SignalValue(most.amplitude(), most.unit()),
                OrderObservation.where(most.engineRpm(), most.run()));
    }

    private static HalfOrder strongest(List<HalfOrder> halves) {
        return halves.stream()
                .max(Comparator.comparingDouble(HalfOrder::amplitude))
                .orElseThrow();
    }
}
