package evenblade.tell.document;

import java.util.Locale;

/** Where a sentence is shown; a few name what to do there. */
public enum Face {
    COMMAND_LINE,
    WINDOW,
    PAPER;

    /** As it ends the name of a phrase that only this face uses. */
    String suffix() {
        return "." + name().toLowerCase(Locale.ROOT);
    }
}
