package evenblade.machine.plan;

import evenblade.base.fact.Warning;
import evenblade.machine.installation.Installation;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a ground run of an installation will show.
 *
 * @param installation what will run
 * @param places every spot on the scale of orders, lowest first, whatever the speed
 * @param sampleRateHz of the sensor, where it was said
 * @param dwells the speeds to hold; empty where none is known
 * @param card how to go about it
 * @param warnings what to know about the plan
 */
public record RunPlan(
        Installation installation,
        List<Place> places,
        OptionalDouble sampleRateHz,
        List<PlannedDwell> dwells,
        RunCard card,
        List<Warning> warnings) {
    public RunPlan {
        places = List.copyOf(places);
        dwells = List.copyOf(dwells);
        warnings = List.copyOf(warnings);
    }

    /** Places where several lines coincide at every speed. */
    public List<Place> coincident() {
        return places.stream().filter(Place::shared).toList();
    }

    /** The highest frequency that the sensor can measure, where its rate was said. */
    public OptionalDouble usableUpToHz() {
        return sampleRateHz.isPresent()
                ? OptionalDouble.of(Planner.usableUpToHz(sampleRateHz.getAsDouble()))
                : OptionalDouble.empty();
    }
}
