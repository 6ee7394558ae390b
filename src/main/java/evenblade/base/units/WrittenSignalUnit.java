package evenblade.base.units;

import java.util.List;
import java.util.Optional;

/**
 * A unit of a signal as people write it.
 *
 * @param text as written
 * @param unit that it stands for
 * @param factor how many of that one it is
 */
record WrittenSignalUnit(String text, SignalUnit unit, double factor) {
    /** What to say was expected, where none of them is found. */
    static final String KNOWN = "m/s2, g, mm/s, m/s, in/s or V";

    private static final List<WrittenSignalUnit> ALL = List.of(
            new WrittenSignalUnit("m/s2", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            new WrittenSignalUnit("m/s²", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            new WrittenSignalUnit("m/s^2", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            new WrittenSignalUnit("m/s/s", SignalUnit.METRE_PER_SECOND_SQUARED, 1),
            new WrittenSignalUnit("g", SignalUnit.STANDARD_GRAVITY, 1),
            new WrittenSignalUnit("mg", SignalUnit.STANDARD_GRAVITY, 1e-3),
            new WrittenSignalUnit("m/s", SignalUnit.METRE_PER_SECOND, 1),
            new WrittenSignalUnit("mm/s", SignalUnit.MILLIMETRE_PER_SECOND, 1),
            new WrittenSignalUnit("in/s", SignalUnit.INCH_PER_SECOND, 1),
            new WrittenSignalUnit("ips", SignalUnit.INCH_PER_SECOND, 1),
            new WrittenSignalUnit("V", SignalUnit.VOLT, 1),
            new WrittenSignalUnit("mV", SignalUnit.VOLT, 1e-3));

    /** The unit written like that. */
    static Optional<WrittenSignalUnit> of(String text) {
        return ALL.stream().filter(each -> each.text.equals(text)).findFirst();
    }
}
