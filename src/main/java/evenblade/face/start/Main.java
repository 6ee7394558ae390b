package evenblade.face.start;

import evenblade.face.desktop.Desktop;

/** Starts the program. */
public final class Main {
    private Main() {}

    /** Opens the desktop without words; with words, or without a display, runs the command line. */
    public static void main(String[] args) {
        if (args.length == 0 && Desktop.open()) {
            return;
        }
        evenblade.face.cli.Program.main(args);
    }
}
