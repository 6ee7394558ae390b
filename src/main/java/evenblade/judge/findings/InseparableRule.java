package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.PropellerOnceFeatures.text;

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
            told.addAll(s.reading().inseparableFrom());
            pieces.add(running(
                    pieces.isEmpty() ? 5 : 0,
                    text(
                            "%s and %s share %.1f Hz: %s %s",
                            name,
                            String.join(", ", s.reading().inseparableFrom()),
                            s.reading().frequencyHz(),
                            s.size(),
                            s.where())));
        });
        return Optional.of(new Assessment(
                "A strong line lies where two parts of the machine meet; what it points to can't be told from these runs.",
                pieces,
                false,
                shared.values().iterator().next().amplitude(),
                "Where the lines lie exactly together no analysis can split them: use the static checks and other orders."
                        + " Where they are merely close, hold the rpm for longer."));
    }
}
