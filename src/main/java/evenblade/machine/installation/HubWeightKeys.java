package evenblade.machine.installation;

import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import evenblade.base.units.Mass;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The key {@code balancing} of an installation file. */
final class HubWeightKeys {
    private HubWeightKeys() {}

    static HubWeights read(JsonObject json) {
        json.requireOnly("places", "largestMass", "weights", "angles");
        Optional<Mass> largest = json.has("largestMass")
                ? Optional.of(Mass.parsePositive(json.text("largestMass"), json.place("largestMass")))
                : Optional.empty();
        return new HubWeights(
                places(json),
                largest,
                json.texts("weights").stream()
                        .map(text -> Mass.parsePositive(text, json.place("weights")))
                        .toList(),
                json.optionalWord("angles", HubCounting.words()).map(HubCounting::named));
    }

    private static List<HubWeights.Place> places(JsonObject json) {
        List<HubWeights.Place> places = new ArrayList<>();
        for (JsonObject place : json.objects("places")) {
            place.requireOnly("name", "angle", "radius");
            String name = place.text("name");
            if (places.stream().anyMatch(p -> p.name().equals(name))) {
                throw place.refuse("name", "each place once");
            }
            places.add(new HubWeights.Place(
                    name,
                    Angle.parse(place.text("angle"), place.place("angle")),
                    Length.parsePositive(place.text("radius"), place.place("radius"))));
        }
        return places;
    }

    static JsonFields written(HubWeights weights) {
        JsonFields json = new JsonFields();
        if (!weights.places().isEmpty()) {
            json.put(
                    "places",
                    weights.places().stream().map(HubWeightKeys::written).toList());
        }
        weights.largest().ifPresent(mass -> json.put("largestMass", mass.text()));
        if (!weights.stock().isEmpty()) {
            json.put("weights", weights.stock().stream().map(Mass::text).toList());
        }
        weights.angles().ifPresent(counted -> json.put("angles", counted.word()));
        return json;
    }

    private static JsonFields written(HubWeights.Place place) {
        return new JsonFields()
                .put("name", place.name())
                .put("angle", place.angle().text())
                .put("radius", place.radius().text());
    }
}
