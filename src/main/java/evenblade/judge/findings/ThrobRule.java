package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Quoted;
import evenblade.machine.installation.Beat;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.SlowSwell;
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
    /** So near in Hz a pair's rate must be to a swell's: a wandering speed moves the pair's by about this. */
    private static final double SAME_RATE_HZ = 0.3;
    /** A pair explains a swell that it makes at least half of (by judgement, no source). */
    private static final double HALF_OF_IT = 0.5;
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
            return unexplained(stage);
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

    /** A swell of the whole signal that no two lines make. */
    private static Optional<Assessment> unexplained(Stage stage) {
        for (RunEvidence run : stage.runs()) {
            for (ChannelOrders channel : run.numbers().channels()) {
                for (DwellOrders dwell : channel.dwells()) {
                    Optional<SlowSwell.Swell> swell = dwell.swell()
                            .filter(s -> s.depth() >= DEPTH && run.numbers().confirmed() && !explains(dwell, s));
                    if (swell.isPresent()) {
                        double rpm =
                                dwell.dwell().propellerRpm() * run.numbers().ratio();
                        EvidenceItem piece = running(
                                4,
                                run.ref(EvidenceRef.Side.ORDERS),
                                FindingFact.SWELLS,
                                new Quoted(channel.channel()),
                                Measure.FREQUENCY.of(swell.get().hz()),
                                Measure.SHARE.of(swell.get().depth()),
                                OrderObservation.where(rpm, run.ref()));
                        return Optional.of(new Assessment(
                                Fact.of(FindingFact.SWELL_UNEXPLAINED),
                                List.of(piece),
                                false,
                                swell.get().depth(),
                                Fact.of(FindingFact.LOOK_FOR_SWELL)));
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** Whether two lines of a dwell, known or not, lie so far apart and are strong enough for half of a swell. */
    private static boolean explains(DwellOrders dwell, SlowSwell.Swell swell) {
        List<double[]> lines = new ArrayList<>(); // Hz, amplitude
        dwell.readings().stream()
                .filter(r -> r.level() instanceof Level.Measured && r.detected())
                .forEach(r -> lines.add(new double[] {r.frequencyHz(), ((Level.Measured) r.level()).amplitude()}));
        dwell.unexplained().forEach(u -> lines.add(new double[] {u.frequencyHz(), u.amplitude()}));
        double power = lines.stream().mapToDouble(l -> l[1] * l[1]).sum();
        double tolerance = Math.max(SAME_RATE_HZ, 2 / dwell.dwell().durationS());
        double r = swell.depth() / (2 - swell.depth());
        double needed = HALF_OF_IT * 2 * r / (1 + r * r);
        return lines.stream().anyMatch(a -> lines.stream()
                .anyMatch(b -> Math.abs(b[0] - a[0] - swell.hz()) < tolerance && 2 * a[1] * b[1] > needed * power));
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
