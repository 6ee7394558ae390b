package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.base.problem.BadInput;
import evenblade.base.units.Length;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation.Propeller;
import evenblade.machine.installation.Installation.Rotation;
import evenblade.machine.installation.Reduction;
import evenblade.tell.document.FigureFormat;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Asks for an installation, one question after the other, each with its unit and an example. An empty answer leaves out what may
 * be left out; an answer that can't be is asked for again.
 */
record InstallationQuestions(BufferedReader answers, PrintWriter out) {
    /** After so many answers that can't be, whoever answers doesn't read the questions. */
    private static final int PATIENCE = 3;

    /** What makes an answer usable: gives what is kept of it, or throws {@link BadInput}. */
    private interface Check {
        Object kept(String answer, BadInput.Place place);
    }

    /**
     * The installation as its file holds it.
     *
     * @throws BadInput where the answers end too early or one can't be
     */
    JsonFields ask() throws IOException {
        out.println("The installation. An empty line leaves out what stands in brackets.");
        JsonFields all = new JsonFields();
        optional("[Name of the aircraft], like: two-seater, left engine", InstallationQuestions::text)
                .ifPresent(name -> all.put("name", name));
        all.put("engine", engine());
        all.put("reduction", reduction());
        all.put("propeller", propeller());
        Optional<Object> limit = optional(
                "[Limit of the track spread, with its unit], like: 1/8 in  or  3 mm", InstallationQuestions::length);
        if (limit.isPresent()) {
            Object source = needed("Where the limit comes from, like: maker's sheet", InstallationQuestions::text);
            all.put(
                    "limits",
                    new JsonFields()
                            .put(
                                    "trackSpread",
                                    new JsonFields().put("value", limit.get()).put("source", source)));
        }
        return all;
    }

    private JsonFields engine() throws IOException {
        List<String> cycles = Engine.Cycle.words();
        Object cycle = needed("Engine: " + String.join(", ", cycles), oneOf(cycles));
        JsonFields engine = new JsonFields().put("cycle", cycle);
        if (!Engine.Cycle.ELECTRIC.word().equals(cycle)) {
            engine.put(
                    "cylinders",
                    needed("Number of cylinders, like: 4", whole(Engine.LEAST_CYLINDERS, Engine.MOST_CYLINDERS)));
        }
        optional("[Idle speed of the engine, rpm], like: 1600", number(Engine.LEAST_RPM, Engine.MOST_RPM))
                .ifPresent(rpm -> engine.put("idleRpm", rpm));
        optional("[Highest speed of the engine, rpm], like: 5800", number(Engine.LEAST_RPM, Engine.MOST_RPM))
                .ifPresent(rpm -> engine.put("maxRpm", rpm));
        return engine;
    }

    private JsonFields reduction() throws IOException {
        List<String> kinds = List.of("gear", "belt", "direct");
        Object kind = needed("Drive between engine and propeller: " + String.join(", ", kinds), oneOf(kinds));
        JsonFields reduction = new JsonFields();
        if (!"direct".equals(kind)) {
            Optional<Object> driving = optional(
                    "[Teeth of the wheel on the engine], like: 21; empty if you only know the ratio",
                    whole(Reduction.LEAST_TEETH, Reduction.MOST_TEETH));
            if (driving.isPresent()) {
                reduction.put("drivingTeeth", driving.get());
                reduction.put(
                        "drivenTeeth",
                        needed(
                                "Teeth of the wheel on the propeller, like: 51",
                                whole(Reduction.LEAST_TEETH, Reduction.MOST_TEETH)));
            } else {
                reduction.put(
                        "ratio",
                        needed(
                                "Ratio, turns of the engine for one of the propeller, like: 2.43",
                                number(Reduction.LEAST_RATIO, Reduction.MOST_RATIO)));
            }
        }
        return reduction.put("kind", kind);
    }

    private JsonFields propeller() throws IOException {
        JsonFields propeller = new JsonFields()
                .put(
                        "blades",
                        needed("Number of blades, like: 3", whole(Propeller.LEAST_BLADES, Propeller.MOST_BLADES)));
        optional("[Diameter of the propeller, with its unit], like: 1.70 m  or  68 in", InstallationQuestions::length)
                .ifPresent(length -> propeller.put("diameter", length));
        List<String> ways = List.of(Rotation.CLOCKWISE.word(), Rotation.COUNTER_CLOCKWISE.word());
        optional("[Which way it turns, seen from behind]: " + String.join(", ", ways), oneOf(ways))
                .ifPresent(way -> propeller.put("rotation", way));
        return propeller;
    }

    private Object needed(String question, Check check) throws IOException {
        return asked(question, check, true).orElseThrow();
    }

    private Optional<Object> optional(String question, Check check) throws IOException {
        return asked(question, check, false);
    }

    private Optional<Object> asked(String question, Check check, boolean needed) throws IOException {
        BadInput.Place place = BadInput.in("answer to '" + question + "'");
        BadInput last = place.found("nothing", "an answer");
        for (int i = 0; i < PATIENCE; i++) {
            out.print(question + "\n> ");
            out.flush();
            String answer = answers.readLine();
            if (answer == null) {
                throw place.found("the end of the answers", "one more");
            }
            if (answer.isBlank()) {
                if (!needed) {
                    return Optional.empty();
                }
                last = place.found("nothing", "an answer");
            } else {
                try {
                    return Optional.of(check.kept(answer.strip(), place));
                } catch (BadInput e) {
                    last = e;
                }
            }
            out.println(last.getMessage());
        }
        throw last;
    }

    private static Object text(String answer, BadInput.Place place) {
        return answer;
    }

    private static Object length(String answer, BadInput.Place place) {
        Length.parsePositive(answer, place);
        return answer;
    }

    private static Check oneOf(List<String> words) {
        return (answer, place) -> words.stream()
                .filter(word -> word.equals(answer.toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(() -> place.found("'" + answer + "'", "one of " + String.join(", ", words)));
    }

    private static Check whole(int least, int most) {
        return (answer, place) -> {
            if (answer.matches("[0-9]{1,6}") && Integer.parseInt(answer) >= least && Integer.parseInt(answer) <= most) {
                return Integer.parseInt(answer);
            }
            throw place.found("'" + answer + "'", "a whole number from " + least + " to " + most);
        };
    }

    private static Check number(double least, double most) {
        return (answer, place) -> {
            if (answer.matches("[0-9]{1,6}([.][0-9]{1,9})?")
                    && Double.parseDouble(answer) >= least
                    && Double.parseDouble(answer) <= most) {
                return Double.parseDouble(answer);
            }
            throw place.found(
                    "'" + answer + "'",
                    "a number from " + FigureFormat.plain(least) + " to " + FigureFormat.plain(most));
        };
    }
}
