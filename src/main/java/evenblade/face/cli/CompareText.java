package evenblade.face.cli;

import evenblade.base.fact.Warning;
import evenblade.face.app.ChangeWords;
import evenblade.face.app.CompareRuns;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.ChangeVerdict;
import evenblade.judge.comparison.ChannelComparison;
import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.Reason;
import evenblade.judge.comparison.RunComparison;
import evenblade.keep.job.Event;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Two runs compared, as text for a terminal of 80 columns. */
final class CompareText {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);
    /** So many lines that one is likely to be called by chance. */
    private static final int MANY = 10;

    private static final double BY_CHANCE = 0.05;

    private final CompareRuns.Answer answer;
    private final List<String> lines = new ArrayList<>();
    private int compared;

    private CompareText(CompareRuns.Answer answer) {
        this.answer = answer;
    }

    static List<String> lines(CompareRuns.Answer answer) {
        CompareText text = new CompareText(answer);
        text.heading();
        RunComparison comparison = answer.comparison();
        if (comparison.comparable()) {
            for (int i = 0; i < comparison.channels().size(); i++) {
                text.channel(comparison.channels().get(i), i == 0);
            }
            text.toKnow();
        } else {
            text.refusal(comparison.reasons());
        }
        text.lines.addAll(Caution.lines());
        return text.lines;
    }

    private void heading() {
        if (answer.invented()) {
            lines.add("INVENTED FOR PRACTICE: nothing in this job was measured.");
        }
        paragraph("Before: ", named(answer.before()));
        paragraph("After:  ", named(answer.after()));
        paragraph(
                "Changed between: ",
                answer.changes().isEmpty() ? "nothing that is noted" : String.join("; ", answer.changes()));
    }

    private static String named(Event run) {
        return run.id() + run.label().map(l -> " '" + l + "'").orElse("") + ", " + MINUTE.format(run.at());
    }

    private void refusal(List<Reason> reasons) {
        lines.add("");
        lines.add("NOT COMPARED: like has to be held against like.");
        reasons.forEach(reason -> lines.addAll(LineWrapper.lines("- ", "  ", WarningText.of(reason.fact()))));
        lines.addAll(WarningText.marked(answer.warnings()));
    }

    private void channel(ChannelComparison channel, boolean first) {
        for (DwellComparison dwells : channel.dwells()) {
            lines.add("");
            paragraph(
                    "",
                    String.format(
                            Locale.ROOT,
                            "Channel '%s' at %.0f engine rpm (second run %.0f)%s",
                            channel.channel(),
                            dwells.engineRpmBefore(),
                            dwells.engineRpmAfter(),
                            first ? "" : ", only what changed"));
            int hidden = 0;
            int told = 0;
            for (Change change : dwells.changes()) {
                boolean inNoise =
                        change.before() instanceof ComparedValue.Below && change.after() instanceof ComparedValue.Below;
                hidden += inNoise ? 1 : 0;
                compared += inNoise ? 0 : 1;
                if (!inNoise && (first || change.verdict() != ChangeVerdict.NO_CHANGE_SHOWN)) {
                    told++;
                    lines.addAll(LineWrapper.lines("  ", "    ", ChangeWords.sentence(change, channel.unit())));
                }
            }
            if (first) {
                dwells.notCompared()
                        .forEach(n -> lines.addAll(
                                LineWrapper.lines("  ", "    ", n.figure().name() + ": not compared, " + n.why())));
                if (hidden > 0) {
                    lines.add(
                            "  " + hidden + (hidden == 1 ? " more lies" : " more lie") + " in the noise in both runs");
                }
            } else if (told == 0) {
                lines.add("  no change shown");
            }
        }
    }

    private void toKnow() {
        lines.add("");
        lines.add("To know");
        item("Intervals hold the true change 95 times in 100; a verdict is given where they leave out zero."
                + (compared < MANY
                        ? ""
                        : String.format(
                                Locale.ROOT,
                                " Of %d figures compared, about %.0f may be called by chance: look for what repeats.",
                                compared,
                                Math.ceil(BY_CHANCE * compared))));
        for (Warning warning : answer.comparison().warnings()) {
            item(WarningText.of(warning));
        }
        answer.warnings().forEach(warning -> item(WarningText.of(warning)));
    }

    private void item(String text) {
        lines.addAll(LineWrapper.lines("- ", "  ", text));
    }

    private void paragraph(String first, String text) {
        lines.addAll(LineWrapper.lines(first, " ".repeat(Math.min(8, first.length())), text));
    }
}
