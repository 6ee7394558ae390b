package evenblade.tell.chart;

import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A place in a picture that a cursor stands on, with what can be read off there.
 *
 * @param part which of the picture's plots, from 0
 * @param x on the lying axis
 * @param y on the upright axis
 * @param name of the line, row or run; empty where the place has none
 * @param readings frequency or time first
 */
public record Spot(int part, double x, double y, String name, List<Reading> readings) {
    /** What a reading is of. */
    public enum What {
        TIME(2, "s"),
        FREQUENCY(2, "Hz"),
        PROPELLER_ORDER(3, "× propeller"),
        CRANK_ORDER(3, "× crank"),
        AMPLITUDE(0, ""),
        LEVEL(1, "dB"),
        ENGINE_RPM(0, "rpm engine"),
        PROPELLER_RPM(0, "rpm propeller"),
        ANGLE(0, "°");

        private final int decimals;
        private final String unit;

        What(int decimals, String unit) {
            this.decimals = decimals;
            this.unit = unit;
        }
    }

    /**
     * One figure.
     *
     * @param what it is of
     * @param value in the unit of its kind; of amplitudes, in {@code unit}
     * @param half half its 95 % interval; 0 where that isn't known
     * @param unit of amplitudes; empty for the others
     * @param of the curve it was read off; empty for the picture's own
     */
    public record Reading(What what, double value, double half, String unit, String of) {
        static Reading of(What what, double value) {
            return new Reading(what, value, 0, "", "");
        }

        /** The figure without its unit, with its error where that is known. */
        public String number() {
            return what == What.AMPLITUDE
                    ? FigureFormat.withError(value, half)
                    : FigureFormat.fixed(value, what.decimals);
        }

        String words() {
            return (of.isEmpty() ? "" : of + " ") + number() + (what == What.ANGLE ? "°" : " " + unitWords());
        }

        private String unitWords() {
            return what == What.AMPLITUDE ? unit : what.unit;
        }

        private List<String> differenceTo(Reading other) {
            if (what != What.AMPLITUDE) {
                return List.of(FigureFormat.offset(other.value - value, what.decimals)
                        + (what == What.ANGLE ? "°" : " " + unitWords()));
            }
            String prefix = of.isEmpty() ? "" : of + " ";
            // Of momentary values that may be negative no ratio means anything.
            return value > 0 && other.value > 0
                    ? List.of(
                            prefix + FigureFormat.plain(other.value / value) + " times",
                            FigureFormat.offset(20 * Math.log10(other.value / value), 1) + " dB")
                    : List.of(prefix + FigureFormat.offset(other.value - value, FigureFormat.decimals(half)) + " "
                            + unit);
        }
    }

    public Spot {
        readings = List.copyOf(readings);
    }

    /** The first reading of a kind. */
    public Optional<Reading> reading(What what) {
        return readings.stream().filter(each -> each.what() == what).findFirst();
    }

    /** All that is read off here, for people. */
    public List<String> words() {
        List<String> words = new ArrayList<>();
        if (!name.isEmpty()) {
            words.add(name);
        }
        readings.forEach(each -> words.add(each.words()));
        return words;
    }

    /** What changes from here to another place, for people. */
    public List<String> differenceTo(Spot other) {
        List<String> words = new ArrayList<>();
        for (Reading here : readings) {
            other.readings.stream()
                    .filter(there -> there.what() == here.what()
                            && there.of().equals(here.of())
                            && there.unit().equals(here.unit()))
                    .findFirst()
                    .ifPresent(there -> words.addAll(here.differenceTo(there)));
        }
        return words;
    }
}
