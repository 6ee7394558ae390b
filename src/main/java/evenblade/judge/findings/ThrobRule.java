package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Quoted;
import evenblade.machine.installation.Beat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The slow throb: two strong lines 1 to 8 Hz apart. Sizes A and B swell between A + B and A − B, so the depth is
 * 2·B/(A + B) of the most, B the smaller. It blames nothing: it says where a throb comes from that no shaft makes.
 */
final class ThrobRule implements Rule {
    /** A throb shallower than this passes for a steady shake (by judgement, no source). */
    private static final double DEPTH = 0.3;
    /** Where there is no scale, both lines must be this share of the strongest. */
    private static final double OF_STRONGEST = 0.2;
    /** Pairs that are told. */
    private static final int PAIRS = 3;

    @Override
    public Cause cause() {
        return Cause.THROB;
    }

    /** Two lines seen in one channel of one dwell. */
    private record Pair(OrderObservation weak, OrderObservation strong) {
        double hz() {
            return Math.abs(weak.reading().frequencyHz() - strong.reading().frequencyHz());
        }

        double depth() {
            return 2 * weak.amplitude() / (weak.amplitude() + strong.amplitude());
        }

        Beat beat() {
            return new Beat(weak.reading().line(), strong.reading().line(), hz());
        }

        /** What swells and fades, mm/s; the share of the channel's unit where there is no scale. */
        double swing() {
            return weak.velocityMmS().orElse(weak.amplitude());
        }

        String lines() {
            return weak.reading().line().name() + strong.reading().line().name();
        }

        EvidenceItem item(int points) {
            return running(
                    points,
                    weak.ref(),
                    FindingFact.BEATS,
                    new Quoted(strong.reading().line().name()),
                    new Quoted(weak.reading().line().name()),
                    Measure.FREQUENCY.of(hz()),
                    strong.size(),
                    weak.size(),
                    Measure.SHARE.of(depth()),
                    weak.where());
        }
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        List<Pair> pairs = pairs(stage.sightings().detected().alone());
        if (pairs.isEmpty()) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>();
        List<String> told = new ArrayList<>();
        for (Pair pair : pairs) {
            if (told.size() < PAIRS && !told.contains(pair.lines())) {
                told.add(pair.lines());
                pieces.add(pair.item(pieces.isEmpty() ? 4 : 0));
            }
        }
        Pair worst = pairs.get(0);
        return Optional.of(new Assessment(
                Fact.of(
                        FindingFact.POINTS_TO_THROB,
                        new Quoted(worst.strong().reading().line().name()),
                        new Quoted(worst.weak().reading().line().name()),
                        Measure.ENGINE_RPM.of(worst.weak().engineRpm())),
                pieces,
                false,
                worst.swing(),
                Fact.of(FindingFact.LOWER_ONE_LINE)));
    }

    /** Pairs that throb, the one that swings most first. */
    private static List<Pair> pairs(OrderObservations all) {
        double strongest = all.strongest().map(OrderObservation::amplitude).orElse(0.0);
        List<OrderObservation> strong = all.all().stream()
                .filter(s -> s.velocityMmS().isPresent()
                        ? s.velocityMmS().getAsDouble() >= Thresholds.BLAMED_MM_S
                        : s.amplitude() >= OF_STRONGEST * strongest)
                .toList();
        List<Pair> pairs = new ArrayList<>();
        for (OrderObservation a : strong) {
            for (OrderObservation b : strong) {
                Pair pair = new Pair(a, b);
                boolean smaller = a.amplitude() < b.amplitude();
                if (smaller
                        && a.sameMoment(b)
                        && a.channel().equals(b.channel())
                        && pair.beat().felt()
                        && pair.depth() >= DEPTH) {
                    pairs.add(pair);
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::swing).reversed());
        return pairs;
    }
}
