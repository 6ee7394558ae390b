package evenblade.keep.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Names for files that are being written and that no record names yet. The name tells which program
 * is at it, so that what a crash left behind can be told from work under way.
 */
final class Unfinished {
    private static final Pattern NAME = Pattern.compile("\\.unfinished-(\\d{1,18})-[0-9a-z]+-\\d+(\\..*)?");

    /** A copy that hasn't grown for this long is not under way on another machine either. */
    private static final Duration STILL = Duration.ofMinutes(1);

    private Unfinished() {}

    /** A new name in a folder, with the ending of the name the file will get. */
    static Path in(Path folder, String finalName) {
        int dot = finalName.lastIndexOf('.');
        String ending = dot > 0 ? finalName.substring(dot) : "";
        return folder.resolve(".unfinished-" + ProcessHandle.current().pid() + "-"
                + Long.toString(Math.abs(System.nanoTime()), 36) + "-"
                + Thread.currentThread().getId() + ending);
    }

    static boolean isOne(Path file) {
        return NAME.matcher(file.getFileName().toString()).matches();
    }

    /** Whether the program that wrote it has ended and nobody else is writing to it. */
    static boolean abandoned(Path file) throws IOException {
        Matcher name = NAME.matcher(file.getFileName().toString());
        if (!name.matches() || ProcessHandle.of(Long.parseLong(name.group(1))).isPresent()) {
            return false;
        }
        try {
            return Files.getLastModifiedTime(file).toInstant().plus(STILL).isBefore(Instant.now());
        } catch (NoSuchFileException e) {
            return false;
        }
    }
}
