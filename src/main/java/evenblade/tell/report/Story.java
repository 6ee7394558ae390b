package evenblade.tell.report;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.judge.comparison.Change.ChangeVerdict;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.findings.Cause;
import evenblade.judge.findings.Confidence;
import evenblade.judge.findings.Finding;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.machine.installation.Engine;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.VelocityFigures;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** What shook, why, what was done, what it did, what is open: cured first, leftovers last. */
final class Story {
    private final ReportInput input;
    private final JobRecord record;
    private final Engine engine;
    private final Optional<ReportedComparison> whole;
    private final VelocityFigures velocities;
    private final Phrases phrases;
    private final Optional<Finding> cured;
    private final List<Leftovers.Leftover> left;

    Story(ReportInput input) {
        this.input = input;
        this.velocities = new VelocityFigures(new FigureFormat(input.units()));
        this.phrases = new Phrases(Face.PAPER, velocities.lengths());
        this.record = input.record();
        this.engine = record.installation().engine();
        this.whole = input.comparisons().stream().findFirst();
        this.cured = input.firstPage().findings().stream()
                .filter(finding -> !finding.open() && finding.sureness().share() >= Confidence.LEANING)
                .max(Comparator.comparingDouble(this::weight));
        this.left = Leftovers.of(input.firstPage().findings(), last(), channel(), engine);
    }

    /** Shaking that a cured cause made before; what isn't known to have fallen comes behind what is. */
    private double weight(Finding finding) {
        return headline(HowOften.of(finding, engine))
                .map(line -> (line.change().verdict() == ChangeVerdict.LOWER ? 1 : 0)
                        + Math.min(
                                0.9,
                                line.beforeMmS().orElse(line.change().before().size()) / 1000))
                .orElse(finding.sureness().share() / 1000);
    }

    Optional<MeasuredRun> last() {
        return input.runs().stream().flatMap(run -> run.measured().stream()).reduce((earlier, later) -> later);
    }

    /** The channel that the comparison speaks of. */
    Optional<String> channel() {
        return whole.flatMap(
                pair -> pair.outcome().channels().stream().map(c -> c.channel()).findFirst());
    }

    private Optional<Headline> headline(HowOften beat) {
        return whole.flatMap(pair -> Headline.of(pair.outcome(), beat));
    }

    /** The line that the page speaks of. */
    Optional<Headline> headline() {
        return headline(beat());
    }

    private HowOften beat() {
        return cured.or(() -> left.stream().map(Leftovers.Leftover::finding).findFirst())
                .map(finding -> HowOften.of(finding, engine))
                .filter(beat -> headline(beat).isPresent())
                .orElse(HowOften.PROPELLER_ONCE);
    }

    /** In plain sentences. */
    List<String> sentences() {
        List<String> said = new ArrayList<>();
        said.add(last().isEmpty() ? "No run with a result yet: nothing can be said about the shaking." : happened());
        said.add(open());
        return said;
    }

    private String happened() {
        if (whole.isEmpty()) {
            return shakes(named()) + " There is only one run with a result: it can't be compared with anything yet.";
        }
        if (!whole.get().outcome().comparable()) {
            return shakes(named()) + " The first run and the last can't be compared: "
                    + whole.get().outcome().reasons().stream()
                            .map(Warning::fact)
                            .map(phrases::text)
                            .collect(Collectors.joining("; "))
                    + ". So it can't be said whether it became better.";
        }
        return cured.map(this::putRight).orElseGet(this::notPutRight);
    }

    private String putRight(Finding finding) {
        boolean sure = finding.sureness().confident();
        String why = "It shook " + HowOften.of(finding, engine).words() + (sure ? " because " : ", probably because ")
                + phrases.because(finding) + ".";
        List<String> done = changesBefore(finding.goneSince().orElseThrow().id());
        String did = done.isEmpty() ? "" : " This was done: " + sentence(String.join(" ", done));
        return why
                + did
                + headline(HowOften.of(finding, engine))
                        .map(line -> " " + effect(line))
                        .orElse(" Its sign is no longer seen since run '"
                                + finding.goneSince().orElseThrow().name() + "'.")
                + alsoGone(finding);
    }

    /** What else was put right. */
    private String alsoGone(Finding subject) {
        String others = input.firstPage().findings().stream()
                .filter(finding -> !finding.open() && finding.sureness().share() >= Confidence.LEANING)
                .filter(finding -> finding != subject)
                .map(phrases::plainly)
                .collect(Collectors.joining(", "));
        return others.isEmpty() ? "" : " Also no longer seen: " + others + ".";
    }

    private String notPutRight() {
        Optional<Headline> line = headline();
        String shakes = shakes(beat());
        if (line.isEmpty()) {
            return shakes + " That shaking could not be compared between the first run and the last.";
        }
        boolean changed = !whole.orElseThrow().between().isEmpty();
        ChangeVerdict verdict = line.get().change().verdict();
        String outcome = verdict == ChangeVerdict.LOWER || sound()
                ? ""
                : changed
                        ? verdict == ChangeVerdict.HIGHER
                                ? " What was done made it no better. "
                                : " What was done so far did not help. "
                        : " Nothing was entered as changed between the first run and the last. ";
        return shakes + (outcome.isEmpty() ? " " : outcome) + effect(line.get());
    }

    private String effect(Headline line) {
        OptionalDouble before = line.beforeMmS();
        OptionalDouble after = line.afterMmS();
        String sizes = before.isPresent() && after.isPresent()
                ? ", from " + (line.hiddenBefore() ? "below " : "") + velocities.plain(before.getAsDouble()) + " to "
                        + (line.hiddenAfter() ? "below " : "") + velocities.plain(after.getAsDouble()) + " "
                        + velocities.unit()
                : "";
        return switch (line.change().verdict()) {
            case LOWER -> "That shaking is now " + by(line, "less") + sizes + ".";
            case HIGHER -> "That shaking is now " + by(line, "more") + sizes + ".";
            case NO_CHANGE_SHOWN ->
                "No change of that shaking is shown" + sizes
                        + (line.change().percent().isPresent()
                                ? " (the true change is between "
                                        + FigureFormat.percentRange(
                                                        line.change().ciLowPercent(),
                                                        line.change().ciHighPercent())
                                                .replace(" to ", " and ")
                                        + ")"
                                : "")
                        + ".";
        };
    }

    private static String by(Headline line, String way) {
        OptionalDouble low = line.change().ciLowPercent();
        OptionalDouble high = line.change().ciHighPercent();
        boolean less = way.equals("less");
        OptionalDouble least = less ? high : low;
        OptionalDouble most = less ? low : high;
        if (line.change().percent().isEmpty()) {
            return "at least " + FigureFormat.change(least.orElseThrow()) + " " + way;
        }
        String range = least.isPresent() && most.isPresent()
                ? " (" + FigureFormat.change(least.getAsDouble()) + " to " + FigureFormat.change(most.getAsDouble())
                        + ")"
                : "";
        return FigureFormat.change(line.change().percent().getAsDouble()) + " " + way + range;
    }

    /** That it shakes, and of what, as far as the findings say so. */
    private String shakes(HowOften beat) {
        if (sound()) {
            return "Nothing in the shaking stands out.";
        }
        String often = "It shakes " + beat.words();
        if (left.isEmpty()) {
            return often + ".";
        }
        Finding first = left.get(0).finding();
        if (first.cause() == Cause.UNTOLD) {
            return often + "; these measurements can't show why yet.";
        }
        return HowOften.of(first, engine) == beat
                ? often + ", most likely because of this: " + phrases.plainly(first) + "."
                : often + ". What stands out most: " + phrases.plainly(first) + ".";
    }

    /** Whether the findings say that nothing stands out, and nothing ever did. */
    private boolean sound() {
        return left.isEmpty()
                && cured.isEmpty()
                && input.firstPage().findings().stream().anyMatch(finding -> finding.cause() == Cause.NOTHING);
    }

    /** How often the first cause that is left shakes, whether its line was compared or not. */
    private HowOften named() {
        return left.stream()
                .map(each -> HowOften.of(each.finding(), engine))
                .findFirst()
                .filter(beat -> beat != HowOften.OTHER)
                .orElse(HowOften.PROPELLER_ONCE);
    }

    private String open() {
        List<String> open = new ArrayList<>();
        for (Leftovers.Leftover each : left) {
            String share = each.share().isPresent()
                    ? "; about " + FigureFormat.share(each.share().getAsDouble()) + " of the shaking that is left"
                    : "";
            String sure = each.finding().cause() == Cause.UNTOLD
                    ? ""
                    : " (" + phrases.text(Fact.of(each.finding().sureness().word())) + share + ")";
            open.add(FigureFormat.capital(phrases.plainly(each.finding())) + sure + ". "
                    + sentence(FigureFormat.capital(phrases.text(each.finding().next()))));
        }
        if (!measuredSinceLastChange()) {
            open.add("No run since the last change: whether it helped is not known.");
        }
        if (!input.fileWarnings().isEmpty()) {
            open.add("Files of the record are missing, changed or not named by it: see 'Files'.");
        }
        return open.isEmpty()
                ? "Still open: nothing that these measurements show."
                : "Still open: " + String.join(" ", open);
    }

    private boolean measuredSinceLastChange() {
        List<Event> changes = changes();
        return changes.isEmpty()
                || record.standing(Kind.RUN).stream()
                        .anyMatch(run -> record.before(changes.get(changes.size() - 1), run));
    }

    /** Everything that was changed, in order of time. */
    List<Event> changes() {
        return record.standing().stream().filter(Event::changesMachine).toList();
    }

    /** What was changed between a run and the one before it. */
    private List<String> changesBefore(String run) {
        List<String> changes = new ArrayList<>();
        for (Event event : record.standing()) {
            if (event.id().equals(run)) {
                return changes;
            }
            if (event.kind() == Kind.RUN) {
                changes.clear();
            } else if (event.changesMachine()) {
                changes.add(event.text());
            }
        }
        return List.of();
    }

    /** How sure the cause is, in plain words. */
    List<String> sure() {
        List<String> said = new ArrayList<>();
        cured.ifPresent(finding -> said.add("The cause: "
                + phrases.text(Fact.of(finding.sureness().word())) + ", from "
                + FigureFormat.count(finding.speaksFor().size(), "piece") + " of evidence for it and "
                + (finding.speaksAgainst().isEmpty()
                        ? "none"
                        : String.valueOf(finding.speaksAgainst().size()))
                + " against it."));
        said.add(ExecutiveSummary.howSure(input));
        return said;
    }

    private static String sentence(String text) {
        return text.matches("(?s).*[.!?]\\s*") ? text.strip() : text.strip() + ".";
    }
}
