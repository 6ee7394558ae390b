package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import evenblade.base.units.Length;
import evenblade.judge.tracking.Layout;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What an entry must be like to go into a record. */
final class EntryRules {
    private static final int LONGEST_LABEL = 60; // fits a row of every table

    private EntryRules() {}

    static void check(Entry entry, JobRecord record) {
        entry.label().ifPresent(EntryRules::checkLabel);
        entry.at().ifPresent(at -> EntryTime.requireLikely(at, BadInput.in("time of the entry")));
        Kind kind = entry.detail().kind();
        boolean saysNothing =
                kind == Kind.NOTE || kind == Kind.CORRECTION || entry.detail().equals(Detail.Balance.WORDS);
        if (saysNothing && entry.text().isBlank()) {
            throw BadInput.in(kind.word()).found("no text", "what was done or seen, in your words");
        }
        checkBlades(entry.detail(), record);
        record.installation()
                .propeller()
                .diameter()
                .ifPresent(diameter -> checkSizes(entry.detail(), diameter.millimetres() / 2));
        if (entry.detail() instanceof Detail.StruckOut strike) {
            checkStrike(strike.event(), record);
        }
        if (entry.detail() instanceof Detail.Amendment amendment) {
            record.run(amendment.event());
        }
        if (entry.detail() instanceof Detail.Balance balance) {
            checkWeights(balance, entry.label(), record);
        }
    }

    private static void checkBlades(Detail detail, JobRecord record) {
        int blades = record.installation().propeller().blades();
        blades(detail).filter(found -> found != blades).ifPresent(found -> {
            throw BadInput.in("layout")
                    .found(found + " blades", "the " + blades + " blades of this job's installation");
        });
        layout(detail).ifPresent(named -> askForStrangers(named, record));
    }

    /**
     * A letter that no blade of this hub ever had is more often a slip of the pen than an exchanged blade. An exchange is
     * a correction, and once that is written down after the last readings, the new letter is taken.
     */
    private static void askForStrangers(Layout layout, JobRecord record) {
        Set<String> known = new TreeSet<>();
        boolean changedSince = false;
        for (Event event : record.standing()) {
            Optional<Layout> before = layout(event.detail());
            if (before.isPresent()) {
                known.addAll(before.get().blades());
                changedSince = false;
            } else if (event.kind() == Kind.CORRECTION) {
                changedSince = true;
            }
        }
        List<String> strangers =
                layout.blades().stream().filter(b -> !known.contains(b)).toList();
        if (!known.isEmpty() && !changedSince && !strangers.isEmpty()) {
            throw BadInput.in("layout")
                    .found(
                            "blade " + String.join(" and ", strangers) + ", which this hub never had",
                            String.join(", ", known)
                                    + "; was a blade exchanged? Then enter that first as a correction");
        }
    }

    private static Optional<Layout> layout(Detail detail) {
        if (detail instanceof Detail.Tracking tracking) {
            return Optional.of(tracking.layout());
        }
        return detail instanceof Detail.Pitch pitch ? Optional.of(pitch.layout()) : Optional.empty();
    }

    /** How many blades an entry speaks of, where it speaks of all. */
    static Optional<Integer> blades(Detail detail) {
        return layout(detail).map(Layout::positions);
    }

    /** Readings that can't lie on this propeller: a slip of the pen or of the unit. */
    private static void checkSizes(Detail detail, double tipRadiusMm) {
        String radius = String.format(Locale.ROOT, "%.0f mm, the propeller's radius", tipRadiusMm);
        if (detail instanceof Detail.RunOut runOut) {
            double dialMm = runOut.reading(Instant.EPOCH).dialRadius().millimetres();
            if (dialMm >= tipRadiusMm) {
                throw BadInput.in("dial radius").found(runOut.dialRadius(), "less than " + radius);
            }
        }
        if (detail instanceof Detail.Balance balance
                && balance.on()
                        .filter(weight -> weight.radiusMm() >= tipRadiusMm)
                        .isPresent()) {
            throw BadInput.in("radius").found(balance.on().orElseThrow().radius(), "less than " + radius);
        }
        if (detail instanceof Detail.Tracking tracking) {
            double spreadMm = tracking.session(Instant.EPOCH).spreadMm();
            if (spreadMm >= tipRadiusMm) {
                throw BadInput.in("readings")
                        .found(
                                String.format(Locale.ROOT, "tip marks spread over %.0f mm", spreadMm),
                                "less than " + radius + "; is the unit right?");
            }
        }
        if (detail instanceof Detail.Pitch pitch) {
            Optional<Length> station = pitch.angles(Instant.EPOCH).station();
            if (station.isPresent() && station.get().millimetres() > tipRadiusMm) {
                throw BadInput.in("station").found(station.get().text(), "at most " + radius);
            }
        }
    }

    /** A recording added twice would count as a repeat run that agrees with itself. */
    static void refuseRepeated(JobRecord record, List<StoredFiles.Incoming> incoming) {
        for (StoredFiles.Incoming one : incoming) {
            for (Event event : record.standing(Kind.RUN)) {
                Detail.Run run = (Detail.Run) event.detail();
                if (one.below().equals(StoredFiles.RECORDINGS)
                        && run.file().stamp().sha256().equals(one.stamp().sha256())) {
                    throw BadInput.in(one.original())
                            .found(
                                    "the same recording as run " + event.id()
                                            + event.label()
                                                    .map(l -> " '" + l + "'")
                                                    .orElse(""),
                                    "a recording that isn't in this job yet; cross " + event.id()
                                            + " out (job strike) to add it anew");
                }
            }
        }
    }

    private static void checkLabel(String label) {
        if (label.isBlank() || label.length() > LONGEST_LABEL || label.chars().anyMatch(Character::isISOControl)) {
            throw BadInput.in("label '" + label + "'")
                    .found(
                            label.isBlank() ? "nothing" : label.length() + " characters",
                            "one line of 1 to " + LONGEST_LABEL + " characters");
        }
        if (JobRecord.looksLikeId(label)) {
            throw BadInput.in("label '" + label + "'")
                    .found("what looks like the id of an entry", "a label that can't be taken for one");
        }
    }

    /** Only a weight that is on can be taken off, and no two that are on may have the same name. */
    private static void checkWeights(Detail.Balance balance, Optional<String> label, JobRecord record) {
        List<Event> on = WeightsOn.now(record);
        String names = on.isEmpty()
                ? "no weight is on the hub"
                : "one of " + on.stream().map(w -> w.label().orElse(w.id())).collect(Collectors.joining(", "));
        balance.off().ifPresent(off -> {
            if (on.stream().noneMatch(weight -> WeightsOn.names(off, weight))) {
                throw BadInput.in("weight '" + off + "'").found("no weight of that name on the hub", names);
            }
        });
        if (balance.on().isPresent() && label.isPresent()) {
            String name = label.get();
            if (on.stream().anyMatch(weight -> WeightsOn.names(name, weight))) {
                throw BadInput.in("label '" + name + "'")
                        .found("the label of a weight that is on the hub", "another label");
            }
        }
    }

    private static void checkStrike(String id, JobRecord record) {
        BadInput.Place place = BadInput.in("entry '" + id + "'");
        Optional<Event> meant =
                record.events().stream().filter(e -> e.id().equals(id)).findFirst();
        if (meant.isEmpty()) {
            String ids = record.events().isEmpty()
                    ? "none yet"
                    : "e1 to e" + record.events().size();
            throw place.found("no entry of that id in '" + record.name() + "'", "the id of an entry (" + ids + ")");
        }
        if (record.struckOut().contains(id)) {
            throw place.found("an entry that was crossed out already", "an entry that counts");
        }
    }
}
