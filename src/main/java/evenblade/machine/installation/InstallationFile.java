package evenblade.machine.installation;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.base.units.Length;
import evenblade.base.units.Mass;
import evenblade.machine.installation.Installation.Propeller;
import evenblade.machine.installation.Installation.Rotation;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Reads and writes installation files. Only {@code engine}, {@code reduction} and {@code
 * propeller.blades} are needed; unknown keys are refused with the nearest known one.
 */
public final class InstallationFile {
    /** A ratio entered beside tooth counts may be rounded this much (the counts are kept). */
    private static final double ROUNDED_RATIO = 0.005;

    private InstallationFile() {}

    /**
     * Reads an installation file.
     *
     * @throws evenblade.base.problem.BadInput with the line, where something in it can't be used
     */
    public static Installation read(Path file) {
        return of(JsonDocument.read(file));
    }

    /** The installation that a JSON object describes, wherever it stands. */
    public static Installation of(JsonObject json) {
        json.requireOnly("name", "engine", "reduction", "propeller", "limits", "balancing", "sensor");
        Optional<JsonObject> limits = json.optionalObject("limits");
        if (limits.isPresent()) {
            LimitKeys.check(limits.get());
        }
        return new Installation(
                json.optionalText("name"),
                engine(json.object("engine")),
                reduction(json.object("reduction")),
                propeller(json.object("propeller")),
                limits.isPresent() ? LimitKeys.lengths(limits.get()) : List.of(),
                limits.isPresent() ? LimitKeys.angles(limits.get()) : List.of(),
                json.optionalObject("balancing").map(HubWeightKeys::read).orElse(HubWeights.NONE),
                json.optionalObject("sensor")
                        .map(sensor -> sensor(
                                sensor,
                                json.object("propeller")
                                        .whole("blades", Propeller.LEAST_BLADES, Propeller.MOST_BLADES)))
                        .orElse(SensorPlace.NONE));
    }

    private static SensorPlace sensor(JsonObject json, int blades) {
        json.requireOnly("ahead", "above", "positionAtMark");
        boolean placed = json.has("ahead") || json.has("above");
        Optional<SensorPlace.OnEngine> place = placed
                ? Optional.of(new SensorPlace.OnEngine(
                        Length.parse(json.text("ahead"), json.place("ahead")),
                        Length.parse(json.text("above"), json.place("above"))))
                : Optional.empty();
        return new SensorPlace(
                place,
                json.has("positionAtMark")
                        ? OptionalInt.of(json.whole("positionAtMark", 1, blades))
                        : OptionalInt.empty());
    }

    private static JsonFields written(SensorPlace sensor) {
        JsonFields json = new JsonFields();
        sensor.place().ifPresent(place -> json.put("ahead", place.ahead().text())
                .put("above", place.above().text()));
        sensor.positionAtMark().ifPresent(position -> json.put("positionAtMark", position));
        return json;
    }

    private static Engine engine(JsonObject json) {
        json.requireOnly("cycle", "cylinders", "idleRpm", "maxRpm");
        Engine.Cycle cycle = Engine.Cycle.named(json.word("cycle", Engine.Cycle.words()));
        OptionalDouble idle = json.optionalNumber("idleRpm", Engine.LEAST_RPM, Engine.MOST_RPM);
        OptionalDouble max = json.optionalNumber("maxRpm", Engine.LEAST_RPM, Engine.MOST_RPM);
        if (idle.isPresent() && max.isPresent() && idle.getAsDouble() >= max.getAsDouble()) {
            throw json.refuse("idleRpm", "less than the highest rpm, \"maxRpm\"");
        }
        return new Engine(cycle, cylinders(json, cycle), idle, max);
    }

    private static int cylinders(JsonObject json, Engine.Cycle cycle) {
        if (cycle == Engine.Cycle.ELECTRIC) {
            json.optionalWhole("cylinders", 0, Engine.MOST_CYLINDERS); // read to be checked; a motor has none
            return 0;
        }
        return json.whole("cylinders", Engine.LEAST_CYLINDERS, Engine.MOST_CYLINDERS);
    }

    private static Reduction reduction(JsonObject json) {
        json.requireOnly("ratio", "drivingTeeth", "drivenTeeth", "kind");
        Reduction.Kind kind = Reduction.Kind.named(
                json.optionalWord("kind", Reduction.Kind.words()).orElse(""));
        OptionalDouble ratio = json.optionalNumber("ratio", Reduction.LEAST_RATIO, Reduction.MOST_RATIO);
        if (kind == Reduction.Kind.DIRECT) {
            return direct(json, ratio);
        }
        if (json.has("drivingTeeth") || json.has("drivenTeeth")) {
            return toothed(json, kind, ratio);
        }
        if (ratio.isEmpty()) {
            throw json.place()
                    .found(
                            "\"reduction\" gives no ratio",
                            "\"ratio\", or \"drivingTeeth\" and \"drivenTeeth\", or \"kind\": \"direct\"");
        }
        return Reduction.ofRatio(kind, ratio.getAsDouble());
    }

    private static Reduction direct(JsonObject json, OptionalDouble ratio) {
        for (String key : List.of("drivingTeeth", "drivenTeeth")) {
            if (json.has(key)) {
                throw json.refuse(key, "no teeth, for the drive is direct");
            }
        }
        if (ratio.orElse(1) != 1) {
            throw json.refuse("ratio", "1, for the drive is direct");
        }
        return Reduction.direct();
    }

    private static Reduction toothed(JsonObject json, Reduction.Kind kind, OptionalDouble ratio) {
        Reduction.Teeth teeth = new Reduction.Teeth(
                json.whole("drivingTeeth", Reduction.LEAST_TEETH, Reduction.MOST_TEETH),
                json.whole("drivenTeeth", Reduction.LEAST_TEETH, Reduction.MOST_TEETH));
        String made = String.format(
                Locale.ROOT, "%.6f, the ratio of %d to %d teeth", teeth.ratio(), teeth.driven(), teeth.driving());
        if (teeth.ratio() < Reduction.LEAST_RATIO || teeth.ratio() > Reduction.MOST_RATIO) {
            throw json.place("drivenTeeth")
                    .found(
                            "a ratio of " + made,
                            String.format(
                                    Locale.ROOT,
                                    "a ratio from %.1f to %.0f",
                                    Reduction.LEAST_RATIO,
                                    Reduction.MOST_RATIO));
        }
        if (ratio.isPresent() && Math.abs(ratio.getAsDouble() / teeth.ratio() - 1) > ROUNDED_RATIO) {
            throw json.refuse("ratio", made);
        }
        return Reduction.ofTeeth(kind, teeth);
    }

    private static Propeller propeller(JsonObject json) {
        json.requireOnly("blades", "diameter", "rotation", "bladeMass", "centreOfGravity", "chord", "positionsCounted");
        int blades = json.whole("blades", Propeller.LEAST_BLADES, Propeller.MOST_BLADES);
        Optional<Length> diameter = length(json, "diameter");
        Optional<Mass> mass = json.has("bladeMass")
                ? Optional.of(Mass.parsePositive(json.text("bladeMass"), json.place("bladeMass")))
                : Optional.empty();
        Optional<Length> centre = length(json, "centreOfGravity");
        if (centre.isPresent()
                && diameter.isPresent()
                && centre.get().metres() >= diameter.get().metres() / 2) {
            throw json.refuse("centreOfGravity", "less than half of \"propeller.diameter\"");
        }
        Optional<Length> chord = length(json, "chord");
        if (chord.isPresent()
                && diameter.isPresent()
                && chord.get().metres() >= diameter.get().metres() / 2) {
            throw json.refuse("chord", "less than half of \"propeller.diameter\"");
        }
        return new Propeller(
                blades,
                diameter,
                rotation(json),
                mass,
                centre,
                chord,
                json.optionalWord("positionsCounted", HubCounting.words()).map(HubCounting::named));
    }

    private static Optional<Rotation> rotation(JsonObject json) {
        Optional<String> word =
                json.optionalWord("rotation", List.of(Rotation.CLOCKWISE.word(), Rotation.COUNTER_CLOCKWISE.word()));
        if (word.isEmpty()) {
            return Optional.empty();
        }
        boolean clockwise = word.get().equals(Rotation.CLOCKWISE.word());
        return Optional.of(clockwise ? Rotation.CLOCKWISE : Rotation.COUNTER_CLOCKWISE);
    }

    private static Optional<Length> length(JsonObject json, String key) {
        return json.has(key) ? Optional.of(Length.parsePositive(json.text(key), json.place(key))) : Optional.empty();
    }

    /** The installation as an installation file holds it; lengths come out in mm or m. */
    public static JsonFields written(Installation installation) {
        JsonFields all = new JsonFields();
        installation.name().ifPresent(name -> all.put("name", name));
        all.put("engine", written(installation.engine()));
        all.put("reduction", written(installation.reduction()));
        all.put("propeller", written(installation.propeller()));
        if (!installation.limits().isEmpty() || !installation.pitchLimits().isEmpty()) {
            all.put("limits", LimitKeys.written(installation));
        }
        if (!installation.hubWeights().equals(HubWeights.NONE)) {
            all.put("balancing", HubWeightKeys.written(installation.hubWeights()));
        }
        if (!installation.sensor().equals(SensorPlace.NONE)) {
            all.put("sensor", written(installation.sensor()));
        }
        return all;
    }

    private static JsonFields written(Engine engine) {
        JsonFields json = new JsonFields().put("cycle", engine.cycle().word());
        if (engine.cycle() != Engine.Cycle.ELECTRIC) {
            json.put("cylinders", engine.cylinders());
        }
        engine.idleRpm().ifPresent(rpm -> json.put("idleRpm", rpm));
        engine.maxRpm().ifPresent(rpm -> json.put("maxRpm", rpm));
        return json;
    }

    private static JsonFields written(Reduction reduction) {
        JsonFields json = new JsonFields();
        if (reduction.teeth().isPresent()) {
            Reduction.Teeth teeth = reduction.teeth().get();
            json.put("drivingTeeth", teeth.driving()).put("drivenTeeth", teeth.driven());
        } else if (reduction.kind() != Reduction.Kind.DIRECT) {
            json.put("ratio", reduction.ratio());
        }
        if (reduction.kind() != Reduction.Kind.UNSTATED) {
            json.put("kind", reduction.kind().word());
        }
        return json;
    }

    private static JsonFields written(Propeller propeller) {
        JsonFields json = new JsonFields().put("blades", propeller.blades());
        propeller.diameter().ifPresent(length -> json.put("diameter", length.text()));
        propeller.rotation().ifPresent(rotation -> json.put("rotation", rotation.word()));
        propeller.bladeMass().ifPresent(mass -> json.put("bladeMass", mass.text()));
        propeller.centreOfGravity().ifPresent(length -> json.put("centreOfGravity", length.text()));
        propeller.chord().ifPresent(length -> json.put("chord", length.text()));
        propeller.positionsCounted().ifPresent(counted -> json.put("positionsCounted", counted.word()));
        return json;
    }
}
