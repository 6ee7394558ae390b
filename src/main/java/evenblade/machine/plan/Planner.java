package evenblade.machine.plan;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import evenblade.machine.plan.PlannedDwell.ClosePair;
import evenblade.machine.plan.PlannedDwell.PlannedLine;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Works out a {@link RunPlan} from an installation, the speeds to hold and the sensor's rate. */
public final class Planner {
    /** The shortest dwell asked for, in seconds: enough blocks for an interval (own choice). */
    static final double SHORTEST_DWELL_S = 20;

    /** The longest dwell asked for, in seconds; lines that need more are taken as one. */
    static final double LONGEST_DWELL_S = 120;

    private static final double LENGTH_STEP_S = 5; // whole numbers to count out

    private final Installation installation;
    private final OptionalDouble sampleRateHz;
    private final OrderTable table;
    private final List<Place> places;

    private Planner(Installation installation, OptionalDouble sampleRateHz) {
        this.installation = installation;
        this.sampleRateHz = sampleRateHz;
        this.table = installation.orders();
        this.places = Place.of(table);
    }

    /**
     * Plans a run.
     *
     * @param engineRpms speeds to hold; none for the usual five between idle and the highest speed
     * @param sampleRateHz samples per second of the sensor, where known
     * @throws BadInput where the engine doesn't run at a speed, or the rate isn't above zero
     */
    public static RunPlan plan(Installation installation, List<Double> engineRpms, OptionalDouble sampleRateHz) {
        double rate = sampleRateHz.orElse(1);
        if (!(rate > 0 && Double.isFinite(rate))) {
            throw BadInput.in("sample rate").found(rate + " Hz", "a rate above zero");
        }
        for (double rpm : engineRpms) {
            installation.engine().requireRunsAt(rpm, BadInput.in("engine speed"));
        }
        return new Planner(installation, sampleRateHz).plan(engineRpms);
    }

    /** The highest frequency that can be measured at a sample rate. */
    static double usableUpToHz(double sampleRateHz) {
        return Recording.USABLE_SHARE_OF_RATE * sampleRateHz;
    }

    /** Where a line shows at a sample rate that is too low for it: |f − round(f/fs)·fs|. */
    static double foldedHz(double frequencyHz, double sampleRateHz) {
        return Math.abs(frequencyHz - Math.rint(frequencyHz / sampleRateHz) * sampleRateHz);
    }

    private RunPlan plan(List<Double> asked) {
        List<Double> speeds = asked.isEmpty() ? DwellSpeeds.of(installation.engine()) : asked;
        List<PlannedDwell> dwells = new ArrayList<>();
        for (double rpm : new LinkedHashSet<>(speeds)) {
            dwells.add(dwell(rpm));
        }
        return new RunPlan(
                installation, places, sampleRateHz, dwells, RunCard.of(installation, dwells), warnings(dwells));
    }

    private PlannedDwell dwell(double engineRpm) {
        double propellerRpm = engineRpm / installation.reduction().ratio();
        double propellerHz = propellerRpm / 60;
        List<ClosePair> close = close(propellerHz);
        double length = SHORTEST_DWELL_S;
        for (ClosePair pair : close) {
            if (pair.splitAfterS() <= LONGEST_DWELL_S) {
                length = Math.max(length, LENGTH_STEP_S * Math.ceil(pair.splitAfterS() / LENGTH_STEP_S));
            }
        }
        List<PlannedLine> lines = new ArrayList<>();
        for (OrderLine line : table.lines()) {
            double frequencyHz = line.propellerOrder() * propellerHz;
            lines.add(new PlannedLine(line, frequencyHz, fold(frequencyHz, propellerHz)));
        }
        return new PlannedDwell(engineRpm, propellerRpm, length, lines, close);
    }

    private List<ClosePair> close(double propellerHz) {
        List<ClosePair> close = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            for (int j = i + 1; j < places.size(); j++) {
                double apart = places.get(j).propellerOrder() - places.get(i).propellerOrder();
                ClosePair pair = new ClosePair(places.get(i), places.get(j), apart * propellerHz);
                if (pair.near()) {
                    close.add(pair);
                }
            }
        }
        return close;
    }

    private Optional<PlannedLine.Fold> fold(double frequencyHz, double propellerHz) {
        if (sampleRateHz.isEmpty() || frequencyHz <= usableUpToHz(sampleRateHz.getAsDouble())) {
            return Optional.empty();
        }
        double foldedHz = foldedHz(frequencyHz, sampleRateHz.getAsDouble());
        List<String> near = new ArrayList<>();
        for (OrderLine line : table.lines()) {
            double trueHz = line.propellerOrder() * propellerHz;
            boolean seen = trueHz <= usableUpToHz(sampleRateHz.getAsDouble());
            if (seen && Math.abs(foldedHz - trueHz) <= ClosePair.WANDER_SHARE * trueHz) {
                near.add(line.name());
            }
        }
        return Optional.of(new PlannedLine.Fold(foldedHz, near));
    }

    private List<Warning> warnings(List<PlannedDwell> dwells) {
        List<Warning> warnings = new ArrayList<>();
        if (dwells.isEmpty()) {
            warnings.add(Warning.of(WarningCode.NO_SPEED, Subject.Whole.INSTALLATION));
        }
        Reduction reduction = installation.reduction();
        if (reduction.teeth().isEmpty() && reduction.ratio() != Math.rint(reduction.ratio())) {
            warnings.add(Warning.of(
                    WarningCode.RATIO_WITHOUT_TEETH,
                    Subject.Whole.INSTALLATION,
                    new Quoted(String.valueOf(reduction.ratio()))));
        }
        reduction.doubt().ifPresent(warnings::add);
        for (PlannedDwell dwell : dwells) {
            for (ClosePair pair : dwell.close()) {
                if (pair.splitAfterS() > LONGEST_DWELL_S) {
                    warnings.add(Warning.of(
                            WarningCode.TOO_CLOSE_TO_SPLIT,
                            new Subject.Dwell(dwell.engineRpm()),
                            Measure.ENGINE_RPM.of(dwell.engineRpm()),
                            new Quoted(String.join(" = ", pair.lower().names())),
                            new Quoted(String.join(" = ", pair.upper().names())),
                            Measure.FREQUENCY.of(pair.apartHz()),
                            Measure.TIME.of(Math.ceil(pair.splitAfterS()))));
                }
            }
        }
        return warnings;
    }
}
