package evenblade.judge.balance;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What has to be known about one run, beside its reading, before it may be used for balancing.
 *
 * @param speedConfirmed whether lines or a mark confirm the speed
 * @param propellerRpm the speed
 * @param sharedCrankOrder the order of the crank line that can't be told from propeller 1×, where one can't
 * @param directDrive whether propeller and crank turn as one
 * @param changes what was changed since the run before, the weights left out; in the user's words
 * @param sensor what about the sensor differs from the first run
 * @param dwells 1× in dwells at other speeds of the same run, by rising speed; may be empty
 * @param halfOrderShare propeller ½× over 1×, where ½× was found and is no line of the crank
 */
public record TrialConditions(
        boolean speedConfirmed,
        double propellerRpm,
        OptionalDouble sharedCrankOrder,
        boolean directDrive,
        List<String> changes,
        Set<Objection.SensorAspect> sensor,
        List<DwellReading> dwells,
        OptionalDouble halfOrderShare) {
    public TrialConditions {
        changes = List.copyOf(changes);
        sensor = Set.copyOf(sensor);
        dwells = List.copyOf(dwells);
    }

    /** A run with nothing against it. */
    public static TrialConditions good(double propellerRpm) {
        return new TrialConditions(
                true,
                propellerRpm,
                OptionalDouble.empty(),
                false,
                List.of(),
                Set.of(),
                List.of(),
                OptionalDouble.empty());
    }

    /**
     * Propeller 1× in one dwell.
     *
     * @param amplitude in any unit
     * @param standardError of the amplitude
     * @param phaseDeg where there is a mark
     */
    public record DwellReading(double propellerRpm, double amplitude, double standardError, OptionalDouble phaseDeg) {}
}
