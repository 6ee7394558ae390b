package evenblade.machine.plan;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * What to take along to the aircraft. It never overrules the makers' papers or local rules.
 *
 * @param cautions to be read before anybody touches the propeller
 * @param steps the run from setting up to shutting down
 */
public record RunCard(List<Fact> cautions, List<Fact> steps) {
    public RunCard {
        cautions = List.copyOf(cautions);
        steps = List.copyOf(steps);
    }

    static RunCard of(Installation installation, List<PlannedDwell> dwells) {
        return new RunCard(cautions(installation.engine()), steps(dwells));
    }

    private static List<Fact> cautions(Engine engine) {
        return facts(
                engine.cycle() == Engine.Cycle.ELECTRIC ? CardFact.CONTROLLER_OFF : CardFact.IGNITION_OFF,
                CardFact.TIE_DOWN,
                CardFact.KEEP_CLEAR,
                CardFact.NOTHING_LOOSE,
                CardFact.PROTECT_EARS,
                CardFact.THROTTLE_BACK,
                CardFact.MAKERS_LIMITS,
                CardFact.AS_MAKERS_ALLOW,
                CardFact.LICENSED_PERSON);
    }

    private static List<Fact> facts(CardFact... codes) {
        return Stream.of(codes).map(Fact::of).toList();
    }

    private static List<Fact> steps(List<PlannedDwell> dwells) {
        List<Fact> steps = new ArrayList<>(facts(
                CardFact.FIX_SENSOR,
                CardFact.MICROPHONE,
                CardFact.NOTE_CONDITIONS,
                CardFact.WARM_UP,
                CardFact.START_RECORDING));
        if (dwells.isEmpty()) {
            steps.add(Fact.of(CardFact.HOLD_EACH_SPEED, Measure.TIME.of(Planner.SHORTEST_DWELL_S)));
        }
        if (!dwells.isEmpty()) {
            steps.add(Fact.of(CardFact.HOLD_TABLE));
        }
        steps.addAll(facts(CardFact.SHUT_DOWN, CardFact.CHANGE_ONE_THING));
        return steps;
    }

    /** What stands on a run card. */
    public enum CardFact implements Code {
        CONTROLLER_OFF,
        IGNITION_OFF,
        TIE_DOWN,
        KEEP_CLEAR,
        NOTHING_LOOSE,
        PROTECT_EARS,
        THROTTLE_BACK,
        MAKERS_LIMITS,
        AS_MAKERS_ALLOW,
        LICENSED_PERSON,
        FIX_SENSOR,
        MICROPHONE,
        NOTE_CONDITIONS,
        WARM_UP,
        START_RECORDING,
        HOLD_TABLE,
        HOLD_EACH_SPEED,
        SHUT_DOWN,
        CHANGE_ONE_THING
    }
}
