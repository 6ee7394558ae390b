package evenblade.tell.report;

import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.findings.Finding;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.speed.Dwell;
import evenblade.tell.chart.Caption;
import evenblade.tell.document.ComparisonDocument;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.FindingsDocument;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.TrackingDocument;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The answer on the first page: what was measured, how it stands, against before, how sure, what is open. */
final class ExecutiveSummary {
    private final ReportInput input;
    private final JobRecord record;
    private final FigureFormat lengths;
    private final Phrases phrases;

    private ExecutiveSummary(ReportInput input) {
        this.input = input;
        this.record = input.record();
        this.lengths = new FigureFormat(input.units());
        this.phrases = new Phrases(Face.PAPER, lengths);
    }

    static List<KnownThing> of(ReportInput input) {
        ExecutiveSummary answer = new ExecutiveSummary(input);
        List<KnownThing> lines = new ArrayList<>(List.of(
                new KnownThing("Measured", answer.measured()),
                new KnownThing("As it is now", answer.now()),
                new KnownThing("Against before", answer.againstBefore()),
                new KnownThing("How sure", howSure(input)),
                new KnownThing("Still open", answer.open())));
        answer.pointsTo().ifPresent(statement -> lines.add(3, new KnownThing("Points to", statement)));
        return lines;
    }

    /** The heaviest finding, where there is one. */
    private Optional<String> pointsTo() {
        return input.firstPage().findings().stream()
                .findFirst()
                .map(finding ->
                        phrases.text(finding.statement()) + " How sure: " + FindingsDocument.howSure(finding, phrases));
    }

    private String measured() {
        List<Event> standing = record.standing();
        if (standing.isEmpty()) {
            return "Nothing was entered yet.";
        }
        Map<Kind, String> words = new LinkedHashMap<>();
        words.put(Kind.RUN, "ground run");
        words.put(Kind.CORRECTION, "change");
        words.put(Kind.BALANCE, "balance weight");
        words.put(Kind.TRACKING, "tracking check");
        words.put(Kind.PITCH, "pitch check");
        words.put(Kind.RUN_OUT, "run-out check");
        List<String> counts = new ArrayList<>();
        words.forEach((kind, word) -> {
            int count = record.standing(kind).size();
            if (count > 0) {
                counts.add(FigureFormat.count(count, word));
            }
        });
        String first = FigureFormat.day(standing.get(0).at());
        String last = FigureFormat.day(standing.get(standing.size() - 1).at());
        String when = first.equals(last) ? "on " + first : "from " + first + " to " + last;
        return (counts.isEmpty() ? "Notes and papers only" : FigureFormat.capital(String.join(", ", counts))) + ", "
                + when + ".";
    }

    private Optional<ReportedRun> latest() {
        return input.runs().stream().filter(run -> run.measured().isPresent()).reduce((earlier, later) -> later);
    }

    private String now() {
        List<String> said = new ArrayList<>();
        latest().flatMap(run -> run.measured()).map(this::shaking).ifPresent(said::add);
        track().ifPresent(said::add);
        return said.isEmpty() ? "No run with a result, and no tracking." : String.join(" ", said);
    }

    private String shaking(MeasuredRun run) {
        Optional<Dwell> main = run.dwells().stream().max(Comparator.comparingDouble(Dwell::durationS));
        if (main.isEmpty()) {
            return "Run '" + run.name() + "': no steady speed known, so no order could be measured.";
        }
        ChannelOrders channel = comparedChannel(run);
        DwellOrders dwell = channel.dwells().stream()
                .filter(each -> each.dwell().equals(main.get()))
                .findFirst()
                .orElseThrow();
        return "Run '" + run.name() + "' at " + FigureFormat.fixed(run.engineRpm(main.get()), 0) + " engine rpm"
                + (run.speedDoubt().isEmpty() ? "" : " (speed not confirmed)") + ", "
                + Caption.channel(channel.channel()) + ": "
                + lines(dwell, channel.unit().display()) + " (± holds 95 %).";
    }

    /** The channel that the comparison speaks of, so that both lines speak of the same. */
    private ChannelOrders comparedChannel(MeasuredRun run) {
        Optional<String> wanted = input.comparisons().stream()
                .limit(1)
                .flatMap(c -> c.outcome().channels().stream())
                .map(c -> c.channel())
                .findFirst();
        return run.channels().stream()
                .filter(c -> wanted.filter(c.channel()::equals).isPresent())
                .findFirst()
                .orElse(run.channels().get(0));
    }

    private String lines(DwellOrders dwell, String unit) {
        return dwell.readings().stream()
                .filter(reading -> reading.line().bladePass() || reading.line().propellerOnce())
                .map(reading -> reading.line().name() + " " + level(reading.level(), unit))
                .collect(Collectors.joining(", "));
    }

    private static String level(Level level, String unit) {
        if (level instanceof Level.Measured measured) {
            return FigureFormat.level(measured) + " " + unit + " peak";
        }
        return "beyond this recording";
    }

    private Optional<String> track() {
        List<Event> sessions = record.standing(Kind.TRACKING);
        if (sessions.isEmpty()) {
            return Optional.empty();
        }
        TrackingSession last = session(sessions.get(sessions.size() - 1));
        return Optional.of((changedAfter(sessions.get(sessions.size() - 1))
                        ? "Not marked since the last change; before it: track"
                        : "Track")
                + " spread " + lengths.both(last.spreadMm()) + ", "
                + TrackingDocument.againstLimits(
                        LimitCheck.track(record.installation().limits(), last.marksMm()), phrases)
                + ".");
    }

    /** Whether something was put right after that entry, so that it no longer tells how things are. */
    private boolean changedAfter(Event entry) {
        List<Event> standing = record.standing();
        return standing.stream().skip(standing.indexOf(entry) + 1L).anyMatch(later -> later.kind() == Kind.CORRECTION);
    }

    private static TrackingSession session(Event event) {
        return ((Detail.Tracking) event.detail()).session(event.at().toInstant());
    }

    private String againstBefore() {
        if (input.comparisons().isEmpty()) {
            return "There are not yet two runs to hold against each other.";
        }
        ReportedComparison whole = input.comparisons().get(0);
        String pair = "Run '" + whole.outcome().after() + "' against '"
                + whole.outcome().before() + "': ";
        if (!whole.outcome().comparable()) {
            return pair + "can't be held against each other, "
                    + whole.outcome().reasons().stream()
                            .map(reason -> phrases.text(reason.fact()))
                            .collect(Collectors.joining("; "))
                    + ".";
        }
        return pair + String.join(" ", ComparisonDocument.sentences(whole.outcome()));
    }

    /** How sure the figures are: speeds, and scatter from run to run. */
    static String howSure(ReportInput input) {
        long answered =
                input.runs().stream().filter(run -> run.measured().isPresent()).count();
        if (answered == 0) {
            return "Nothing to be sure of yet.";
        }
        long confirmed = input.runs().stream()
                .filter(run ->
                        run.measured().filter(m -> m.speedDoubt().isEmpty()).isPresent())
                .count();
        String speeds = "Speed confirmed in " + confirmed + " of " + FigureFormat.count(answered, "run") + ".";
        if (input.comparisons().isEmpty()
                || !input.comparisons().get(0).outcome().comparable()) {
            return speeds;
        }
        int repeats = input.comparisons().get(0).outcome().channels().get(0).repeatRuns();
        return speeds
                + (repeats == 0
                        ? " No run was repeated with nothing changed: the scatter from run to run is assumed, not measured."
                        : " Scatter from run to run taken from " + FigureFormat.count(repeats, "repeat run") + ".");
    }

    private String open() {
        List<String> open = new ArrayList<>();
        input.firstPage().findings().stream()
                .filter(Finding::open)
                .limit(1)
                .forEach(finding -> open.add(FigureFormat.capital(phrases.text(finding.next()))));
        long lost = input.runs().stream().filter(run -> run.troubled()).count();
        if (lost > 0) {
            open.add(FigureFormat.capital(FigureFormat.count(lost, "run")) + " without a result or not to be trusted.");
        }
        if (!input.fileWarnings().isEmpty()) {
            open.add("Files of the record are missing, changed or not named by it: see 'Recordings and papers'.");
        }
        Optional<Event> lastChange =
                record.standing().stream().filter(Event::changesMachine).reduce((earlier, later) -> later);
        boolean measuredSince = lastChange
                .map(change -> record.standing(Kind.RUN).stream().anyMatch(run -> record.before(change, run)))
                .orElse(true);
        if (!measuredSince) {
            open.add("No run since the last change.");
        }
        if (!input.comparisons().isEmpty()
                && input.comparisons().get(0).outcome().comparable()
                && input.comparisons().get(0).outcome().channels().get(0).repeatRuns() == 0) {
            open.add("One run to be repeated with nothing changed.");
        }
        return open.isEmpty() ? "Nothing that the record knows of." : String.join(" ", open);
    }
}
