package evenblade.machine.plan;

import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What to take along to the aircraft. It never overrules the makers' papers or local rules.
 *
 * @param cautions to be read before anybody touches the propeller
 * @param steps the run from setting up to shutting down
 */
public record RunCard(List<String> cautions, List<String> steps) {
    public RunCard {
        cautions = List.copyOf(cautions);
        steps = List.copyOf(steps);
    }

    static RunCard of(Installation installation, List<PlannedDwell> dwells) {
        return new RunCard(cautions(installation.engine()), steps(dwells));
    }

    private static List<String> cautions(Engine engine) {
        String dead = engine.cycle() == Engine.Cycle.ELECTRIC
                ? "Before a hand goes near the propeller: controller off, battery unplugged and out of reach."
                : "Before a hand goes near the propeller: ignition off, key in your pocket, plug leads off or"
                        + " grounded.";
        return List.of(
                dead + " Handle it as if it could start all the same.",
                "Tie the aircraft down and chock it. One person sits at the controls for the whole run.",
                "Nobody stands in the propeller's arc or in its plane, to the side included. Agree on a sign for"
                        + " stop.",
                "Pick up whatever lies loose. Lead the cables and stand the laptop behind the arc, and fix them"
                        + " so that they can't creep or blow forward.",
                "Wear ear and eye protection.",
                "If sound, shaking or a gauge changes suddenly: throttle back and shut down at once.",
                "The engine and propeller makers' limits for speed, temperature and time hold, and so do the"
                        + " local rules. No plot is worth going past them.",
                "Weights, shims and blade angles are changed only as the makers allow.",
                "This program measures and keeps records. Whether the aircraft flies is for the licensed person"
                        + " to decide.");
    }

    private static List<String> steps(List<PlannedDwell> dwells) {
        List<String> steps = new ArrayList<>(List.of(
                "Fix the sensor on the engine's side of the mounts. Write down its place and direction; they stay"
                        + " the same for every run that is to be compared.",
                "With a microphone: switch off automatic gain and noise suppression, and put it where it was last"
                        + " time.",
                "Note wind, temperature, fuel on board and what was changed since the last run.",
                "Head into the wind. Start and warm up as the engine's maker says.",
                "Start recording."));
        if (dwells.isEmpty()) {
            steps.add(String.format(
                    Locale.ROOT,
                    "Hold each speed of interest for at least %.0f s, throttle untouched.",
                    Planner.SHORTEST_DWELL_S));
        }
        if (!dwells.isEmpty()) {
            steps.add("Hold each speed of the table in turn, throttle untouched. Write down what the gauges read.");
        }
        steps.addAll(List.of(
                "Cool down and shut down as the engine's maker says. Stop recording when the propeller stands.",
                "Change one thing only, then run the same speeds again. A second run with nothing changed shows"
                        + " how far readings scatter by themselves."));
        return steps;
    }
}
