package evenblade.measure.speed;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.numeric.DriftSmoother;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.OrderTable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Takes the propeller's speed and angle from a once-per-revolution mark and holds the lines against it. */
public final class MarkSpeed {
    /** Mark and lines may differ by this share before one of them is doubted. */
    private static final double DISAGREES = 0.002;
    /** How far around the mark's speed the lines are searched. */
    private static final double CHECKED_WITHIN = 0.05;
    /** Usual error of a pulse's time, as a share of a sample: only its ratio to the scatter matters. */
    private static final double PULSE_ERROR_SAMPLES = 0.05;

    private MarkSpeed() {}

    /**
     * The speed from the mark; from the lines, with a warning, where the channel holds no pulses.
     *
     * @param recording the recording
     * @param mark the channel with the pulses, at the same rate as the others
     * @param signals channels whose lines are held against the mark; may be empty
     * @param table the lines
     * @param expectation where the speed was expected
     */
    public static SpeedResult find(
            Recording recording, Channel mark, List<Channel> signals, OrderTable table, SpeedPrior expectation) {
        MarkPulseTimes pulses = MarkPulseTimes.of(recording.time(), mark.values());
        if (!pulses.usable()) {
            return withoutPulses(recording, mark, signals, table, expectation);
        }
        double from = recording.time().at(0);
        double to = from + recording.time().durationS();
        double[] time = pulses.timeS().stream().mapToDouble(x -> x).toArray();
        double[] turned = pulses.revolutions().stream().mapToDouble(x -> x).toArray();
        double meanHz = turned[turned.length - 1] / (time[time.length - 1] - time[0]);
        double[] variance = new double[time.length];
        Arrays.fill(
                variance,
                Math.pow(PULSE_ERROR_SAMPLES * meanHz / recording.time().rateHz(), 2));
        KnotTrack whole = track(time, turned, variance, from, to);
        List<Warning> warnings = new ArrayList<>();
        List<Dwell> dwells = new ArrayList<>();
        for (DwellFinder.Stretch stretch : DwellFinder.find(whole)) {
            dwells.add(dwell(stretch, time, turned, variance, whole));
        }
        if (dwells.isEmpty()) {
            warnings.add(NoDwell.warning());
        }
        Dwell main = dwells.stream()
                .max(Comparator.comparingDouble(Dwell::durationS))
                .orElseGet(() -> dwell(new DwellFinder.Stretch(from, to), time, turned, variance, whole));
        if (pulses.missing() + pulses.doubled() > 0) {
            warnings.add(Warning.of(
                    WarningCode.MARK_REPAIRED,
                    Subject.Whole.RECORDING,
                    new Count(pulses.revolutions().get(pulses.revolutions().size() - 1) + 1),
                    new Count(pulses.missing()),
                    new Count(pulses.doubled())));
        }
        Optional<SpeedResult> lines = check(recording, signals, table, expectation, main, warnings);
        return new SpeedResult(
                SpeedResult.Origin.MARK,
                true,
                Optional.empty(),
                lines.map(agreeing -> withCrank(whole, agreeing.track())).orElse(whole),
                Optional.of(main),
                dwells,
                lines.map(SpeedResult::ratioCorrection).orElse(0.0),
                warnings);
    }

    /**
     * The speed at the end of a recording of a second or so, from its last pulses.
     *
     * @return empty where the channel holds no pulses
     */
    public static Optional<SpeedNow> now(Recording recording, Channel mark) {
        MarkPulseTimes pulses = MarkPulseTimes.of(recording.time(), mark.values());
        if (!pulses.usable()) {
            return Optional.empty();
        }
        double[] time = pulses.timeS().stream().mapToDouble(x -> x).toArray();
        double[] turned = pulses.revolutions().stream().mapToDouble(x -> x).toArray();
        int last = time.length - 1;
        int first = last;
        while (first > 0 && time[last] - time[first] < SpeedNow.FRAME_S) {
            first--;
        }
        int middle = Math.min(last - 1, (first + last) / 2);
        double late = (turned[last] - turned[middle]) / (time[last] - time[middle]);
        double whole = (turned[last] - turned[first]) / (time[last] - time[first]);
        double pulse = 2 * PULSE_ERROR_SAMPLES / recording.time().rateHz() / (time[last] - time[first]);
        return Optional.of(
                new SpeedNow(time[first], time[last], whole, whole * pulse + 2 * Math.abs(late - whole), 1, 0));
    }

    private static SpeedResult withoutPulses(
            Recording recording, Channel mark, List<Channel> signals, OrderTable table, SpeedPrior expectation) {
        SpeedResult fromLines = SpeedFinder.find(recording, signals, table, expectation);
        List<Warning> warnings = new ArrayList<>();
        warnings.add(Warning.of(
                WarningCode.MARK_WITHOUT_PULSES,
                new Subject.Channel(mark.name()),
                Fact.of(SpeedFact.SPEED_FROM_LINES, new Quoted(mark.name()))));
        warnings.addAll(fromLines.warnings());
        return new SpeedResult(
                fromLines.origin(),
                fromLines.confirmed(),
                fromLines.doubt(),
                fromLines.track(),
                fromLines.main(),
                fromLines.dwells(),
                fromLines.doubtful(),
                fromLines.otherMachine(),
                fromLines.ratioCorrection(),
                warnings);
    }

    private static KnotTrack track(double[] time, double[] turned, double[] variance, double from, double to) {
        DriftSmoother.Smoothed smooth = DriftSmoother.smooth(
                time, turned, variance, Math.min(from, time[0]), Math.max(to, time[time.length - 1]));
        return new KnotTrack(
                time,
                smooth.level().stream().mapToDouble(x -> x).toArray(),
                smooth.rate().stream().mapToDouble(x -> x).toArray(),
                from,
                to);
    }

    private static Dwell dwell(
            DwellFinder.Stretch stretch, double[] time, double[] turned, double[] variance, SpeedTrack track) {
        int first = 0;
        while (first < time.length && time[first] < stretch.fromS()) {
            first++;
        }
        int end = first;
        while (end < time.length && time[end] <= stretch.toS()) {
            end++;
        }
        double min = Double.POSITIVE_INFINITY;
        double max = 0;
        int steps = 400;
        for (int i = 0; i <= steps; i++) {
            double hz = track.propellerHzAt(stretch.fromS() + i * stretch.lengthS() / steps);
            min = Math.min(min, hz);
            max = Math.max(max, hz);
        }
        double mean = (track.revolutionsAt(stretch.toS()) - track.revolutionsAt(stretch.fromS())) / stretch.lengthS();
        double error = 0;
        if (end - first >= 3) {
            DriftSmoother.Smoothed smooth = DriftSmoother.smooth(
                    Arrays.copyOfRange(time, first, end),
                    Arrays.copyOfRange(turned, first, end),
                    Arrays.copyOfRange(variance, first, end),
                    stretch.fromS(),
                    stretch.toS());
            mean = smooth.meanRate();
            error = smooth.meanRateStandardError();
        }
        return new Dwell(stretch.fromS(), stretch.toS(), mean, error, min, max);
    }

    /** The mark's track, with the crank's own beside it where the lines show that a belt creeps. */
    private static SpeedTrack withCrank(SpeedTrack ofMark, SpeedTrack ofLines) {
        return ofLines.ofCrank() == ofLines ? ofMark : new BeltTrack(ofMark, ofLines.ofCrank());
    }

    /**
     * Looks whether the lines lie where the mark says, and whether the entered speed speaks of another mark.
     *
     * @return what the lines say, where they agree with the mark
     */
    private static Optional<SpeedResult> check(
            Recording recording,
            List<Channel> signals,
            OrderTable table,
            SpeedPrior expectation,
            Dwell main,
            List<Warning> warnings) {
        if (expectation.enteredPropellerHz().isPresent()) {
            double entered = expectation.enteredPropellerHz().getAsDouble();
            double factor = main.propellerHz() / entered;
            if (factor < 0.8 || factor > 1.25) {
                warnings.add(Warning.of(
                        WarningCode.MARK_NOT_ONCE_PER_REVOLUTION, Subject.Whole.RECORDING, Measure.NUMBER.of(factor)));
            }
        }
        if (signals.isEmpty()) {
            return Optional.empty();
        }
        SpeedResult lines =
                SpeedFinder.find(recording, signals, table, SpeedPrior.around(main.propellerHz(), CHECKED_WITHIN));
        if (!lines.confirmed()) {
            return Optional.empty();
        }
        double linesHz =
                (lines.track().revolutionsAt(main.toS()) - lines.track().revolutionsAt(main.fromS()))
                        / main.durationS();
        double apart = linesHz / main.propellerHz() - 1;
        if (Math.abs(apart) > DISAGREES) {
            warnings.add(Warning.of(
                    WarningCode.MARK_DISAGREES,
                    Subject.Whole.RECORDING,
                    Measure.SHARE.of(Math.abs(apart)),
                    Fact.of(apart > 0 ? SpeedFact.FASTER : SpeedFact.SLOWER)));
            return Optional.empty();
        }
        lines.warnings().stream()
                .filter(w -> w.code() == WarningCode.RATIO_CORRECTED || w.code() == WarningCode.RATIO_WANDERS)
                .forEach(warnings::add);
        return Optional.of(lines);
    }
}
