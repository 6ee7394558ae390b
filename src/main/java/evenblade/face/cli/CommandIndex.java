package evenblade.face.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/**
 * The commands by name. Only the one that is called is loaded, to start fast; all are loaded for the
 * help and for a name that isn't known.
 */
final class CommandIndex {
    /** In the order of the help; two words for a command of a group. */
    private static final List<String> NAMES = List.of(
            "plan",
            "orders",
            "spectrum",
            "job new",
            "job show",
            "job next",
            "job particulars",
            "job add",
            "job correction",
            "job note",
            "job attach",
            "job tracking",
            "job pitch",
            "job runout",
            "job amend",
            "job installation",
            "job rescue",
            "job weight",
            "job strike",
            "tracking",
            "balance",
            "findings",
            "compare",
            "trend",
            "devices",
            "listen",
            "record",
            "report",
            "practice");

    private CommandIndex() {}

    /** The words that call each command. */
    static List<List<String>> all() {
        return NAMES.stream().map(name -> List.of(name.split(" "))).toList();
    }

    /** A fresh command. The one place where a command is added, beside {@link #NAMES}. */
    private static Command create(String name) {
        return switch (name) {
            case "plan" -> new PlanCommand();
            case "orders" -> new OrdersCommand();
            case "spectrum" -> new SpectrumCommand();
            case "job new" -> new JobNewCommand();
            case "job show" -> new JobShowCommand();
            case "job next" -> new JobNextCommand();
            case "job particulars" -> new JobParticularsCommand();
            case "job add" -> new JobAddCommand();
            case "job correction" -> JobRemarkCommand.correction();
            case "job note" -> JobRemarkCommand.note();
            case "job attach" -> new JobAttachCommand();
            case "job tracking" -> new JobTrackingCommand();
            case "job pitch" -> new JobPitchCommand();
            case "job runout" -> new JobRunOutCommand();
            case "job amend" -> new JobAmendCommand();
            case "job installation" -> new JobInstallationCommand();
            case "job rescue" -> new JobRescueCommand();
            case "job weight" -> new JobWeightCommand();
            case "job strike" -> new JobStrikeCommand();
            case "tracking" -> new TrackingCommand();
            case "balance" -> new BalanceCommand();
            case "findings" -> new FindingsCommand();
            case "compare" -> new CompareCommand();
            case "trend" -> new TrendCommand();
            case "devices" -> new DevicesCommand();
            case "listen" -> new ListenCommand();
            case "record" -> new RecordCommand();
            case "report" -> new ReportCommand();
            case "practice" -> new PracticeCommand();
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
    static void addTo(CommandSpec parent, String... words) {
        List<String> wanted = called(words);
        for (String name : wanted.isEmpty() ? NAMES : wanted) {
            int space = name.indexOf(' ');
            CommandSpec home = space < 0 ? parent : group(parent, name.substring(0, space));
            home.addSubcommand(name.substring(space + 1), spec(create(name)));
        }
    }

    private static CommandSpec spec(Command command) {
        CommandSpec spec = CommandSpec.wrapWithoutInspection(command);
        command.describe(spec);
        List<String> footer = new ArrayList<>(List.of(spec.usageMessage().footer()));
        footer.addAll(List.of("", ExitStatus.WORDS));
        spec.usageMessage().footer(footer.toArray(String[]::new));
        return spec.addOption(Options.help());
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

    private static CommandSpec group(CommandSpec parent, String name) {
        CommandLine known = parent.subcommands().get(name);
        if (known != null) {
            return known.getCommandSpec();
        }
        CommandSpec spec = CommandSpec.create().addOption(Options.help());
        spec.usageMessage().description(describe(name));
        parent.addSubcommand(name, spec);
        return spec;
    }
}
