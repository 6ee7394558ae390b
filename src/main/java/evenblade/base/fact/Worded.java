package evenblade.base.fact;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** A constant that has a word of its own in files and answers. */
public interface Worded {
    /** The constant's name; an enum gives it by itself. */
    String name();

    /** As written in JSON and shown behind a message: {@code kebab-case}. */
    default String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The constant that a word means; empty where it means none. */
    static <E extends Enum<E> & Worded> Optional<E> named(Class<E> kind, String word) {
        return Stream.of(kind.getEnumConstants())
                .filter(each -> each.word().equals(word))
                .findFirst();
    }
}
