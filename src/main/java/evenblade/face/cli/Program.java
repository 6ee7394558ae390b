package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Starts the command line. */
public final class Program {
    private Program() {}

    /** Runs one command in this process and ends it with the command's exit status. */
    public static void main(String[] args) {
        // Pictures are drawn without a display, and none is looked for.
        System.setProperty("java.awt.headless", "true");
        PrintStream out = utf8(FileDescriptor.out);
        PrintStream err = utf8(FileDescriptor.err);
        // Libraries that print go nowhere: on standard output stands what was asked for, and nothing else.
        System.setOut(new PrintStream(OutputStream.nullOutputStream()));
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
        PrintWriter output = new PrintWriter(new VisibleWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8)));
        PrintWriter errors =
                new PrintWriter(new VisibleWriter(new OutputStreamWriter(err, StandardCharsets.UTF_8)), true);
        try {
            WholeWords.require(args);
            if (args.length == 0) {
                output.println("evenblade: no desktop is available here; these are the commands.");
                output.println();
                commandLine().usage(output);
                return ExitStatus.DONE;
            }
            return run(commandLine(args).setErr(errors).parseArgs(args), output);
        } catch (ParameterException e) {
            if (e.getCause() instanceof BadInput badWord) {
                return Complaints.failed(badWord, errors);
            }
            return Complaints.wrongUsage(e, errors);
        } catch (Exception e) {
            return Complaints.failed(e, errors);
        } catch (Error e) {
            return Complaints.bug(e, errors);
        } finally {
            output.flush();
            errors.flush();
        }
    }

    private static int run(ParseResult words, PrintWriter output) throws IOException {
        ParseResult last = words;
        while (last.hasSubcommand() && !last.isUsageHelpRequested()) {
            last = last.subcommand();
        }
        CommandLine called = last.commandSpec().commandLine();
        if (last.isUsageHelpRequested()) {
            called.usage(output);
        } else if (last.isVersionHelpRequested()) {
            called.printVersionHelp(output);
        } else if (last.commandSpec().userObject() instanceof Command command) {
            return command.run(last, output);
        } else {
            throw new ParameterException(
                    called,
                    "missing: one of the commands "
                            + String.join(", ", called.getSubcommands().keySet()));
        }
        return ExitStatus.DONE;
    }

    private static CommandLine commandLine(String... args) {
        CommandSpec spec = CommandSpec.create()
                .name("evenblade")
                .version("evenblade " + version())
                .addOption(Options.help())
                .addOption(OptionSpec.builder("-V", "--version")
                        .versionHelp(true)
                        .description("Show the version and end.")
                        .build());
        spec.usageMessage()
                .description("Measures the shaking of an engine and its propeller on the ground.")
                .footer("", ExitStatus.WORDS, "'evenblade COMMAND --help' tells more about a command.");
        CommandIndex.addTo(spec, args);
        return new CommandLine(spec)
                .setColorScheme(Help.defaultColorScheme(Help.Ansi.OFF))
                .registerConverter(Path.class, PathWord::of);
    }

    private static String version() {
        String version = Program.class.getPackage().getImplementationVersion();
        return version == null ? "(not packaged)" : version;
    }

    private static PrintStream utf8(FileDescriptor descriptor) {
        return new PrintStream(
                new BufferedOutputStream(new FileOutputStream(descriptor)), false, StandardCharsets.UTF_8);
    }
}
