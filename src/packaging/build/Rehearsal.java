import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.lang.reflect.Method;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import javax.swing.SwingUtilities;

/**
 * Does once what users do, so that the virtual machine can keep what it learns by it: loaded classes and
 * which methods are hot. It is packed beside the program because the virtual machine takes what was kept
 * only where the class path is the same; the program itself never calls it.
 *
 * <p>Arguments: the main class of the program, the folder of the samples, an empty folder to work in, and what
 * to rehearse: "measuring" (help, plan, orders) or "job" (the window where there is a display, a job, its
 * report). Two, because the virtual machine gets all kept classes ready at each start: what the window needs
 * would hold up the command line.
 */
public final class Rehearsal {
    /** So often the measuring is done: the methods that matter must be known as hot, and 8 takes seconds only. */
    private static final int ROUNDS = 8;
    /** So often the sound of a sample is repeated in a long recording: some minutes, as ground runs are. */
    private static final int REPEATS = 30;
    /** Where the samples of sound begin in a WAV file of the plainest kind, as the samples are. */
    private static final int WAV_HEADING = 44;
    /** The window needs this long to be drawn on a slow machine. */
    private static final int WINDOW_MS = 4_000;

    private final Method run;
    private final PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream());
    private final Path samples;
    private final Path work;

    private Rehearsal(Method run, Path samples, Path work) {
        this.run = run;
        this.samples = samples;
        this.work = work;
    }

    public static void main(String[] args) throws Exception {
        // The command line's own door stands beside the one that users go through, and doesn't end the process.
        Class<?> door = Class.forName(args[0].replace(".start.Main", ".cli.Program"));
        Rehearsal rehearsal = new Rehearsal(
                door.getMethod("run", String[].class, PrintStream.class, PrintStream.class),
                Path.of(args[1]),
                Path.of(args[2]));
        switch (args[3]) {
            case "measuring" -> rehearsal.measuring();
            case "job" -> {
                if (System.getenv("DISPLAY") != null) {
                    rehearsal.window(Class.forName(args[0]));
                }
                rehearsal.job();
            }
            default -> throw new IllegalArgumentException(args[3]);
        }
        System.exit(0);
    }

    private void window(Class<?> program) throws Exception {
        program.getMethod("main", String[].class).invoke(null, (Object) new String[0]);
        Thread.sleep(WINDOW_MS);
        SwingUtilities.invokeAndWait(() -> List.of(java.awt.Window.getWindows()).forEach(java.awt.Window::dispose));
    }

    private void measuring() throws Exception {
        say("--help");
        say("--version");
        List<Callable<Void>> measured = new ArrayList<>();
        for (Path folder : below(samples)) {
            Path installation = folder.resolve("installation.json");
            if (Files.exists(installation)) {
                say("plan", "--installation", installation.toString());
                for (Path file : below(folder)) {
                    if (file.toString().matches(".*\\.(wav|csv)")) {
                        measured.add(() -> {
                            say("orders", file.toString(), "--installation", installation.toString(), "--json");
                            say("orders", file.toString(), "--installation", installation.toString());
                            return null;
                        });
                    }
                }
            }
        }
        for (int round = 0; round < ROUNDS; round++) {
            for (Callable<Void> each : measured) {
                each.call();
            }
        }
        Path folder = samples.resolve("geared-three-blade");
        Path minutes = longer(folder.resolve("before-microphone.wav"));
        for (int round = 0; round < ROUNDS; round++) {
            say("orders", minutes.toString(), "--installation", folder.resolve("installation.json").toString(),
                    "--engine-rpm", "4800", "--json");
        }
    }

    /** The same sound over and over, in a file of its own. */
    private Path longer(Path sample) throws IOException {
        byte[] once = Files.readAllBytes(sample);
        int sound = once.length - WAV_HEADING;
        ByteBuffer all = ByteBuffer.allocate(WAV_HEADING + REPEATS * sound).order(ByteOrder.LITTLE_ENDIAN);
        all.put(once, 0, WAV_HEADING);
        for (int i = 0; i < REPEATS; i++) {
            all.put(once, WAV_HEADING, sound);
        }
        all.putInt(4, all.capacity() - 8).putInt(WAV_HEADING - 4, REPEATS * sound);
        return Files.write(work.resolve("minutes.wav"), all.array());
    }

    private void job() throws Exception {
        String job = work.resolve("job").toString();
        say("practice", job, "--seed", "1");
        for (String question : List.of("tracking", "findings", "trend")) {
            say(question, job);
        }
        say("job", "show", job);
        say("report", job, "--out", work.resolve("report").toString());
    }

    /** A command that fails is a fault of the package: it must not be built. */
    private void say(String... words) throws Exception {
        int status = (Integer) run.invoke(null, words, nowhere, System.err);
        if (status != 0) {
            throw new IllegalStateException(String.join(" ", words) + " ended with status " + status);
        }
    }

    private static List<Path> below(Path folder) throws IOException {
        try (var each = Files.list(folder)) {
            return each.sorted().toList();
        }
    }
}
