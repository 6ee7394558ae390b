package evenblade.face.app;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.judge.balance.BalanceRequest;
import evenblade.judge.balance.BalanceRequest.HubPlace;
import evenblade.judge.balance.RunsTogether;
import evenblade.judge.balance.Weight;
import evenblade.judge.balance.WeightedReading;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Reads a file of typed readings for balancing: {@code readings}, of which the first is the run without weights, and
 * where weights may go: {@code places}, {@code largestMassG}, {@code stockG}. Unknown keys are refused with the nearest
 * known one.
 */
final class BalanceReadings {
    /** More than any hub carries; a mistyped unit shows. */
    private static final double MOST_G = 5000;

    private static final double MOST_MM = 5000; // farther out than any propeller's tip
    /** Angles beyond one turn either way are taken for a slip. */
    private static final double MOST_DEG = 360;

    private static final double LEAST = 1e-6; // stands for 'above zero'
    private static final double MOST_AMPLITUDE = 1e9; // beyond any unit's use; a mistyped exponent shows

    private BalanceReadings() {}

    /**
     * Reads it.
     *
     * @throws evenblade.base.problem.BadInput with the line, where something in it can't be used
     */
    static BalanceRequest read(Path file) {
        JsonObject json = JsonDocument.read(file);
        json.requireOnly("readings", "places", "largestMassG", "stockG");
        List<JsonObject> runs = json.objects("readings");
        if (runs.size() < 2) {
            throw json.place("readings")
                    .found(
                            runs.isEmpty() ? "no readings" : "one reading",
                            "\"readings\": one run without weights and one or more with a weight");
        }
        List<WeightedReading> readings =
                runs.stream().map(BalanceReadings::reading).toList();
        if (!readings.get(0).bare()) {
            throw runs.get(0).refuse("weights", "no weights in the first reading: it is the run without any");
        }
        return new BalanceRequest(
                readings,
                RunsTogether.typedIn(),
                places(json),
                json.optionalNumber("largestMassG", LEAST, MOST_G),
                stock(json));
    }

    private static WeightedReading reading(JsonObject json) {
        json.requireOnly("amplitude", "phaseDeg", "standardError", "weights");
        List<Weight> weights =
                json.objects("weights").stream().map(BalanceReadings::weight).toList();
        OptionalDouble error = json.optionalNumber("standardError", 0, MOST_AMPLITUDE);
        return new WeightedReading(
                json.number("amplitude", 0, MOST_AMPLITUDE),
                json.optionalNumber("phaseDeg", -MOST_DEG, MOST_DEG),
                error.orElse(0),
                weights);
    }

    static Weight weight(JsonObject json) {
        json.requireOnly("massG", "radiusMm", "angleDeg", "massErrorG");
        double mass = json.number("massG", LEAST, MOST_G);
        return new Weight(
                mass,
                json.number("radiusMm", LEAST, MOST_MM),
                json.number("angleDeg", -MOST_DEG, MOST_DEG),
                json.optionalNumber("massErrorG", 0, mass).orElse(Weight.usualMassErrorG(mass)));
    }

    private static List<HubPlace> places(JsonObject json) {
        List<HubPlace> places = new ArrayList<>();
        for (JsonObject place : json.objects("places")) {
            place.requireOnly("name", "angleDeg", "radiusMm");
            String name = place.text("name");
            if (places.stream().anyMatch(p -> p.name().equals(name))) {
                throw place.refuse("name", "each place once");
            }
            places.add(new HubPlace(
                    name, place.number("angleDeg", -MOST_DEG, MOST_DEG), place.number("radiusMm", LEAST, MOST_MM)));
        }
        return places;
    }

    private static List<Double> stock(JsonObject json) {
        List<Double> stock = json.numbers("stockG");
        if (stock.stream().anyMatch(g -> !(g >= LEAST && g <= MOST_G))) {
            throw json.place("stockG").found("a mass of " + stock, "masses in g above zero");
        }
        return stock;
    }
}
