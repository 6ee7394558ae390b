package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import evenblade.machine.installation.Installation;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What a job record said at one moment.
 *
 * @param name of the job
 * @param invented whether it was made up for practice; every picture and paper has to say so
 * @param installation engine, drive and propeller, as the latest entry about them has them
 * @param installationAsWritten as the job began, the way its file has it: texts, numbers, lists and maps, in order
 * @param events all entries in the order of time; of the same time, in the order of entering
 */
public record JobRecord(
        String name,
        boolean invented,
        Installation installation,
        Map<String, Object> installationAsWritten,
        List<Event> events) {
    public JobRecord {
        installationAsWritten = Collections.unmodifiableMap(new LinkedHashMap<>(installationAsWritten));
        events = inOrder(events);
    }

    /**
     * In the order of time; an entry whose time nobody stated never stands before one entered earlier in the same way,
     * even if the computer's clock went back in between.
     */
    private static List<Event> inOrder(List<Event> events) {
        Map<String, Instant> times = new HashMap<>();
        Instant latest = Instant.MIN;
        for (Event event : byEntering(events)) {
            Instant at = event.at().toInstant();
            boolean stated = !at.equals(event.entered().toInstant().truncatedTo(ChronoUnit.SECONDS));
            if (!stated) {
                latest = at.isAfter(latest) ? at : latest;
            }
            times.put(event.id(), stated ? at : latest);
        }
        return events.stream()
                .sorted(Comparator.comparing((Event e) -> times.get(e.id())).thenComparing(e -> number(e.id())))
                .toList();
    }

    /** Whether an entry stands before another in this record, whatever their times: several may share one. */
    public boolean before(Event one, Event other) {
        return place(one) < place(other);
    }

    private int place(Event event) {
        return events.stream().map(Event::id).toList().indexOf(event.id());
    }

    /**
     * A moment for every entry, by its id, for whoever asks which came first: its time, or as little later as it takes to
     * lie behind the entries before it. Not to be shown: what an entry says of its time is {@link Event#at}.
     */
    public Map<String, Instant> moments() {
        Map<String, Instant> moments = new HashMap<>();
        Instant last = Instant.MIN;
        for (Event event : events) {
            Instant at = event.at().toInstant();
            last = at.isAfter(last) ? at : last.plusNanos(1);
            moments.put(event.id(), last);
        }
        return Map.copyOf(moments);
    }

    /** All entries in the order of their writing. */
    public List<Event> inOrderOfEntering() {
        return byEntering(events);
    }

    private static List<Event> byEntering(List<Event> events) {
        return events.stream().sorted(Comparator.comparing(e -> number(e.id()))).toList();
    }

    /** Entries that were entered when the computer's clock showed an earlier time than at an entry before. */
    public List<Event> enteredWithClockBehind() {
        List<Event> behind = new ArrayList<>();
        Instant latest = Instant.MIN;
        for (Event event : byEntering(events)) {
            Instant entered = event.entered().toInstant();
            if (entered.isBefore(latest)) {
                behind.add(event);
            } else {
                latest = entered;
            }
        }
        return behind;
    }

    /** The installation as the latest standing entry about it has it; as the job began, where there is none. */
    public Map<String, Object> installationNow() {
        return installationNow(standingEntries(), installationAsWritten);
    }

    static Map<String, Object> installationNow(List<Event> standing, Map<String, Object> first) {
        Map<String, Object> now = first;
        for (Event event : byEntering(standing)) {
            if (event.detail() instanceof Detail.NewInstallation changed) {
                now = changed.asWritten();
            }
        }
        return now;
    }

    /** Ids of the entries that were struck out and not put back since. */
    public Set<String> struckOut() {
        Set<String> struck = new HashSet<>();
        // A strike only ever names an earlier entry: from the last one backwards, each is settled in turn.
        events.stream()
                .sorted(Comparator.comparing((Event e) -> number(e.id())).reversed())
                .filter(e -> !struck.contains(e.id()))
                .forEach(e -> {
                    if (e.detail() instanceof Detail.StruckOut strike) {
                        struck.add(strike.event());
                    }
                });
        return Set.copyOf(struck);
    }

    /** The entries that count, runs with what was put right later: all but the struck out and the strikes. */
    public List<Event> standing() {
        List<Event> standing = standingEntries();
        Map<String, List<Detail.Amendment>> later = byEntering(standing).stream()
                .map(Event::detail)
                .filter(Detail.Amendment.class::isInstance)
                .map(Detail.Amendment.class::cast)
                .collect(Collectors.groupingBy(Detail.Amendment::event));
        List<Event> amended = new ArrayList<>();
        for (Event event : standing) {
            amended.add(
                    event.detail() instanceof Detail.Run run
                            ? amended(event, run, later.getOrDefault(event.id(), List.of()))
                            : event);
        }
        return amended;
    }

    /** An entry with what was put right later, where it is a standing run; else as it is. */
    public Event asItReads(Event event) {
        return standing(Kind.RUN).stream()
                .filter(run -> run.id().equals(event.id()))
                .findFirst()
                .orElse(event);
    }

    private List<Event> standingEntries() {
        Set<String> struck = struckOut();
        return events.stream()
                .filter(e -> e.kind() != Kind.STRUCK_OUT && !struck.contains(e.id()))
                .toList();
    }

    private static Event amended(Event event, Detail.Run run, List<Detail.Amendment> later) {
        Detail.Run now = run;
        for (Detail.Amendment amendment : later) {
            now = amendment.of(now);
        }
        return new Event(event.id(), event.at(), event.entered(), event.label(), event.text(), now);
    }

    /** The entries of one kind that count, in the order of time. */
    public List<Event> standing(Kind kind) {
        return standing().stream().filter(e -> e.kind() == kind).toList();
    }

    /**
     * The run that a user means.
     *
     * @param reference an entry's id, or a label that only one standing run has
     * @throws BadInput where no run or more than one fits, with those to choose from
     */
    public Event run(String reference) {
        List<Event> runs = standing(Kind.RUN);
        Optional<Event> byId =
                runs.stream().filter(e -> e.id().equals(reference)).findFirst();
        if (byId.isPresent()) {
            return byId.get();
        }
        List<Event> byLabel = runs.stream()
                .filter(e -> e.label().filter(reference::equals).isPresent())
                .toList();
        if (byLabel.size() == 1) {
            return byLabel.get(0);
        }
        BadInput.Place place = BadInput.in("run '" + reference + "'");
        if (byLabel.size() > 1) {
            throw place.found(
                    "a label that " + byLabel.size() + " runs have", "the id of one of them: " + listed(byLabel));
        }
        Optional<Event> other =
                events.stream().filter(e -> e.id().equals(reference)).findFirst();
        String found = other.map(e -> e.kind() == Kind.RUN
                        ? "a run that was crossed out"
                        : "an entry of the kind '" + e.kind().word() + "'")
                .orElse("no run of that id or label in '" + name + "'");
        throw place.found(found, runs.isEmpty() ? "a job with runs; this one has none yet" : "one of " + listed(runs));
    }

    /** This record with more entries, each given the next id. */
    JobRecord with(List<Entry> entries, OffsetDateTime now) {
        int next = events.stream().mapToInt(e -> number(e.id())).max().orElse(0);
        List<Event> all = new ArrayList<>(events);
        for (Entry entry : entries) {
            next++;
            all.add(new Event(
                    "e" + next,
                    entry.at().orElse(now).truncatedTo(ChronoUnit.SECONDS),
                    now.truncatedTo(ChronoUnit.MILLIS),
                    entry.label(),
                    entry.text(),
                    entry.detail()));
        }
        Installation latest = installation;
        for (Entry entry : entries) {
            if (entry.detail() instanceof Detail.NewInstallation changed) {
                latest = RecordFormat.installation(changed.asWritten());
            }
        }
        return new JobRecord(name, invented, latest, installationAsWritten, all);
    }

    /** The latest entries, in the order of entering. */
    List<Event> lastEntered(int count) {
        List<Event> entered = byEntering(events);
        return entered.subList(entered.size() - count, entered.size());
    }

    /** Whether a text has the shape of an entry's id. */
    static boolean looksLikeId(String text) {
        return text.matches("e[1-9][0-9]{0,8}");
    }

    private static int number(String id) {
        return Integer.parseInt(id.substring(1));
    }

    private static String listed(List<Event> runs) {
        return runs.stream()
                .map(e -> e.id() + e.label().map(l -> " '" + l + "'").orElse(""))
                .collect(Collectors.joining(", "));
    }
}
