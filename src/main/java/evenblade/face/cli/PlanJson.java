package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.machine.installation.Beat;
import evenblade.machine.installation.InstallationFile;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Reduction;
import evenblade.machine.plan.Place;
import evenblade.machine.plan.PlannedDwell;
import evenblade.machine.plan.PlannedDwell.ClosePair;
import evenblade.machine.plan.PlannedDwell.PlannedLine;
import evenblade.machine.plan.RunPlan;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The JSON form of a plan. */
final class PlanJson {
    private PlanJson() {}

    static JsonFields of(RunPlan plan) {
        return new JsonFields()
                .put("installation", InstallationFile.written(plan.installation()))
                .put("ratio", plan.installation().reduction().ratio())
                .put("toothRepetition", plan.installation().reduction().teeth().map(PlanJson::repetition))
                .put("sampleRateHz", plan.sampleRateHz())
                .put("usableUpToHz", plan.usableUpToHz())
                .put("orders", orders(plan))
                .put("coincident", plan.coincident().stream().map(Place::names).toList())
                .put("dwells", plan.dwells().stream().map(PlanJson::dwell).toList())
                .put(
                        "runCard",
                        new JsonFields()
                                .put(
                                        "cautions",
                                        plan.card().cautions().stream()
                                                .map(WarningText::of)
                                                .toList())
                                .put(
                                        "steps",
                                        plan.card().steps().stream()
                                                .map(WarningText::of)
                                                .toList()))
                .put("warnings", WarningText.json(plan.warnings()));
    }

    private static List<JsonFields> orders(RunPlan plan) {
        return plan.installation().orders().lines().stream()
                .map(line -> order(line).put("coincidesWith", others(plan, line)))
                .toList();
    }

    private static List<String> others(RunPlan plan, OrderLine line) {
        return plan.coincident().stream()
                .filter(place -> place.lines().contains(line))
                .flatMap(place -> place.names().stream())
                .filter(name -> !name.equals(line.name()))
                .toList();
    }

    private static JsonFields order(OrderLine line) {
        return new JsonFields()
                .put("of", line.of().word())
                .put("order", line.order())
                .put("propellerOrder", line.propellerOrder())
                .put("name", line.name());
    }

    private static JsonFields repetition(Reduction.Teeth teeth) {
        return new JsonFields()
                .put("engineRevolutions", teeth.engineRevolutionsPerRepeat())
                .put("propellerRevolutions", teeth.propellerRevolutionsPerRepeat());
    }

    private static JsonFields dwell(PlannedDwell dwell) {
        return new JsonFields()
                .put("engineRpm", dwell.engineRpm())
                .put("propellerRpm", dwell.propellerRpm())
                .put("propellerHz", dwell.propellerHz())
                .put("lengthS", dwell.lengthS())
                .put("orders", dwell.lines().stream().map(PlanJson::line).toList())
                .put("close", dwell.close().stream().map(PlanJson::pair).toList())
                .put("throbs", dwell.beats().stream().map(PlanJson::throb).toList());
    }

    private static JsonFields line(PlannedLine planned) {
        Optional<PlannedLine.Fold> fold = planned.fold();
        return order(planned.line())
                .put("frequencyHz", planned.frequencyHz())
                .put("beyondRange", fold.isPresent())
                .put(
                        "foldsToHz",
                        fold.isPresent() ? OptionalDouble.of(fold.get().toHz()) : OptionalDouble.empty())
                .put("foldsNear", fold.map(PlannedLine.Fold::near).orElse(List.of()));
    }

    private static JsonFields throb(Beat beat) {
        return new JsonFields()
                .put("lower", beat.lower().name())
                .put("upper", beat.upper().name())
                .put("swellsPerSecond", beat.hz());
    }

    private static JsonFields pair(ClosePair pair) {
        return new JsonFields()
                .put("lower", pair.lower().names())
                .put("upper", pair.upper().names())
                .put("apartHz", pair.apartHz())
                .put("splitAfterS", pair.splitAfterS());
    }
}
