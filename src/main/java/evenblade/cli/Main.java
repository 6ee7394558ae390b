package evenblade.cli;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;

/** Starts the command line. */
public final class Main {
    private Main() {}

    /** Runs one command in this process and ends it with the command's exit status. */
    public static void main(String[] args) {
        PrintStream out = utf8(FileDescriptor.out);
        PrintStream err = utf8(FileDescriptor.err);
        int status = run(args, out, err);
        out.flush();
        err.flush();
        System.exit(status);
    }

    /**
     * Runs one command, without ending the process.
     *
     * @param out gets what was asked for
     * @param err gets complaints
     * @return 0 done; 1 an input is at fault; 2 wrong usage; 3 a bug in the program
     */
    public static int run(String[] args, PrintStream out, PrintStream err) {
        PrintWriter output = new PrintWriter(out, true, StandardCharsets.UTF_8);
        PrintWriter errors = new PrintWriter(err, true, StandardCharsets.UTF_8);
        try {
            if (args.length == 0) {
                output.println("evenblade: no desktop is available here; these are the commands.");
                output.println();
                commandLine(new String[] {"--help"}, output, errors).usage(output);
                return ExitStatus.DONE;
            }
            return commandLine(args, output, errors).execute(args);
        } catch (RuntimeException | Error e) {
            return Complaints.bug(e, errors);
        } finally {
            output.flush();
            errors.flush();
        }
    }

    private static CommandLine commandLine(String[] args, PrintWriter output, PrintWriter errors) {
        CommandLine parent = new CommandLine(parent());
        CommandIndex.addTo(parent, args);
        parent.setOut(output);
        parent.setErr(errors);
        parent.setColorScheme(Help.defaultColorScheme(Help.Ansi.OFF));
        parent.setParameterExceptionHandler(Complaints::wrongUsage);
        parent.setExecutionExceptionHandler((e, command, parsed) -> Complaints.failed(e, errors));
        return parent;
    }

    private static CommandSpec parent() {
        CommandSpec spec = CommandSpec.create().name("evenblade");
        spec.usageMessage()
                .description("Measures the shaking of an engine and its propeller on the ground.")
                .footer(
                        "",
                        "Exit status: 0 done, 1 an input is at fault, 2 wrong usage.",
                        "'evenblade COMMAND --help' tells more about a command.");
        spec.version("evenblade " + version()).mixinStandardHelpOptions(true);
        return spec;
    }

    private static String version() {
        String version = Main.class.getPackage().getImplementationVersion();
        return version == null ? "(not packaged)" : version;
    }

    private static PrintStream utf8(FileDescriptor descriptor) {
        return new PrintStream(
                new BufferedOutputStream(new FileOutputStream(descriptor)), false, StandardCharsets.UTF_8);
    }
}
