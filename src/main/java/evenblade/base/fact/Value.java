package evenblade.base.fact;

import evenblade.base.units.SignalUnit;
import java.time.Instant;
import java.util.List;

/** One typed thing that a fact rests on: a quantity, a count, a name that a user gave, another fact. */
public sealed interface Value
        permits Value.Amount,
                Value.Count,
                Value.Estimated,
                Fact,
                Value.Listed,
                Value.Moment,
                Value.Quoted,
                Value.SignalValue {
    /**
     * A number with what it measures.
     *
     * @param value in the unit that {@code measure} names
     * @param measure what it measures
     */
    record Amount(double value, Measure measure) implements Value {}

    /**
     * How many there are.
     *
     * @param number not below 0
     */
    record Count(long number) implements Value {
        public Count {
            if (number < 0) {
                throw new IllegalArgumentException(number + " of something");
            }
        }
    }

    /**
     * A measured number with its 95 % interval.
     *
     * @param value in the unit that {@code measure} names
     * @param low lower end of the interval
     * @param high upper end of the interval
     * @param measure what it measures
     */
    record Estimated(double value, double low, double high, Measure measure) implements Value {}

    /**
     * Several things of a kind.
     *
     * @param items in the order shown
     */
    record Listed(List<Value> items) implements Value {
        public Listed {
            items = List.copyOf(items);
        }

        /** Names that a user or a file gave. */
        public static Listed quoted(List<String> texts) {
            return new Listed(texts.stream().<Value>map(Quoted::new).toList());
        }
    }

    /**
     * A point in time.
     *
     * @param instant when
     */
    record Moment(Instant instant) implements Value {}

    /**
     * Text that a user or a file gave: a label, a channel, a blade's letter. It is shown as it is, never read for meaning.
     *
     * @param text as it came
     */
    record Quoted(String text) implements Value {}

    /**
     * A sample's value, in the unit of its channel.
     *
     * @param value in that unit
     * @param unit may be unstated
     */
    record SignalValue(double value, SignalUnit unit) implements Value {}
}
