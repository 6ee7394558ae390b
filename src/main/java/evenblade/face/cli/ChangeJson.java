package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.Figure;
import evenblade.machine.installation.Shaft;
import java.util.OptionalDouble;

/** The JSON form of changes, shared by what compares two runs and what follows all. */
final class ChangeJson {
    private ChangeJson() {}

    /** What a figure is called. */
    static JsonFields figure(Figure figure, SignalUnit unit) {
        boolean amplitude = figure.kind() == Figure.Kind.AMPLITUDE;
        return new JsonFields()
                .put("of", figure.of().map(Shaft::word))
                .put("order", figure.of().isPresent() ? OptionalDouble.of(figure.order()) : OptionalDouble.empty())
                .put("name", figure.name())
                .put("kind", figure.kind().word())
                .put("unit", amplitude ? unit.symbol() : "ratio");
    }

    /** Adds what changed to what a figure is called. */
    static JsonFields change(JsonFields json, Change change) {
        json.put("before", known(change.before()))
                .put("after", known(change.after()))
                .put("beforeBelow", below(change.before()))
                .put("afterBelow", below(change.after()));
        return verdict(json, change)
                .put("scatterPercent", 100 * change.scatter().deviation())
                .put("scatterFrom", change.scatter().source().word())
                .put("inseparableFrom", change.sharedWith());
    }

    /** Adds by how much, and what that means. */
    static JsonFields verdict(JsonFields json, Change change) {
        return json.put("changePercent", change.percent())
                .put("ciLowPercent", change.ciLowPercent())
                .put("ciHighPercent", change.ciHighPercent())
                .put("verdict", change.verdict().word());
    }

    static OptionalDouble known(ComparedValue value) {
        return value instanceof ComparedValue.Known known ? OptionalDouble.of(known.value()) : OptionalDouble.empty();
    }

    static OptionalDouble below(ComparedValue value) {
        return value instanceof ComparedValue.Below below ? OptionalDouble.of(below.limit()) : OptionalDouble.empty();
    }
}
