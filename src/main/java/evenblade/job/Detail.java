package evenblade.job;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/** What belongs to one kind of entry. */
public sealed interface Detail {
    Kind kind();

    /**
     * A ground run.
     *
     * @param file the raw recording
     * @param settings how it is to be analysed
     * @param conditions what it was like, and with which sensor
     */
    record Run(StoredFile file, RunSettings settings, Conditions conditions) implements Detail {
        @Override
        public Kind kind() {
            return Kind.RUN;
        }
    }

    /** Something was changed; the entry's text says what. */
    record Correction() implements Detail {
        @Override
        public Kind kind() {
            return Kind.CORRECTION;
        }
    }

    /** A remark; the entry's text. */
    record Note() implements Detail {
        @Override
        public Kind kind() {
            return Kind.NOTE;
        }
    }

    /**
     * Tip marks against a block that doesn't move.
     *
     * @param layout blade by hub position
     * @param readings tip marks by hub position, repeats in the order of reading
     * @param sigma standard deviation of one reading, where stated
     */
    record Tracking(
            SortedMap<Integer, String> layout,
            SortedMap<Integer, List<EnteredLength>> readings,
            Optional<EnteredLength> sigma)
            implements Detail {
        public Tracking {
            layout = Collections.unmodifiableSortedMap(new TreeMap<>(layout));
            SortedMap<Integer, List<EnteredLength>> copy = new TreeMap<>();
            readings.forEach((position, repeats) -> copy.put(position, List.copyOf(repeats)));
            readings = Collections.unmodifiableSortedMap(copy);
        }

        @Override
        public Kind kind() {
            return Kind.TRACKING;
        }
    }

    /**
     * Blade angles at a stated station.
     *
     * @param layout blade by hub position
     * @param readingsDeg protractor readings by hub position in degrees, repeats in the order of reading
     * @param station distance from the hub's centre, where stated
     * @param zero what the protractor was set to zero against, in the user's words
     * @param sigmaDeg standard deviation of one reading, where stated
     */
    record Pitch(
            SortedMap<Integer, String> layout,
            SortedMap<Integer, List<Double>> readingsDeg,
            Optional<EnteredLength> station,
            Optional<String> zero,
            OptionalDouble sigmaDeg)
            implements Detail {
        public Pitch {
            layout = Collections.unmodifiableSortedMap(new TreeMap<>(layout));
            SortedMap<Integer, List<Double>> copy = new TreeMap<>();
            readingsDeg.forEach((position, repeats) -> copy.put(position, List.copyOf(repeats)));
            readingsDeg = Collections.unmodifiableSortedMap(copy);
        }

        @Override
        public Kind kind() {
            return Kind.PITCH;
        }
    }

    /**
     * Face run-out of the flange.
     *
     * @param total full indicator reading, largest minus smallest
     * @param dialRadius distance of the dial's tip from the axis
     * @param highAtDeg where the face stands out most, degrees from hub position 1 in the order of the
     *     positions, where noted
     */
    record RunOut(EnteredLength total, EnteredLength dialRadius, OptionalDouble highAtDeg) implements Detail {
        @Override
        public Kind kind() {
            return Kind.RUN_OUT;
        }
    }

    /** A weight put on or taken off; the entry's text says which and where. */
    record Balance() implements Detail {
        @Override
        public Kind kind() {
            return Kind.BALANCE;
        }
    }

    /**
     * A photo or paper.
     *
     * @param file the file
     * @param type what the file is, by its content
     */
    record Attachment(StoredFile file, FileNature type) implements Detail {
        @Override
        public Kind kind() {
            return Kind.ATTACHMENT;
        }
    }

    /**
     * An earlier entry no longer counts. It stays in the record.
     *
     * @param event its id
     */
    record StruckOut(String event) implements Detail {
        @Override
        public Kind kind() {
            return Kind.STRUCK_OUT;
        }
    }
}
