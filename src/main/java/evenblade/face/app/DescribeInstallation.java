package evenblade.face.app;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderLine.Role;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Answers which installation a filled-in form describes, with the same refusals as for a file. */
public final class DescribeInstallation {
    private static final Set<Role> PROPELLERS = Set.of(Role.UNEVEN_PROPELLER, Role.BLADE_PASS);
    private static final Set<Role> ANY_CYLINDERS =
            Set.of(Role.UNEVEN_PROPELLER, Role.BLADE_PASS, Role.CRANK, Role.MESH);

    private DescribeInstallation() {}

    /**
     * A form as typed; blank where nothing was typed.
     *
     * @param name free text
     * @param cycle one of {@link evenblade.machine.installation.Engine.Cycle#words}
     * @param cylinders whole number
     * @param idleRpm number
     * @param maxRpm number
     * @param drive one of {@link evenblade.machine.installation.Reduction.Kind#words}
     * @param ratio number
     * @param drivingTeeth whole number
     * @param drivenTeeth whole number
     * @param blades whole number
     * @param diameter length with unit
     * @param chord mean width of a blade, length with unit
     * @param bladeMass mass of one blade, with unit
     * @param centreOfGravity distance of a blade's centre of gravity from the shaft's axis, length with unit
     * @param rotation {@code clockwise}, {@code counter-clockwise} or blank
     * @param positionsCounted one of {@link evenblade.machine.installation.HubCounting#words} or blank
     * @param trackLimit length with unit
     * @param limitSource who says so
     * @param sensorAhead how far the sensor sits ahead of the middle between the mounts, length with unit
     * @param sensorAbove how far above it
     * @param positionAtMark hub position nearest to the sensor when the mark gives its pulse, whole number
     */
    public record Form(
            String name,
            String cycle,
            String cylinders,
            String idleRpm,
            String maxRpm,
            String drive,
            String ratio,
            String drivingTeeth,
            String drivenTeeth,
            String blades,
            String diameter,
            String chord,
            String bladeMass,
            String centreOfGravity,
            String rotation,
            String positionsCounted,
            String trackLimit,
            String limitSource,
            String sensorAhead,
            String sensorAbove,
            String positionAtMark) {}

    /**
     * Reads the form.
     *
     * @throws BadInput naming the field, where something in it can't be used
     */
    public static Installation describe(Form form) {
        return InstallationFile.of(JsonDocument.parse(JsonWriter.write(fields(form)), "installation"));
    }

    /**
     * The lines that follow from what is typed so far: of the propeller from its blades, of crank and mesh with the drive,
     * of firing with the cylinders.
     */
    public static List<OrderLine> linesSoFar(Form form) {
        try {
            return describe(form).orders().lines();
        } catch (BadInput unfinished) {
            List<OrderLine> withDrive = lines(form.drive(), form, ANY_CYLINDERS);
            return withDrive.isEmpty() ? lines("direct", form, PROPELLERS) : withDrive;
        }
    }

    /** Lines of these kinds behind a drive, with an engine of which no more is known; none where they can't be told. */
    private static List<OrderLine> lines(String drive, Form form, Set<Role> kinds) {
        JsonFields engine =
                new JsonFields().put("cycle", Engine.Cycle.words().get(0)).put("cylinders", Engine.MOST_CYLINDERS);
        JsonFields propeller = new JsonFields();
        try {
            number(propeller, "blades", form.blades());
            JsonFields all = new JsonFields()
                    .put("engine", engine)
                    .put("reduction", reduction(drive, form))
                    .put("propeller", propeller);
            return InstallationFile.of(JsonDocument.parse(JsonWriter.write(all), "installation"))
                    .orders()
                    .lines()
                    .stream()
                    .filter(line -> kinds.contains(line.role()))
                    .toList();
        } catch (BadInput unfinished) {
            return List.of();
        }
    }

    private static JsonFields reduction(String drive, Form form) {
        JsonFields reduction = new JsonFields().put("kind", drive);
        if (!drive.equals("direct")) {
            number(reduction, "ratio", form.ratio());
            number(reduction, "drivingTeeth", form.drivingTeeth());
            number(reduction, "drivenTeeth", form.drivenTeeth());
        }
        return reduction;
    }

    private static JsonFields fields(Form form) {
        JsonFields engine = new JsonFields().put("cycle", form.cycle());
        if (!form.cycle().equals("electric")) {
            number(engine, "cylinders", form.cylinders());
        }
        number(engine, "idleRpm", form.idleRpm());
        number(engine, "maxRpm", form.maxRpm());
        JsonFields propeller = new JsonFields();
        number(propeller, "blades", form.blades());
        typed(form.diameter()).ifPresent(text -> propeller.put("diameter", text));
        typed(form.chord()).ifPresent(text -> propeller.put("chord", text));
        typed(form.bladeMass()).ifPresent(text -> propeller.put("bladeMass", text));
        typed(form.centreOfGravity()).ifPresent(text -> propeller.put("centreOfGravity", text));
        typed(form.rotation()).ifPresent(text -> propeller.put("rotation", text));
        typed(form.positionsCounted()).ifPresent(text -> propeller.put("positionsCounted", text));
        JsonFields all = new JsonFields();
        typed(form.name()).ifPresent(text -> all.put("name", text));
        all.put("engine", engine)
                .put("reduction", reduction(form.drive(), form))
                .put("propeller", propeller);
        if (typed(form.trackLimit()).isPresent()) {
            JsonFields limit = new JsonFields().put("value", form.trackLimit().strip());
            typed(form.limitSource()).ifPresent(text -> limit.put("source", text));
            all.put("limits", new JsonFields().put("trackSpread", limit));
        }
        boolean placed = typed(form.sensorAhead()).isPresent()
                || typed(form.sensorAbove()).isPresent()
                || typed(form.positionAtMark()).isPresent();
        if (placed) {
            JsonFields sensor = new JsonFields();
            number(sensor, "positionAtMark", form.positionAtMark());
            typed(form.sensorAhead()).ifPresent(text -> sensor.put("ahead", text));
            typed(form.sensorAbove()).ifPresent(text -> sensor.put("above", text));
            all.put("sensor", sensor);
        }
        return all;
    }

    /** A form filled in with an installation as it was written; what it has no field for is left out. */
    public static Form form(Map<String, Object> written) {
        return new Form(
                text(written, "name"),
                text(written, "engine", "cycle"),
                text(written, "engine", "cylinders"),
                text(written, "engine", "idleRpm"),
                text(written, "engine", "maxRpm"),
                text(written, "reduction", "kind"),
                text(written, "reduction", "ratio"),
                text(written, "reduction", "drivingTeeth"),
                text(written, "reduction", "drivenTeeth"),
                text(written, "propeller", "blades"),
                text(written, "propeller", "diameter"),
                text(written, "propeller", "chord"),
                text(written, "propeller", "bladeMass"),
                text(written, "propeller", "centreOfGravity"),
                text(written, "propeller", "rotation"),
                text(written, "propeller", "positionsCounted"),
                text(written, "limits", "trackSpread", "value"),
                text(written, "limits", "trackSpread", "source"),
                text(written, "sensor", "ahead"),
                text(written, "sensor", "above"),
                text(written, "sensor", "positionAtMark"));
    }

    private static String text(Object in, String... keys) {
        Object at = in;
        for (String key : keys) {
            at = at instanceof Map<?, ?> map ? map.get(key) : null;
        }
        return at == null ? "" : at instanceof Number number ? number(number.doubleValue()) : String.valueOf(at);
    }

    private static String number(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }

    /**
     * An installation as it was written, with a form over it: what the form has a field for is as typed, and gone where
     * nothing is typed; everything else stays.
     */
    static Map<String, Object> over(Map<String, Object> written, Form form) {
        Map<String, Object> known = plain(fields(form(written)));
        return merged(written, known, plain(fields(form)));
    }

    private static Map<String, Object> plain(JsonFields fields) {
        return JsonDocument.parse(JsonWriter.write(fields), "installation").plain();
    }

    private static Map<String, Object> merged(Map<?, ?> written, Map<?, ?> known, Map<?, ?> typed) {
        Map<String, Object> merged = new LinkedHashMap<>();
        written.forEach((key, value) -> {
            Object was = known.get(key);
            Object is = typed.get(key);
            if (value instanceof Map<?, ?> inner) {
                Map<String, Object> below = merged(inner, mapOr(was), mapOr(is));
                if (!below.isEmpty()) {
                    merged.put(String.valueOf(key), below);
                }
            } else if (was == null && is == null) {
                merged.put(String.valueOf(key), value);
            } else if (is != null) {
                merged.put(String.valueOf(key), is);
            }
        });
        typed.forEach((key, value) -> merged.putIfAbsent(String.valueOf(key), value));
        return merged;
    }

    private static Map<?, ?> mapOr(Object value) {
        return value instanceof Map<?, ?> map ? map : Map.of();
    }

    private static Optional<String> typed(String text) {
        return text.isBlank() ? Optional.empty() : Optional.of(text.strip());
    }

    private static void number(JsonFields json, String key, String text) {
        if (text.isBlank()) {
            return;
        }
        try {
            double value = Double.parseDouble(text.strip());
            if (value == Math.rint(value) && Math.abs(value) < 1e9) {
                json.put(key, (int) value);
            } else {
                json.put(key, value);
            }
        } catch (NumberFormatException e) {
            throw BadInput.in("installation \"" + key + "\"").key(key).found("\"" + text.strip() + "\"", "a number");
        }
    }
}
