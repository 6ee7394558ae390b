package evenblade.base.problem;

import java.nio.file.Path;
import java.util.Optional;

/**
 * An input that can't be used, told in one line: where, what was found, what was expected.
 *
 * <p>Thrown wherever the fault lies with a file, a job folder or an entered value; the command line
 * turns it into one line on standard error and exit status 1. A fault of the program itself is never
 * a {@code BadInput}.
 */
public final class BadInput extends RuntimeException {
    /** No phrase of this program comes near it; only quotes of an input do. */
    private static final int LONGEST = 600;

    private final Place place;
    private final String found;
    private final String expected;

    private BadInput(Place place, String found, String expected) {
        super(shortened(place.name()) + ": " + found + ", expected " + expected);
        this.place = place;
        this.found = found;
        this.expected = expected;
    }

    /** Where the fault lies. */
    public Place place() {
        return place;
    }

    /** What was expected there, as it ends the message. */
    public String expected() {
        return expected;
    }

    /** What was found and expected, where the place needs no telling. */
    public String withoutPlace() {
        return found + ", expected " + expected;
    }

    /** Starts a complaint about a file. */
    public static Place in(Path file) {
        return in(file.toString());
    }

    /** Starts a complaint about something that is not a file: an option, a field, standard input. */
    public static Place in(String source) {
        return new Place(source, Optional.empty());
    }

    /**
     * Where the fault lies; refined by line, byte or key and completed with {@link #found}.
     *
     * @param name as it is told
     * @param key of a document or form in whose value it lies, as {@code engine.cylinders}
     */
    public record Place(String name, Optional<String> key) {
        /** A line of this place, counted from 1. */
        public Place line(long line) {
            return new Place(name + ":" + line, key);
        }

        /** A byte of this place, counted from 0. */
        public Place atByte(long offset) {
            return new Place(name + ":byte " + offset, key);
        }

        /** The value of a key; the message stays as it is. */
        public Place key(String key) {
            return new Place(name, Optional.of(key));
        }

        /** The finished complaint; both parts are phrases without a full stop. */
        public BadInput found(String found, String expected) {
            return new BadInput(this, oneLine(found), oneLine(expected));
        }

        private static String oneLine(String text) {
            return shortened(text.replaceAll("\\s*[\\r\\n]+\\s*", " ").strip());
        }
    }

    /** What an input says is quoted up to a line; the middle goes, since the end often says what was wrong. */
    private static String shortened(String text) {
        return text.length() <= LONGEST
                ? text
                : text.substring(0, LONGEST * 2 / 3) + " … " + text.substring(text.length() - LONGEST / 3);
    }
}
