package evenblade.face.start;

import evenblade.face.desktop.Desktop;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;

/** Starts the program. */
public final class Main {
    private Main() {}

    /**
     * Opens the desktop without words, or with a recording in place of a command, as file managers hand it; with
     * other words, or without a display, runs the command line.
     */
    public static void main(String[] args) {
        if (args.length == 0 && Desktop.open()) {
            return;
        }
        if (args.length == 1 && isFile(args[0]) && Desktop.open(Path.of(args[0]))) {
            return;
        }
        evenblade.face.cli.Program.main(args);
    }

    private static boolean isFile(String word) {
        try {
            return Files.isRegularFile(Path.of(word));
        } catch (InvalidPathException e) {
            return false;
        }
    }
}
