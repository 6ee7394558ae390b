package evenblade.face.cli;

import evenblade.face.app.RunBefore;
import evenblade.keep.job.RunSettings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** What a run takes over from the one before, and the word that it is to take nothing over. */
final class TakenOver {
    private static final String AFRESH = "--afresh";

    private TakenOver() {}

    static void addTo(CommandSpec spec, String which) {
        spec.addOption(Options.flag(
                AFRESH,
                "Take nothing over from the run before. Left out: " + which
                        + " takes over channels, mark, scale, columns, sensor, place, direction and gain, where nothing"
                        + " else is said."));
    }

    static boolean wanted(ParseResult words) {
        return !Options.said(words, AFRESH);
    }

    /** Which run it was and what was taken over; no line where nothing was. */
    static List<String> lines(Optional<RunBefore> before) {
        return before.map(run -> LineWrapper.lines(
                        "",
                        "",
                        "As in '" + run.name() + "': " + String.join("; ", parts(run))
                                + ". Where that isn't so: job amend, or " + AFRESH + " before."))
                .orElse(List.of());
    }

    private static List<String> parts(RunBefore run) {
        List<String> parts = new ArrayList<>();
        RunSettings settings = run.settings();
        if (!settings.channels().isEmpty()) {
            parts.add("channels " + String.join(", ", settings.channels()));
        }
        settings.markChannel().ifPresent(mark -> parts.add("mark on channel " + mark));
        settings.fullScale().ifPresent(scale -> parts.add("full scale " + scale));
        if (!settings.table().unsaid()) {
            parts.add(settings.table().words());
        }
        RunBefore.KEPT.forEach(condition ->
                run.conditions().get(condition).ifPresent(noted -> parts.add(condition.word() + " \"" + noted + "\"")));
        return parts;
    }
}
