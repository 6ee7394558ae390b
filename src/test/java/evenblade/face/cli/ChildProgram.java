package evenblade.face.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** The program in a process of its own, with an environment of its own. */
final class ChildProgram {
    private ChildProgram() {}

    /** The words that call it; {@code before} stands before the Java command. */
    static List<String> command(List<String> before, String... args) {
        List<String> command = new ArrayList<>(before);
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xshare:auto",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Program.class.getName()));
        command.addAll(List.of(args));
        return command;
    }

    /** Starts it; what it says goes to files named {@code out} and {@code err} in the folder. */
    static Process start(Map<String, String> environment, Path folder, List<String> command) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectOutput(folder.resolve("out").toFile())
                .redirectError(folder.resolve("err").toFile());
        builder.environment().keySet().removeIf(name -> name.startsWith("PULSE") || name.startsWith("ALSA"));
        builder.environment().putAll(environment);
        Process process = builder.start();
        process.getOutputStream().close();
        return process;
    }

    /** Runs it to its end. */
    static CommandLineRun run(Map<String, String> environment, Path folder, List<String> command)
            throws IOException, InterruptedException {
        return ended(start(environment, folder, command), folder);
    }

    /** Waits for the end of what was started. */
    static CommandLineRun ended(Process process, Path folder) throws IOException, InterruptedException {
        if (!process.waitFor(120, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError("still running after two minutes");
        }
        return new CommandLineRun(
                process.exitValue(), Files.readString(folder.resolve("out")), Files.readString(folder.resolve("err")));
    }
}
