package evenblade.input.capture;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Asks a sound server, where there is one that can be asked, from which source it feeds this program. */
final class ServerSource {
    private static final long PATIENCE_MS = 2000; // a server that runs answers in milliseconds
    private static final Pattern OUTPUT = Pattern.compile("(?m)^Source Output #");
    private static final Pattern SOURCE = Pattern.compile("(?m)^\\s*Source: (\\S+)");
    private static final Pattern NAMED = Pattern.compile("(?m)^(\\d+)\\s+(\\S+)");

    private ServerSource() {}

    /** Its name; empty where no server answers, or it doesn't feed this program. */
    static Optional<String> ofThisProgram() {
        String mine = "application.process.id = \"" + ProcessHandle.current().pid() + "\"";
        TreeSet<String> sources = new TreeSet<>();
        for (String output : OUTPUT.split(ask("list", "source-outputs"))) {
            Matcher source = SOURCE.matcher(output);
            if (output.contains(mine) && source.find()) {
                sources.add(source.group(1));
            }
        }
        if (sources.isEmpty()) {
            return Optional.empty();
        }
        Matcher named = NAMED.matcher(ask("list", "short", "sources"));
        while (named.find()) {
            if (sources.remove(named.group(1))) {
                sources.add(named.group(2));
            }
        }
        return Optional.of(String.join(", ", sources));
    }

    private static String ask(String... words) {
        List<String> command = new java.util.ArrayList<>(List.of("pactl"));
        command.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD);
        // Its words in English, whatever the user's language.
        builder.environment().put("LC_ALL", "C");
        try {
            Process asked = builder.start();
            asked.getOutputStream().close();
            byte[] said = asked.getInputStream().readAllBytes();
            if (!asked.waitFor(PATIENCE_MS, TimeUnit.MILLISECONDS)) {
                asked.destroyForcibly();
                return "";
            }
            return asked.exitValue() == 0 ? new String(said, StandardCharsets.UTF_8) : "";
        } catch (IOException e) {
            return "";
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return "";
        }
    }
}
