package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.Nearest;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgGroupSpec;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.MutuallyExclusiveArgsException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Turns what went wrong into words on standard error and an exit status. */
final class Complaints {
    private static final String NAME = "evenblade: ";

    private Complaints() {}

    /** Wrong usage: one line that says what is wrong, one that says where to read more. */
    static int wrongUsage(ParameterException e, PrintWriter errors) {
        CommandLine command = e.getCommandLine();
        errors.println(NAME + reason(e, command));
        errors.println("See '" + command.getCommandSpec().qualifiedName() + " --help'.");
        return ExitStatus.WRONG_USAGE;
    }

    private static String reason(ParameterException e, CommandLine command) {
        List<String> unmatched = command.getUnmatchedArguments();
        if (e instanceof UnmatchedArgumentException all) {
            unmatched = all.getUnmatched();
        }
        if (!unmatched.isEmpty()) {
            return notKnown(unmatched.get(0), command);
        }
        if (e instanceof MissingParameterException missing
                && !missing.getMissing().isEmpty()) {
            List<String> names = new ArrayList<>();
            for (ArgSpec each : missing.getMissing()) {
                names.add(named(each));
            }
            return "missing: " + String.join(", ", names);
        }
        if (e instanceof MutuallyExclusiveArgsException) {
            return oneOfAGroup(command);
        }
        if (e.getArgSpec() != null && e.getValue() != null && isNumber(e.getArgSpec())) {
            String name = e.getArgSpec() instanceof OptionSpec option
                    ? option.longestName()
                    : e.getArgSpec().paramLabel();
            return "'" + name + "' takes a number, not '" + e.getValue() + "'";
        }
        return oneLine(e.getMessage());
    }

    private static String oneOfAGroup(CommandLine command) {
        List<String> names = new ArrayList<>();
        for (ArgGroupSpec group : command.getCommandSpec().argGroups()) {
            for (OptionSpec option : group.options()) {
                names.add(option.longestName());
            }
        }
        return "only one of " + String.join(" and ", names) + " can be given";
    }

    private static String named(ArgSpec missing) {
        return missing instanceof OptionSpec option
                ? option.longestName() + " " + option.paramLabel()
                : missing.paramLabel();
    }

    private static boolean isNumber(ArgSpec argument) {
        Class<?> type = argument.auxiliaryTypes()[0];
        return type == double.class || type == int.class || Number.class.isAssignableFrom(type);
    }

    private static String notKnown(String word, CommandLine command) {
        List<String> known = new ArrayList<>();
        String kind;
        if (word.startsWith("-")) {
            kind = "option";
            command.getCommandSpec().options().forEach(option -> known.addAll(List.of(option.names())));
        } else if (command.getSubcommands().isEmpty() && command.getParent() != null) {
            return "'" + word + "' is one word too many for '"
                    + command.getCommandSpec().qualifiedName() + "'";
        } else {
            kind = "command";
            known.addAll(command.getSubcommands().keySet());
        }
        Optional<String> meant = Nearest.alike(word, known);
        return "unknown " + kind + " '" + word + "'"
                + meant.map(nearest -> "; did you mean '" + nearest + "'?").orElse("");
    }

    /** What a command threw: an input at fault, a file that can't be read or written, or a bug. */
    static int failed(Exception e, PrintWriter errors) {
        if (e instanceof BadInput) {
            return atFault(e.getMessage(), errors);
        }
        if (e instanceof InvalidPathException path) {
            return atFault(PathWord.notAName(path.getInput()).getMessage(), errors);
        }
        Exception inner = e instanceof UncheckedIOException unchecked ? unchecked.getCause() : e;
        if (inner instanceof IOException io) {
            return atFault(fileTrouble(io), errors);
        }
        return bug(e, errors);
    }

    private static int atFault(String message, PrintWriter errors) {
        errors.println(NAME + oneLine(message));
        return ExitStatus.BAD_INPUT;
    }

    private static String fileTrouble(IOException e) {
        if (!(e instanceof FileSystemException file) || file.getFile() == null) {
            return String.valueOf(e.getMessage());
        }
        String reason;
        if (e instanceof NoSuchFileException) {
            reason = "no such file or folder";
        } else if (e instanceof AccessDeniedException) {
            reason = "access denied";
        } else if (e instanceof FileAlreadyExistsException) {
            reason = "there is already something of that name";
        } else {
            reason = String.valueOf(file.getReason());
        }
        return file.getFile() + ": " + reason;
    }

    /** A fault of the program: said so, with the stack trace that whoever mends it needs. */
    static int bug(Throwable e, PrintWriter errors) {
        errors.println(NAME + "this is a bug in the program, not in your files. Please report it with these lines:");
        e.printStackTrace(errors);
        return ExitStatus.BUG;
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s*[\\r\\n]+\\s*", " ").strip();
    }
}
