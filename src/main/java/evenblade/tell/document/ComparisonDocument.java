package evenblade.tell.document;

import evenblade.base.fact.Warning;
import evenblade.judge.comparison.Basis;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.Change.ChangeVerdict;
import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.RunComparison;
import evenblade.judge.comparison.RunComparison.ChannelComparison;
import evenblade.machine.installation.OrderLine;
import evenblade.tell.document.Block.Tone;
import evenblade.tell.document.Block.Weight;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Two runs held against each other: what changed, by how much, and how sure. */
public final class ComparisonDocument {
    /** So many figures that one is likely to be called by chance. */
    private static final int MANY = 10;
    /** Of intervals that hold 95 of 100. */
    private static final double BY_CHANCE = 0.05;

    /** How much of a comparison is shown. */
    public enum Extent {
        /** Every channel and speed; of all channels but the first only what changed. */
        ALL,
        /** The longest pair of dwells of the first channel. */
        MAIN_PAIR,
        /** Sentences only. */
        SENTENCES
    }

    private final RunComparison comparison;
    private final Phrases phrases;
    private final Document.Builder text = Document.begin();

    private ComparisonDocument(RunComparison comparison, Phrases phrases) {
        this.phrases = phrases;
        this.comparison = comparison;
    }

    /**
     * The whole answer.
     *
     * @param changes what was changed between the runs, in order of time
     * @param warnings about the recordings
     */
    public static Document of(
            RunComparison comparison, List<String> changes, List<Warning> warnings, Extent extent, Phrases phrases) {
        ComparisonDocument document = new ComparisonDocument(comparison, phrases);
        document.changed(changes);
        if (comparison.comparable()) {
            sentences(comparison).forEach(sentence -> document.text.say(Tone.ANSWER, sentence));
            document.text.picture(PictureSlot.Shows.COMPARISON);
            document.tables(extent);
            document.toKnow(warnings, extent);
        } else {
            document.refused(warnings);
        }
        if (extent == Extent.ALL) {
            document.text.handsOff();
        }
        return document.text.done();
    }

    /** The figures that tell most, at the longest pair of dwells of the first channel. */
    public static List<String> sentences(RunComparison comparison) {
        return mainPair(comparison)
                .map(pair -> pair.changes().stream()
                        .filter(change -> change.figure().tellsMost())
                        .map(change -> ChangeWords.sentence(change, pair.engineRpmAfter()))
                        .toList())
                .orElse(List.of());
    }

    /** The pair whose later dwell lasted longest. */
    public static Optional<DwellComparison> mainPair(RunComparison comparison) {
        return comparison.channels().stream()
                .limit(1)
                .flatMap(channel -> channel.dwells().stream())
                .max(Comparator.comparingDouble(pair -> pair.after().durationS()));
    }

    private void changed(List<String> changes) {
        text.known("before", "'" + comparison.before() + "'");
        text.known("after", "'" + comparison.after() + "'");
        if (changes.isEmpty()) {
            text.known("changed", "nothing that is noted");
        }
        changes.forEach(change -> text.known("changed", change));
    }

    private void refused(List<Warning> warnings) {
        text.say(Tone.ANSWER, "NOT COMPARED: like has to be held against like.");
        text.facts(
                Tone.ITEM,
                phrases,
                comparison.reasons().stream().map(Warning::fact).toList());
        text.warnings(Tone.CAUTION, phrases, warnings);
    }

    private void tables(Extent extent) {
        if (extent == Extent.SENTENCES) {
            return;
        }
        Optional<DwellComparison> main = mainPair(comparison);
        for (ChannelComparison channel : comparison.channels()) {
            boolean first = channel == comparison.channels().get(0);
            channel.dwells().stream()
                    .filter(pair -> extent == Extent.ALL || first && pair == main.orElseThrow())
                    .forEach(pair -> pair(channel, pair, first));
        }
    }

    private void pair(ChannelComparison channel, DwellComparison pair, boolean first) {
        String unit = channel.basis() == Basis.GAIN_FREE
                ? "ratios that no gain can change"
                : "peak, " + channel.unit().display();
        String title = FigureFormat.capital(RunDocument.named(channel.channel())) + ", engine "
                + FigureFormat.rpm(pair.engineRpmBefore()) + " and " + FigureFormat.rpm(pair.engineRpmAfter())
                + " rpm ("
                + unit + ")" + (first ? "" : ", only what changed");
        Document.TableBuilder table =
                text.table(title).left("line").point("before").point("after").left("change, 95 % interval, verdict");
        List<Change> shown = pair.changes().stream()
                .filter(change -> !ChangeWords.hidden(change))
                .filter(change -> first || change.verdict() != ChangeVerdict.NO_CHANGE_SHOWN)
                .toList();
        ChangeWords.places(shown).forEach(place -> {
            Change change = place.first();
            table.row(
                    change.verdict() == ChangeVerdict.NO_CHANGE_SHOWN ? Weight.PLAIN : Weight.CLEAR,
                    place.name(),
                    ChangeWords.value(change.before()),
                    ChangeWords.value(change.after()),
                    ChangeWords.cell(change) + ": " + ChangeWords.verdict(change.verdict()) + shared(place));
        });
        table.end();
        if (!first && shown.isEmpty()) {
            text.say(title.replace(", only what changed", ": no change shown."));
        }
        if (first) {
            String hidden = ChangeWords.places(
                            pair.changes().stream().filter(ChangeWords::hidden).toList())
                    .stream()
                    .map(OnePlace::name)
                    .collect(Collectors.joining(", "));
            if (!hidden.isEmpty()) {
                text.say(Tone.NOTE, "In neither run out of the noise: " + hidden + ".");
            }
            pair.notCompared()
                    .forEach(each -> text.say(
                            Tone.NOTE, each.figure().name() + ": not compared, " + phrases.text(each.why()) + "."));
        }
    }

    private static String shared(OnePlace<Change> place) {
        List<String> own = place.all().stream()
                .flatMap(each -> each.figure().line().stream())
                .map(OrderLine::name)
                .toList();
        String others = place.first().sharedWith().stream()
                .filter(name -> !own.contains(name))
                .collect(Collectors.joining(", "));
        return others.isEmpty() ? "" : "; one line with " + others;
    }

    private void toKnow(List<Warning> warnings, Extent extent) {
        text.heading("To know");
        if (extent != Extent.SENTENCES) {
            item("Intervals hold the true change 95 times in 100; a verdict is given where they leave out zero."
                    + byChance());
        }
        if (!comparison.reasons().isEmpty()) {
            item("Left out, because like has to be held against like:");
        }
        text.warnings(Tone.ITEM, phrases, comparison.reasons());
        text.warnings(Tone.ITEM, phrases, comparison.warnings());
        text.warnings(Tone.ITEM, phrases, warnings);
    }

    private String byChance() {
        long compared = comparison.channels().stream()
                .flatMap(channel -> channel.dwells().stream())
                .flatMap(pair -> pair.changes().stream())
                .filter(change -> !ChangeWords.hidden(change))
                .count();
        return compared < MANY
                ? ""
                : " Of " + compared + " figures compared, about "
                        + FigureFormat.fixed(Math.ceil(BY_CHANCE * compared), 0)
                        + " may be called by chance: look for what repeats.";
    }

    private void item(String message) {
        text.say(Tone.ITEM, FigureFormat.capital(message));
    }
}
