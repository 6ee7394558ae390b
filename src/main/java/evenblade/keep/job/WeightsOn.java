package evenblade.keep.job;

import evenblade.machine.installation.HubCounting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Which weights were on the hub, by the entries of a record. */
public final class WeightsOn {
    private WeightsOn() {}

    /** Those that are on after all entries. */
    public static List<Event> now(JobRecord record) {
        return after(record.standing());
    }

    /** Those that were on in a run. */
    public static List<Event> during(JobRecord record, Event run) {
        List<Event> standing = record.standing();
        int at = standing.stream().map(Event::id).toList().indexOf(run.id());
        return after(standing.subList(0, at));
    }

    /** The sense in which angles on the hub are counted: as answered last in the record, else as the installation says. */
    public static Optional<HubCounting> counted(JobRecord record) {
        return record.standing(Kind.BALANCE).stream()
                .flatMap(event -> ((Detail.Balance) event.detail()).counted().stream())
                .reduce((first, second) -> second)
                .or(() -> record.installation().hubWeights().angles());
    }

    /** The weight that an entry put on, where it did. */
    public static Optional<HubWeight> putOn(Event event) {
        return event.detail() instanceof Detail.Balance balance ? balance.on() : Optional.empty();
    }

    /** Whether a reference names that entry, by id or by label. */
    static boolean names(String reference, Event event) {
        return event.id().equals(reference)
                || event.label().filter(reference::equals).isPresent();
    }

    private static List<Event> after(List<Event> events) {
        List<Event> on = new ArrayList<>();
        for (Event event : events) {
            if (event.detail() instanceof Detail.Balance balance) {
                balance.off().ifPresent(off -> on.removeIf(weight -> names(off, weight)));
                if (balance.on().isPresent()) {
                    on.add(event);
                }
            }
        }
        return List.copyOf(on);
    }
}
