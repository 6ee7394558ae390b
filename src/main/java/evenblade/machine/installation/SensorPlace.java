package evenblade.machine.installation;

import evenblade.base.units.Length;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where the sensor sits, as far as it was entered.
 *
 * @param place on the engine, where given
 * @param positionAtMark the hub position that is nearest to the sensor when the mark gives its pulse, from 1, where given
 */
public record SensorPlace(Optional<OnEngine> place, OptionalInt positionAtMark) {
    /** Nothing entered. */
    public static final SensorPlace NONE = new SensorPlace(Optional.empty(), OptionalInt.empty());

    /**
     * On the engine, roughly (a few centimetres are near enough), seen from the middle between the engine mounts. A couple
     * rocks the engine about its middle, a pull at the propeller shoves and rocks it: which of the two a ratio of along to
     * across speaks for depends on this place.
     *
     * @param ahead towards the propeller; below zero behind the middle
     * @param above below zero under it
     */
    public record OnEngine(Length ahead, Length above) {}
}
