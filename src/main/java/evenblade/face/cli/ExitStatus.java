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
}
