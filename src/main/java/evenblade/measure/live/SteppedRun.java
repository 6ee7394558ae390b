package evenblade.measure.live;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.plan.PlannedDwell;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Leads through the dwells of a plan, one after the other, and says when each has been held long enough
 * for the wanted error.
 *
 * <p>Windows that don't overlap are independent readings of the same amplitude: their relative errors e
 * join as 1 / √Σ(1/e²). The interval is ± 1.96 of that. Used by one thread.
 */
public final class SteppedRun {
    /** Error wanted where none is stated, percent. */
    public static final double USUAL_PERCENT = 5;

    /** A speed is held while it lies this near, as a share; the tachometer of a cockpit isn't better. */
    private static final double NEAR = 0.03;

    private static final double NORMAL_95 = 1.96; // Φ⁻¹(0.975)
    /** A step ends after so many times the planned length, however weak its lines. */
    public static final double GIVE_UP_AFTER = 2;

    private final List<PlannedDwell> steps;
    private final double wantedPercent;
    private final List<StepProgress> finished = new ArrayList<>();
    private double heldS;
    private double lastToS = Double.NEGATIVE_INFINITY;
    private double joinedToS = Double.NEGATIVE_INFINITY;
    private double onceWeight;
    private double bladePassWeight;

    /**
     * @param steps the dwells to hold, in order
     * @param wantedPercent largest half interval wanted of propeller once-per-revolution and blade pass
     */
    public SteppedRun(List<PlannedDwell> steps, double wantedPercent) {
        this.steps = List.copyOf(steps);
        this.wantedPercent = wantedPercent;
    }

    /** All steps, done or not. */
    public int count() {
        return steps.size();
    }

    /** Steps that are done. */
    public List<StepProgress> finished() {
        return List.copyOf(finished);
    }

    /** Takes the next reading; empty once all steps are done. */
    public Optional<StepProgress> take(LiveReading reading) {
        if (finished.size() == steps.size()) {
            return Optional.empty();
        }
        PlannedDwell step = steps.get(finished.size());
        boolean there = reading.engineRpm()
                .filter(rpm -> Math.abs(rpm / step.engineRpm() - 1) < NEAR)
                .isPresent();
        if (!there) {
            begin();
            lastToS = reading.toS();
            return Optional.of(progress(step, StepProgress.State.GO_THERE));
        }
        heldS += lastToS == Double.NEGATIVE_INFINITY ? 0 : reading.toS() - lastToS;
        lastToS = reading.toS();
        join(reading);
        StepProgress now = progress(step, state(step));
        if (now.done()) {
            finished.add(now);
            begin();
        }
        return Optional.of(now);
    }

    private void begin() {
        heldS = 0;
        onceWeight = 0;
        bladePassWeight = 0;
        joinedToS = lastToS;
    }

    private void join(LiveReading reading) {
        Optional<DwellOrders> dwell = reading.channels().stream()
                .findFirst()
                .filter(c -> !c.dwells().isEmpty())
                .map(c -> c.dwells().get(c.dwells().size() - 1));
        if (dwell.isEmpty() || dwell.get().dwell().fromS() < joinedToS) {
            return;
        }
        joinedToS = dwell.get().dwell().toS();
        onceWeight += weight(dwell.get(), OrderLine.Role.UNEVEN_PROPELLER);
        bladePassWeight += weight(dwell.get(), OrderLine.Role.BLADE_PASS);
    }

    private static double weight(DwellOrders dwell, OrderLine.Role role) {
        for (OrderReading reading : dwell.readings()) {
            if (reading.line().role() == role) {
                if (reading.level() instanceof Level.Measured measured
                        && measured.detected()
                        && measured.standardError() > 0) {
                    return Math.pow(measured.amplitude() / measured.standardError(), 2);
                }
                return 0;
            }
        }
        return 0;
    }

    private StepProgress.State state(PlannedDwell step) {
        boolean exact = percent(onceWeight).filter(p -> p <= wantedPercent).isPresent()
                && percent(bladePassWeight).filter(p -> p <= wantedPercent).isPresent();
        if (heldS >= step.lengthS() && exact) {
            return StepProgress.State.DONE;
        }
        return heldS >= GIVE_UP_AFTER * step.lengthS() ? StepProgress.State.DONE_WEAK : StepProgress.State.HOLD;
    }

    private StepProgress progress(PlannedDwell step, StepProgress.State state) {
        return new StepProgress(
                step.engineRpm(), state, heldS, step.lengthS(), percent(onceWeight), percent(bladePassWeight));
    }

    private static Optional<Double> percent(double weight) {
        return weight > 0 ? Optional.of(100 * NORMAL_95 / Math.sqrt(weight)) : Optional.empty();
    }
}
