package evenblade.base.fact;

import java.util.Locale;

/** Says which kind of fact something is; every enum that does is a list of all facts of its room. */
public interface Code {
    /** The constant's name; an enum gives it by itself. */
    String name();

    /** As written in JSON and shown behind a message: {@code kebab-case}. */
    default String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
