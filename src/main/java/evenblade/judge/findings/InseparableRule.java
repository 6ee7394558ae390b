package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.machine.installation.OrderLine.Role;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A strong line that two parts of the machine make at the same frequency: the run can't say which. */
final class InseparableRule implements Rule {
    /** Share of the strongest line from which it matters. */
    private static final double MATTERS = 0.2;

    @Override
    public Cause cause() {
        return Cause.INSEPARABLE;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        OrderObservations all = stage.sightings().detected();
        double strongest = all.strongest().map(OrderObservation::amplitude).orElse(0.0);
        Map<String, OrderObservation> shared = new LinkedHashMap<>();
        for (OrderObservation s : all.all()) {
            Role role = s.reading().line().role();
            boolean counts = role != Role.MESH && !s.alone() && s.amplitude() > MATTERS * strongest;
            if (counts) {
                shared.merge(s.reading().line().name(), s, (a, b) -> a.amplitude() >= b.amplitude() ? a : b);
            }
        }
        if (shared.isEmpty()) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>();
        List<String> told = new ArrayList<>();
        shared.forEach((name, s) -> {
            if (told.contains(name)) {
                return;
            }
            told.addAll(s.reading().inseparableNames());
            pieces.add(running(
                    pieces.isEmpty() ? 5 : 0,
                    s.ref(),
                    FindingFact.LINES_SHARE,
                    new Quoted(name),
                    Listed.quoted(s.reading().inseparableNames()),
                    Measure.FREQUENCY.of(s.reading().frequencyHz()),
                    s.size(),
                    s.where()));
        });
        OrderObservation first = shared.values().iterator().next();
        return Optional.of(new Assessment(
                Fact.of(FindingFact.CANT_BE_TOLD), pieces, false, first.amplitude(), Fact.of(FindingFact.HOLD_LONGER)));
    }
}
