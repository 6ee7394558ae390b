import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes the page that `man evenblade` shows from what the program's own `--help` says, so that both agree.
 *
 * <p>Arguments: the main class of the program, its version, the day as yyyy-mm-dd, the file to write. The
 * program must be on the class path.
 */
final class ManPage {
    private final Method run;
    private final StringBuilder page = new StringBuilder();

    private ManPage(Method run) {
        this.run = run;
    }

    public static void main(String[] args) throws Exception {
        ManPage page = new ManPage(Class.forName(args[0].replace(".start.Main", ".cli.Program"))
                .getMethod("run", String[].class, PrintStream.class, PrintStream.class));
        page.write(args[1], args[2]);
        Files.writeString(Path.of(args[3]), page.page);
    }

    private void write(String version, String day) throws Exception {
        page.append(".TH EVENBLADE 1 \"" + day + "\" \"Evenblade " + version + "\" \"User commands\"\n");
        page.append(".SH NAME\nevenblade \\- vibration spectrum analyser for propeller ground runs\n");
        page.append(".SH SYNOPSIS\n.B evenblade\n.RI [ COMMAND \" [\" WORDS ]]\n.br\n.B evenblade\n.I RECORDING\n");
        page.append(".SH DESCRIPTION\nWithout words it opens its window, with a recording it opens the window on it.\n");
        page.append(".PP\nIgnition off, key out, plug leads off or grounded before a hand goes near a propeller.\n");
        verbatim(help());
        for (List<String> command : commands(List.of())) {
            page.append(".SH " + (String.join(" ", command)).toUpperCase(java.util.Locale.ROOT) + "\n");
            verbatim(help(command.toArray(String[]::new)));
        }
        page.append(".SH FILES\n.I ~/.config/evenblade\n.br\nWhat the window remembers.\n");
        page.append(".PP\n.I ~/.cache/evenblade\n.br\n.I ~/.java/fonts\n.br\nWhat was learned about the fonts.\n");
        page.append(".PP\nRemove these by hand. A job is a folder of yours.\n");
    }

    private List<List<String>> commands(List<String> group) throws Exception {
        List<List<String>> found = new ArrayList<>();
        boolean listing = false;
        for (String line : help(group.toArray(String[]::new)).lines().toList()) {
            if (line.equals("Commands:")) {
                listing = true;
            } else if (listing && line.matches("  \\S.*")) {
                List<String> command = new ArrayList<>(group);
                command.add(line.strip().split("\\s+")[0]);
                List<List<String>> below = commands(command);
                found.addAll(below.isEmpty() ? List.of(command) : below);
            } else if (listing && !line.startsWith("  ")) {
                listing = false;
            }
        }
        return found;
    }

    private String help(String... command) throws Exception {
        List<String> words = new ArrayList<>(List.of(command));
        words.add("--help");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
        int status = (Integer) run.invoke(null, words.toArray(String[]::new), stream, System.err);
        if (status != 0) {
            throw new IllegalStateException(words + " ended with status " + status);
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    private void verbatim(String text) {
        page.append(".PP\n.nf\n");
        for (String line : text.stripTrailing().split("\n")) {
            String safe = line.replace("\\", "\\e").replace("-", "\\-");
            page.append(safe.startsWith(".") || safe.startsWith("'") ? "\\&" + safe : safe).append('\n');
        }
        page.append(".fi\n");
    }
}
