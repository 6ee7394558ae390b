package evenblade.base.fact;

/** What a warning is about, so that it can be shown beside that. */
public sealed interface Subject {
    /** Something there is one of, as seen from the result. */
    enum Whole implements Subject {
        /** A recording, or a file of one. */
        RECORDING,
        /** A live input. */
        INPUT,
        /** The engine on paper and its run card. */
        INSTALLATION,
        /** Two or more runs that are held against each other. */
        COMPARISON,
        /** The readings of a blade track. */
        TRACKING
    }

    /** A channel, or a column of a table. */
    record Channel(String name) implements Subject {}

    /** A stretch of steady speed. */
    record Dwell(double engineRpm) implements Subject {}

    /** A line of a file, counted from 1. */
    record FileLine(long number) implements Subject {}

    /** An entry of a job's record. */
    record Entry(String id) implements Subject {}

    /** A file inside a job's folder, with {@code /} between its parts, as a record names it. */
    record StoredFile(String path) implements Subject {}

    /** Any other file. */
    record OtherFile(String path) implements Subject {}
}
