package evenblade.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/**
 * The commands by name. Only the one that is called is loaded, since reading a command's annotations
 * takes longer than most of its work; all are loaded for the help and for a name that isn't known.
 */
final class CommandIndex {
    /** In the order of the help; two words for a command of a group. */
    private static final List<String> NAMES = List.of("plan");

    private CommandIndex() {}

    /** A fresh command. The one place where a command is added, beside {@link #NAMES}. */
    private static Object create(String name) {
        return switch (name) {
            case "plan" -> new PlanCommand();
            default -> throw new IllegalArgumentException("no command '" + name + "'");
        };
    }

    /** What a group of commands is about. */
    private static String describe(String group) {
        return switch (group) {
            case "job" -> "Keep the record of one job: runs, corrections, static readings, papers.";
            default -> throw new IllegalArgumentException("no group '" + group + "'");
        };
    }

    /** Adds the command that the words call, or all commands where they call none. */
    static void addTo(CommandLine parent, String... words) {
        List<String> wanted = called(words);
        for (String name : wanted.isEmpty() ? NAMES : wanted) {
            int space = name.indexOf(' ');
            if (space < 0) {
                parent.addSubcommand(name, create(name));
            } else {
                group(parent, name.substring(0, space)).addSubcommand(name.substring(space + 1), create(name));
            }
        }
    }

    private static List<String> called(String... words) {
        String first = words.length > 0 ? words[0] : "";
        if (NAMES.contains(first)) {
            return List.of(first);
        }
        String both = words.length > 1 ? first + " " + words[1] : "";
        if (NAMES.contains(both)) {
            return List.of(both);
        }
        List<String> group = new ArrayList<>();
        for (String name : NAMES) {
            if (!first.isEmpty() && name.startsWith(first + " ")) {
                group.add(name);
            }
        }
        return group;
    }

    private static CommandLine group(CommandLine parent, String name) {
        CommandLine known = parent.getSubcommands().get(name);
        if (known != null) {
            return known;
        }
        CommandSpec spec = CommandSpec.create().name(name);
        spec.usageMessage().description(describe(name));
        spec.addOption(helpOption());
        parent.addSubcommand(name, new CommandLine(spec));
        return parent.getSubcommands().get(name);
    }

    private static CommandLine.Model.OptionSpec helpOption() {
        return CommandLine.Model.OptionSpec.builder("-h", "--help")
                .usageHelp(true)
                .description("Show this help and end.")
                .build();
    }
}
