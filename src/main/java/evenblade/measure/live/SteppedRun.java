package evenblade.measure.live;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.plan.PlannedDwell;
import evenblade.measure.orders.DwellOrders;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Leads through the dwells of a plan and says when each has been held long enough for the wanted error. Only the dwell
 * that a window ends in counts, as the dwell finder of a finished recording sees it, and its errors are those measured
 * over it. A dwell at the speed of another step that is still to do counts for that one, so steps can be taken in any
 * order. May be used by several threads.
 */
public final class SteppedRun {
    /** Error wanted where none is stated, percent. */
    public static final double USUAL_PERCENT = 5;
    /** A step ends after so many times the planned length, however weak its lines. */
    public static final double GIVE_UP_AFTER = 2;

    /** A speed is held while it lies this near, as a share; the tachometer of a cockpit isn't better. */
    private static final double NEAR = 0.03;

    private final List<PlannedDwell> steps;
    private final double wantedPercent;
    private final List<StepProgress> finished = new ArrayList<>();
    private final List<Integer> toDo;
    /** A dwell that began before was another try. */
    private double countedFromS = Double.NEGATIVE_INFINITY;

    private double lastToS;
    private Optional<StepProgress> now;

    /**
     * @param steps the dwells to hold, in order
     * @param wantedPercent largest half interval wanted of propeller once-per-revolution and blade pass
     */
    public SteppedRun(List<PlannedDwell> steps, double wantedPercent) {
        this.steps = List.copyOf(steps);
        this.wantedPercent = wantedPercent;
        this.toDo = new ArrayList<>(IntStream.range(0, steps.size()).boxed().toList());
        this.now = next();
    }

    /** Steps that are done, in the order of their doing. */
    public synchronized List<StepProgress> finished() {
        return List.copyOf(finished);
    }

    /** The step under way; empty once none is left to do. */
    public synchronized Optional<StepProgress> now() {
        return now;
    }

    /** Puts the step under way behind all others that are to do; the last one left is dropped. */
    public synchronized void skip() {
        now.ifPresent(step -> {
            Integer index = step.number() - 1;
            toDo.remove(index);
            if (!toDo.isEmpty()) {
                toDo.add(index);
            }
            now = next();
        });
    }

    /** Takes back the step that was done last: it is to be held anew. */
    public synchronized void repeat() {
        if (!finished.isEmpty()) {
            StepProgress last = finished.remove(finished.size() - 1);
            toDo.add(0, last.number() - 1);
            countedFromS = lastToS;
            now = next();
        }
    }

    /** Takes the next window. */
    public synchronized void take(LiveReading window) {
        lastToS = window.toS();
        Optional<DwellOrders> held =
                LiveFigures.held(window).filter(each -> each.dwell().fromS() >= countedFromS);
        Optional<Integer> at =
                held.flatMap(each -> stepAt(window.ratio() * each.dwell().propellerRpm()));
        if (at.isEmpty()) {
            now = next();
            return;
        }
        StepProgress progress = progress(at.get(), held.get());
        if (progress.done()) {
            finished.add(progress);
            toDo.remove(at.get());
            now = next();
        } else {
            now = Optional.of(progress);
        }
    }

    /** The nearest step that is still to do. */
    private Optional<Integer> stepAt(double engineRpm) {
        return toDo.stream()
                .filter(index -> off(index, engineRpm) < NEAR)
                .min((one, other) -> Double.compare(off(one, engineRpm), off(other, engineRpm)));
    }

    private double off(int index, double engineRpm) {
        return Math.abs(engineRpm / steps.get(index).engineRpm() - 1);
    }

    private Optional<StepProgress> next() {
        return toDo.stream()
                .findFirst()
                .map(index -> progress(index, StepProgress.State.GO_THERE, 0, Optional.empty(), Optional.empty()));
    }

    private StepProgress progress(int index, DwellOrders held) {
        Optional<Double> once = percent(held, OrderLine.Role.UNEVEN_PROPELLER);
        Optional<Double> bladePass = percent(held, OrderLine.Role.BLADE_PASS);
        double heldS = held.dwell().durationS();
        double wantedS = steps.get(index).lengthS();
        boolean exact = once.filter(p -> p <= wantedPercent).isPresent()
                && bladePass.filter(p -> p <= wantedPercent).isPresent();
        StepProgress.State state = heldS >= wantedS && exact
                ? StepProgress.State.DONE
                : heldS >= GIVE_UP_AFTER * wantedS ? StepProgress.State.DONE_WEAK : StepProgress.State.HOLD;
        return progress(index, state, heldS, once, bladePass);
    }

    private StepProgress progress(
            int index, StepProgress.State state, double heldS, Optional<Double> once, Optional<Double> bladePass) {
        PlannedDwell step = steps.get(index);
        return new StepProgress(
                index + 1, steps.size(), step.engineRpm(), state, heldS, step.lengthS(), once, bladePass);
    }

    /** Half the 95 % interval of the lowest line that plays a part, in percent; empty where it isn't detected. */
    private static Optional<Double> percent(DwellOrders dwell, OrderLine.Role role) {
        return LiveFigures.figure(dwell, role)
                .filter(LiveFigures.Figure::detected)
                .map(figure -> 100 * figure.plusMinus() / figure.value());
    }
}
