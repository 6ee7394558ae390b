package evenblade.face.cli;

/** What the process tells whoever started it. */
final class ExitStatus {
    static final int DONE = 0; // the three are promised to scripts
    /** An input, a job folder or the machine is at fault. */
    static final int BAD_INPUT = 1;
    /** The command line itself is wrong. */
    static final int WRONG_USAGE = 2;
    /** A fault of the program. */
    static final int BUG = 3;

    private ExitStatus() {}

    /** All of them, as the help says it. */
    static final String WORDS =
            "Exit status: 0 done, 1 an input is at fault, 2 wrong usage, 3 a fault in the program itself.";
}
