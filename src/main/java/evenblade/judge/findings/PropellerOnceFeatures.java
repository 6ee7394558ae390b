package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.units.SignalUnit;
import evenblade.judge.findings.RunEvidence.RunRef;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.DwellOrders;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What propeller 1× does in a stage: how large, which way, how it goes with speed. Shared by several rules. */
final class PropellerOnceFeatures {
    /** A dwell that turns faster by less is the same dwell again. */
    private static final double FASTER = 1.02;

    /** So near in half crank orders a line may be one, where the dwell is too short to tell; ours. */
    private static final double NEAR_HALF_CRANK = 0.05;

    /** So near in half propeller orders, likewise. */
    private static final double NEAR_HALF = 0.1;

    /** Below this power of speed 1× rises more slowly than a turning pull can make it. */
    private static final double SLOW = 1;

    /** Mass alone grows with the square of the speed; ours, halfway to a resonance's fourth power. */
    private static final double STEEP = 3;
    /** Doublings of the odds from which on one of pull and couple counts as told: 4 to 1. */
    private static final int SURELY = 2;
    /** Twice the highest crank half order that counts as a knock's row; above 5½ gear and air noise begin. */
    private static final int HIGHEST_CRANK_HALF = 12;
    /** So much faster the second dwell must be for a power of speed to mean anything. */
    private static final double APART = 1.1;

    private final Stage stage;
    private final OrderObservations all;
    private final OrderObservations once;

    PropellerOnceFeatures(Stage stage) {
        this.stage = stage;
        all = stage.sightings();
        once = all.of(Shaft.PROPELLER, 1).alone();
    }

    /** Whether there are runs in which 1× was measured at all. */
    boolean measured() {
        return !once.isEmpty();
    }

    /** Whether it is more than sound machines show. */
    boolean tooMuch() {
        return carried().map(c -> c.mmS() >= Thresholds.TOO_MUCH_MM_S).orElse(false);
    }

    /** What 1× carries of the shaking. */
    Optional<Carried> carried() {
        return once.carriedOf(all);
    }

    /** Size for following it over a job: mm/s, else the unevenness index, else the amplitude. */
    double size() {
        return once.fastest()
                .map(s -> s.velocityMmS().getAsDouble())
                .or(() -> unevenness().map(Uneven::value))
                .or(() -> once.strongest().map(OrderObservation::amplitude))
                .orElse(0.0);
    }

    /** That 1× is large enough to be looked at; empty where it isn't. */
    Optional<EvidenceItem> large(int points) {
        Optional<OrderObservation> fastest = once.detected().fastest();
        if (fastest.isPresent()) {
            double speed = fastest.get().velocityMmS().getAsDouble();
            return speed < Thresholds.ONCE_MM_S
                    ? Optional.empty()
                    : Optional.of(running(
                            points,
                            fastest.get().ref(),
                            FindingFact.ONCE_LARGE,
                            fastest.get().size(),
                            fastest.get().velocity(),
                            Measure.VELOCITY.of(Thresholds.ONCE_MM_S / 1000),
                            Fact.of(fastest.get().direction()),
                            fastest.get().where()));
        }
        return unevenness()
                .filter(u -> u.value() >= Thresholds.UNEVENNESS)
                .map(u -> running(
                        Math.max(1, points - 1),
                        EvidenceRef.Run.of(u.run().id(), EvidenceRef.Side.ORDERS),
                        FindingFact.UNEVENNESS,
                        Measure.NUMBER.of(u.value()),
                        u.run().quoted()));
    }

    /** That 1× is small: what a static fault would have to be content with. */
    EvidenceItem small(int points) {
        OrderObservation s = once.fastest().or(once::strongest).orElseThrow();
        return running(points, s.ref(), FindingFact.ONCE_SMALL, s.size(), s.where());
    }

    private record Uneven(RunRef run, double value) {}

    private Optional<Uneven> unevenness() {
        List<Uneven> seen = new ArrayList<>();
        for (RunEvidence run : stage.runs()) {
            if (run.numbers().confirmed()) {
                run.numbers().channels().forEach(c -> c.dwells().forEach(d -> d.unevenness()
                        .filter(u -> u.ciLow() > 0)
                        .ifPresent(u -> seen.add(new Uneven(run.ref(), u.value())))));
            }
        }
        return seen.stream().max(Comparator.comparingDouble(Uneven::value));
    }

    /** Which way 1× shakes: evidence for what pulls in the disc (1) or for what rocks (−1). */
    List<EvidenceItem> ways(int sign) {
        return stage.disc().map(fit -> fit.items(sign)).orElse(List.of());
    }

    /** Whether it surely looks like a couple: not like a pull in the disc. */
    boolean rocks() {
        return stage.disc().map(fit -> fit.pullPoints() <= -SURELY).orElse(false);
    }

    /**
     * The surest that a reading with the engine off may make its cause: not confident while it is within its limit, and in
     * doubt where a resonance lifts 1× of the small differences that any propeller has.
     *
     * @param middling whether the reading is within its limit and yet no fine one
     */
    double surest(boolean middling) {
        if (!middling) {
            return 1;
        }
        return fall().isPresent() ? Confidence.MOST_IN_DOUBT : Confidence.MOST_ONE_SIDED;
    }

    /** The largest significant fall of 1× from one dwell to a faster one of the same run, as an acceleration. */
    Optional<Fall> fall() {
        // A crank line that lies on 1× rises with speed as well: the sum of both falls on a resonance only.
        OrderObservations lines = all.of(Shaft.PROPELLER, 1);
        List<Fall> falls = new ArrayList<>();
        for (OrderObservation slow : lines.detected().all()) {
            for (OrderObservation fast : lines.all()) {
                boolean same = slow.run().equals(fast.run()) && slow.channel().equals(fast.channel());
                if (same && fast.engineRpm() > FASTER * slow.engineRpm()) {
                    double share = 1 - fast.amplitude() / slow.amplitude();
                    if (share > Thresholds.FALL && fast.ciHigh() < slow.ciLow()) {
                        falls.add(new Fall(slow, fast, share));
                    }
                }
            }
        }
        return falls.stream().max(Comparator.comparingDouble(Fall::share));
    }

    /** Whether 1× goes with speed as no turning pull alone does: a resonance lifts what lies near it. */
    boolean lifted() {
        return fall().isPresent() || growth().filter(g -> g.slow() || g.steep()).isPresent();
    }

    /** How many runs and channels show a fall. */
    long falling() {
        return stage.runs().stream()
                .flatMap(run -> run.numbers().channels().stream()
                        .map(c -> once.only(
                                s -> s.run().equals(run.ref()) && s.channel().equals(c.channel()))))
                .filter(part -> part.all().stream().anyMatch(slow -> part.all().stream()
                        .anyMatch(fast -> fast.engineRpm() > FASTER * slow.engineRpm()
                                && fast.ciHigh() < slow.ciLow()
                                && fast.amplitude() < (1 - Thresholds.FALL) * slow.amplitude())))
                .count();
    }

    /**
     * How 1× goes with speed, weighed by what must rise with its square.
     *
     * @param rises points where it does
     * @param falls points where it falls towards a higher speed, or surely rises more slowly than a turning pull
     */
    List<EvidenceItem> risesWithSquare(int rises, int falls) {
        Optional<Fall> fall = fall();
        if (fall.isPresent()) {
            return List.of(fall.get().item(falls));
        }
        return growth().map(growth -> {
                    int points = growth.slow() ? falls : growth.exponent() < STEEP ? rises : 0;
                    return points == 0 ? List.<EvidenceItem>of() : List.of(growth.item(points));
                })
                .orElse(List.of());
    }

    /** That 1× rises more steeply than a turning pull can make it: it nears a resonance. */
    Optional<EvidenceItem> steepRise(int points) {
        return growth().filter(Growth::steep).map(growth -> growth.item(points));
    }

    /** That 1× rises more slowly than any turning pull would make it, without falling. */
    Optional<EvidenceItem> slowRise(int points) {
        return fall().isPresent()
                ? Optional.empty()
                : growth().filter(Growth::slow).map(growth -> growth.item(points));
    }

    /** From the slowest to the fastest dwell, in the channel with most 1×. */
    private Optional<Growth> growth() {
        Optional<OrderObservation> most = once.detected().strongest();
        if (most.isEmpty()) {
            return Optional.empty();
        }
        List<OrderObservation> same = once
                .detected()
                .only(o -> o.run().equals(most.get().run())
                        && o.channel().equals(most.get().channel()))
                .all()
                .stream()
                .sorted(Comparator.comparingDouble(OrderObservation::engineRpm))
                .toList();
        OrderObservation slow = same.get(0);
        OrderObservation fast = same.get(same.size() - 1);
        return fast.engineRpm() < APART * slow.engineRpm()
                ? Optional.empty()
                : Optional.of(new Growth(
                        slow,
                        fast,
                        Math.log(fast.amplitude() / slow.amplitude()) / Math.log(fast.engineRpm() / slow.engineRpm())));
    }

    private record Growth(OrderObservation slowest, OrderObservation fastest, double exponent) {
        /** Whether even the ends of both intervals leave it below {@link #SLOW}. */
        boolean slow() {
            return Math.log(fastest.ciHigh() / slowest.ciLow()) / Math.log(fastest.engineRpm() / slowest.engineRpm())
                    < SLOW;
        }

        /** Whether even the near ends of both intervals leave it above {@link #STEEP}. */
        boolean steep() {
            return Math.log(fastest.ciLow() / slowest.ciHigh()) / Math.log(fastest.engineRpm() / slowest.engineRpm())
                    > STEEP;
        }

        EvidenceItem item(int points) {
            return running(
                    points,
                    slowest.ref(),
                    FindingFact.GOES_WITH_SPEED,
                    Measure.NUMBER.of(exponent),
                    Measure.ENGINE_RPM.of(slowest.engineRpm()),
                    Measure.ENGINE_RPM.of(fastest.engineRpm()),
                    slowest.run().quoted());
        }
    }

    /**
     * A fall of 1× towards a higher speed.
     *
     * @param slow at the lower speed
     * @param fast at the higher one
     * @param share by which it fell
     */
    record Fall(OrderObservation slow, OrderObservation fast, double share) {
        EvidenceItem item(int points) {
            return running(
                    points,
                    slow.ref(),
                    FindingFact.FALLS,
                    slow.size(),
                    Measure.ENGINE_RPM.of(slow.engineRpm()),
                    fast.size(),
                    Measure.ENGINE_RPM.of(fast.engineRpm()),
                    new Quoted(slow.channel()),
                    slow.run().quoted());
        }
    }

    /** Propeller 2× along the shaft over 1× there, where both stand out. */
    OptionalDouble twiceOverOnceAlong() {
        OrderObservations twice = all.of(Shaft.PROPELLER, 2).alone().detected().along();
        return twice.isEmpty() || blades() == 2 ? OptionalDouble.empty() : twice.over(once.along());
    }

    private boolean fourStroke() {
        return stage.installation().engine().cycle() == Engine.Cycle.FOUR_STROKE;
    }

    private int blades() {
        return stage.installation().propeller().blades();
    }

    /** Steady lines at half propeller orders that no order of the installation explains. */
    List<HalfOrder> halfOrders() {
        List<HalfOrder> found = new ArrayList<>();
        for (RunEvidence run : stage.runs()) {
            if (!run.numbers().confirmed()) {
                continue;
            }
            run.numbers().channels().forEach(channel -> {
                for (DwellOrders dwell : channel.dwells()) {
                    dwell.unexplained().forEach(line -> {
                        double twice = 2 * line.propellerOrder();
                        double resolved =
                                3 / (dwell.dwell().durationS() * dwell.dwell().propellerHz());
                        boolean odd = Math.round(twice) % 2 == 1 && Math.round(twice) < 4 * blades();
                        double crankTwice = 2 * line.crankOrder();
                        boolean ofCrank =
                                Math.abs(crankTwice - Math.round(crankTwice)) < Math.min(NEAR_HALF_CRANK, resolved);
                        boolean whole = Math.round(crankTwice) % 2 == 0;
                        boolean firings = ofCrank && (whole || fourStroke());
                        double offWhole = Math.abs(line.propellerOrder() - Math.rint(line.propellerOrder()));
                        boolean crankHalf = ofCrank
                                && !whole
                                && offWhole > Math.min(NEAR_HALF, resolved)
                                && Math.round(crankTwice) < HIGHEST_CRANK_HALF;
                        if (firings) {
                            return; // a crank order above the table's end
                        }
                        if (odd && Math.abs(twice - Math.round(twice)) < Math.min(NEAR_HALF, resolved)) {
                            found.add(new HalfOrder(
                                    run.ref(),
                                    Math.round(twice) / 2.0,
                                    line.amplitude(),
                                    channel.unit(),
                                    dwell.dwell().propellerRpm() * run.numbers().ratio()));
                        } else if (crankHalf) {
                            found.add(new HalfOrder(
                                    run.ref(),
                                    Math.round(crankTwice) / 2.0 * run.numbers().ratio(),
                                    line.amplitude(),
                                    channel.unit(),
                                    dwell.dwell().propellerRpm() * run.numbers().ratio()));
                        }
                    });
                }
            });
        }
        return found;
    }

    /**
     * A line at a half propeller order.
     *
     * @param run where it was seen
     * @param order ½, 1½, …
     * @param amplitude peak value
     * @param unit of the amplitude
     * @param engineRpm of the dwell
     */
    record HalfOrder(RunRef run, double order, double amplitude, SignalUnit unit, double engineRpm) {
        EvidenceRef ref() {
            return new EvidenceRef.Run(
                    run.id(),
                    EvidenceRef.Side.ORDERS,
                    OptionalDouble.of(engineRpm),
                    Optional.empty(),
                    Optional.empty());
        }
    }
}
