package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.units.SignalUnit;
import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.machine.installation.SensorPlace;
import evenblade.machine.installation.Shaft;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Propeller 1× over the dwells and directions of a run, held against what a pull that turns in the disc (mass) and a
 * couple (track, pitch, flange) would do to many engines as they could be ({@link EngineBody}), on soft and on stiff
 * mounts. For each body the strength of the cause is fitted (one number for all dwells, rising with ω²) and the rest
 * weighed as exp(−½·Σ(rest/error)²); the mean over the bodies says how well the cause explains the run.
 *
 * @param pull mean weight with a turning pull
 * @param couple with a turning couple
 * @param entered whether the sensor's place is known
 * @param run which run
 */
record DiscFit(double pull, double couple, boolean entered, RunEvidence run) {
    /** Bodies of each kind. Ours, from a trial: twice as many change no answer by more than a point. */
    private static final int BODIES = 400;
    /** How near the best of them comes to a real engine, as a share of the largest direction (by judgement, no source). */
    private static final double LIKENESS = 0.15;
    /** Below this mean weight no body explains the run, and the two can't be weighed against each other. */
    private static final double EXPLAINS = 1e-6;
    /**
     * Points at most: the bodies are our own idea, and one run is one place. Ours, from a trial: with 3, of 43 runs of the
     * test rig 22 were told right and 3 wrong, all three on the engine's front.
     */
    private static final int MOST = 2;

    /** One direction in one dwell: amplitude as acceleration in any unit, with its error. */
    private record Seen(int direction, double omega, double size, double error) {}

    /** Of the run with most 1×; empty where fewer than two directions or none stands out. */
    static Optional<DiscFit> of(List<RunEvidence> runs, Optional<SensorPlace.OnEngine> entered) {
        OrderObservations once =
                OrderObservations.of(runs).of(Shaft.PROPELLER, 1).alone().detected();
        Optional<OrderObservation> most = once.fastest().or(once::strongest);
        if (most.isEmpty()) {
            return Optional.empty();
        }
        RunEvidence run = runs.stream()
                .filter(r -> r.ref().equals(most.get().run()))
                .findFirst()
                .orElseThrow();
        List<Seen> seen =
                seen(OrderObservations.of(List.of(run)).of(Shaft.PROPELLER, 1).alone());
        if (run.microphone() || seen.stream().map(Seen::direction).distinct().count() < 2) {
            return Optional.empty();
        }
        double pull = 0;
        double couple = 0;
        Random dice = new Random(BODIES); // the same bodies every time, so that the same job has the same answer
        for (int i = 0; i < BODIES; i++) {
            // One in four on stiff mounts: the usual ones are soft (by judgement, no source).
            EngineBody body = EngineBody.random(dice, i % 4 > 0, entered);
            pull += weight(seen, body, true) / BODIES;
            couple += weight(seen, body, false) / BODIES;
        }
        return Math.max(pull, couple) < EXPLAINS
                ? Optional.empty()
                : Optional.of(new DiscFit(pull, couple, entered.isPresent(), run));
    }

    private static List<Seen> seen(OrderObservations once) {
        List<Seen> seen = new ArrayList<>();
        for (OrderObservation s : once.all()) {
            double largest = once.atMomentOf(s)
                    .only(o -> o.direction() != Direction.UNKNOWN)
                    .strongest()
                    .map(OrderObservation::amplitude)
                    .orElse(0.0);
            if (s.direction() != Direction.UNKNOWN && largest > 0) {
                double omega = 2 * Math.PI * s.reading().frequencyHz();
                double toAcceleration = s.unit().quantity() == SignalUnit.Quantity.VELOCITY ? omega : 1;
                double error = Math.hypot(LIKENESS * largest, (s.ciHigh() - s.ciLow()) / 4);
                seen.add(new Seen(
                        s.direction().ordinal(), omega, toAcceleration * s.amplitude(), toAcceleration * error));
            }
        }
        seen.sort(Comparator.comparingDouble(Seen::omega)); // so that a body is solved once for each dwell
        return seen;
    }

    private static double weight(List<Seen> seen, EngineBody body, boolean pull) {
        double xy = 0;
        double xx = 0;
        double yy = 0;
        double omega = 0;
        double[] shaking = {};
        for (Seen s : seen) {
            if (s.omega() != omega) {
                omega = s.omega();
                shaking = body.shaking(omega, pull);
            }
            double x = shaking[s.direction()] / s.error();
            double y = s.size() / s.error();
            xy += x * y;
            xx += x * x;
            yy += y * y;
        }
        return Math.exp(-0.5 * Math.max(0, yy - xy * xy / xx));
    }

    /** Doublings of the odds for a pull over a couple, held to ± {@value #MOST}. */
    int pullPoints() {
        double doublings = Math.log((pull + EXPLAINS) / (couple + EXPLAINS)) / Math.log(2);
        return (int) Math.round(Math.max(-MOST, Math.min(MOST, doublings)));
    }

    /** What the fit says as evidence for a cause that pulls (1) or that rocks (−1); none where it says nothing. */
    List<EvidenceItem> items(int sign) {
        int points = sign * pullPoints();
        return points == 0
                ? List.of()
                : List.of(running(
                        points,
                        run.ref(EvidenceRef.Side.ORDERS),
                        pullPoints() > 0 ? FindingFact.FITS_PULL : FindingFact.FITS_COUPLE,
                        Measure.NUMBER.of(Math.pow(2, Math.abs(points))),
                        Fact.of(entered ? FindingFact.PLACE_KNOWN : FindingFact.PLACE_NOT_KNOWN),
                        run.ref().quoted()));
    }
}
