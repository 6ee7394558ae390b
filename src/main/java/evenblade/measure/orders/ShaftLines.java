package evenblade.measure.orders;

import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The lines of shafts and firing in one dwell: fitted together, the track sharpened by what the fit
 * leaves, and fitted again along with tones that beat with them.
 */
final class ShaftLines {
    private static final int MOST_ROUNDS = 3; // ours: a bound, so that it always ends
    /** A correction of the track below this phase of blade pass isn't worth another fit. */
    private static final double ENOUGH_RAD = 0.02;
    /** After a correction as large as this the fit is held against the signal once more. */
    private static final double AGAIN_RAD = 0.2;

    /** Tones that are fitted along because they beat with an order inside a block. */
    private static final int MOST_TONES = 4;

    private static final double BEATS_WITHIN_BLOCKS = 3; // ours: a beat slower than a block looks like a drifting line

    private final Recording fitting;
    private final Recording looking;
    private final OrderTable table;
    private final SpeedResult speed;
    private final Dwell dwell;
    private final List<FittedLine> lines;
    private SpeedTrack track;
    private DwellFit fit;
    private List<ResidualSpectrum> left = List.of();
    private List<List<SteadyTones.Found>> tones = List.of();

    private ShaftLines(
            Recording fitting,
            Recording looking,
            OrderTable table,
            SpeedResult speed,
            Dwell dwell,
            List<FittedLine> lines) {
        this.fitting = fitting;
        this.looking = looking;
        this.table = table;
        this.speed = speed;
        this.dwell = dwell;
        this.lines = lines;
        this.track = speed.track();
    }

    /**
     * Fits the lines.
     *
     * @param fitting the recording at a rate that holds the lines
     * @param looking the same at a rate that holds what other lines are looked for
     * @param lines those to read
     * @param folded others to fit along
     * @return empty where the samples of the dwell can't tell these lines apart
     */
    static Optional<ShaftLines> fit(
            Recording fitting,
            Recording looking,
            OrderTable table,
            SpeedResult speed,
            Dwell dwell,
            List<FittedLine> lines,
            List<FittedLine> folded) {
        ShaftLines shaft = new ShaftLines(fitting, looking, table, speed, dwell, lines);
        List<FittedLine> along = new ArrayList<>(lines);
        along.addAll(folded);
        Optional<DwellFit> first = shaft.fitted(along);
        first.ifPresent(begun -> shaft.fitAll(begun, along));
        return first.map(begun -> shaft);
    }

    /** Other steady lines of each channel, the smears of one put together. */
    List<List<SteadyTones.Found>> tones() {
        SteadyTones search = new SteadyTones(dwell, track, rateHz());
        double ratio = table.ratio() * (1 + speed.ratioCorrection());
        return tones.stream().map(found -> search.gathered(found, ratio)).toList();
    }

    SpeedTrack track() {
        return track;
    }

    /** Whether a channel's samples knock where the lines leave off. */
    boolean knocks(int channel) {
        return SensorHold.knocks(
                fit.residual(channel), rateHz(), dwell.propellerHz(), dwell.propellerHz() * table.ratio());
    }

    /** Puts the readings of every channel in their places. */
    void read(List<List<OrderReading>> readings) {
        for (int c = 0; c < readings.size(); c++) {
            new OrderEstimator(table, speed, dwell, lines, fit, c).read(left.get(c), readings.get(c));
        }
    }

    /** Tones that the samples can't tell from the lines are not fitted along. */
    private void fitAll(DwellFit begun, List<FittedLine> along) {
        fit = begun.settled();
        lookAtWhatIsLeft(along);
        List<FittedLine> first = beating();
        if (speed.confirmed()
                && sharpened(first.isEmpty() ? fit : fitted(with(along, first)).orElse(fit))) {
            fit = fitted(along).map(DwellFit::settled).orElse(fit);
            lookAtWhatIsLeft(along);
        }
        List<FittedLine> beating = beating();
        Optional<DwellFit> withTones = beating.isEmpty() ? Optional.empty() : fitted(with(along, beating));
        if (withTones.isPresent()) {
            fit = withTones.get().settled();
            left = new ArrayList<>();
            for (int c = 0; c < fitting.channels().size(); c++) {
                left.add(new ResidualSpectrum(fit.residual(c), rateHz()));
            }
        }
    }

    private Optional<DwellFit> fitted(List<FittedLine> fitted) {
        return DwellFit.of(new DwellBlocks(fitting, fitting.channels(), dwell, fitted), track);
    }

    private static List<FittedLine> with(List<FittedLine> lines, List<FittedLine> more) {
        List<FittedLine> all = new ArrayList<>(lines);
        all.addAll(more);
        return all;
    }

    /**
     * Sharpens the track by what a fit leaves; whether that was worth while.
     *
     * @param all of the lines and of the tones that beat with them: a beat left over would be taken for
     *     the speed's own wandering
     */
    private boolean sharpened(DwellFit all) {
        DwellFit sharpening = all;
        double movedRad = Double.POSITIVE_INFINITY;
        boolean worthWhile = false;
        for (int round = 0; round < MOST_ROUNDS && movedRad > AGAIN_RAD; round++) {
            sharpening = sharpening.lookedThrough();
            SpeedTrack sharper = SharpenedTrack.of(track, sharpening.wishes());
            movedRad = 2 * Math.PI * table.blades() * SharpenedTrack.size(sharper);
            if (movedRad > ENOUGH_RAD) {
                track = sharper;
                sharpening = sharpening.on(track);
                worthWhile = true;
            }
        }
        return worthWhile;
    }

    private void lookAtWhatIsLeft(List<FittedLine> along) {
        left = new ArrayList<>();
        double rateHz = rateHz();
        double upToHz = Recording.USABLE_SHARE_OF_RATE * rateHz;
        SteadyTones search = new SteadyTones(dwell, track, rateHz);
        double rate = looking.source().sampleRateHz();
        tones = new ArrayList<>();
        for (int c = 0; c < looking.channels().size(); c++) {
            Series residual = fit.residual(c);
            left.add(new ResidualSpectrum(residual, rateHz));
            List<SteadyTones.Known> known = new ArrayList<>();
            for (int l = 0; l < along.size(); l++) {
                double hz = along.get(l).frequencyHz(dwell.propellerHz());
                known.add(new SteadyTones.Known(Math.abs(hz - Math.rint(hz / rate) * rate), fit.amplitude(c, l)));
            }
            List<SteadyTones.Found> found = new ArrayList<>(search.search(residual, known, upToHz));
            if (looking.time().rateHz() > rateHz) {
                found.addAll(above(looking.channels().get(c), upToHz));
            }
            tones.add(found);
        }
    }

    private List<SteadyTones.Found> above(Channel channel, double fromHz) {
        int first = looking.time().firstFrom(dwell.fromS());
        Series samples = channel.values().part(first, looking.time().firstFrom(dwell.toS()) - first);
        double rate = looking.time().rateHz();
        double wander = (dwell.maxHz() - dwell.minHz()) / dwell.propellerHz();
        return SteadyTones.above(samples, rate, fromHz, Recording.USABLE_SHARE_OF_RATE * rate).stream()
                .filter(tone -> table.lines().stream().noneMatch(line -> {
                    double hz = line.propellerOrder() * dwell.propellerHz();
                    // A hundredth beside the drift: as near as an entered ratio may be off.
                    return Math.abs(tone.frequencyHz() - hz) < (wander + 0.01) * hz;
                }))
                .toList();
    }

    private double rateHz() {
        return fitting.time().rateHz();
    }

    /** Tones near enough to an order to disturb it block by block. */
    private List<FittedLine> beating() {
        List<FittedLine> beating = new ArrayList<>();
        double propellerHz = dwell.propellerHz();
        for (List<SteadyTones.Found> ofChannel : tones) {
            for (SteadyTones.Found tone : ofChannel) {
                boolean near = lines.stream()
                        .anyMatch(l -> Math.abs(l.frequencyHz(propellerHz) - tone.frequencyHz())
                                < BEATS_WITHIN_BLOCKS / fit.blockS());
                boolean taken = beating.stream()
                        .anyMatch(l -> Math.abs(l.frequencyHz(propellerHz) - tone.frequencyHz())
                                // A third of a hertz beside what the dwell resolves; ours.
                                < FittedLine.RESOLVED / dwell.durationS() + 0.3);
                if (near && !taken && beating.size() < MOST_TONES) {
                    beating.add(
                            tone.followsSpeed()
                                    ? new FittedLine(List.of(), tone.frequencyHz() / propellerHz, 0)
                                    : FittedLine.steady(tone.frequencyHz()));
                }
            }
        }
        return beating;
    }
}
