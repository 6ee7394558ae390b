package evenblade.orders;

import evenblade.installation.OrderLine;
import evenblade.installation.OrderTable;
import evenblade.recording.Channel;
import evenblade.recording.Recording;
import evenblade.speed.Dwell;
import evenblade.speed.SpeedResult;
import evenblade.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.List;

/** Measures every line of an installation in every dwell of a run. */
public final class OrderMeter {
    /** Tones that are fitted along because they beat with an order inside a block. */
    private static final int MOST_TONES = 4;

    private static final double BEATS_WITHIN_BLOCKS = 3;
    /** How often the track is sharpened by what a fit leaves, and the phase of blade pass that isn't worth it. */
    private static final int MOST_ROUNDS = 3;

    private static final double ENOUGH_RAD = 0.02;

    private final Recording recording;
    private final List<Channel> channels;
    private final OrderTable table;
    private final SpeedResult speed;
    private final double upToHz;

    private OrderMeter(Recording recording, List<Channel> channels, OrderTable table, SpeedResult speed) {
        this.recording = recording;
        this.channels = channels;
        this.table = table;
        this.speed = speed;
        this.upToHz = Math.min(
                recording.usableUpToHz(),
                Recording.USABLE_SHARE_OF_RATE * recording.time().rateHz());
    }

    /**
     * Measures the lines.
     *
     * @param recording at a rate at which every line that the file can show lies in range
     * @param channels those to measure
     * @param table the lines
     * @param speed where the lines lie over time; where it isn't confirmed, nothing counts as detected
     * @return one entry per channel, in the same order, each with one entry per dwell
     */
    public static List<ChannelOrders> measure(
            Recording recording, List<Channel> channels, OrderTable table, SpeedResult speed) {
        OrderMeter meter = new OrderMeter(recording, channels, table, speed);
        List<List<DwellOrders>> perChannel = new ArrayList<>();
        channels.forEach(c -> perChannel.add(new ArrayList<>()));
        for (Dwell dwell : speed.dwells()) {
            List<DwellOrders> measured = meter.measure(dwell);
            for (int c = 0; c < measured.size(); c++) {
                perChannel.get(c).add(measured.get(c));
            }
        }
        List<ChannelOrders> result = new ArrayList<>();
        for (int c = 0; c < channels.size(); c++) {
            result.add(new ChannelOrders(channels.get(c).name(), channels.get(c).unit(), perChannel.get(c)));
        }
        return result;
    }

    private List<DwellOrders> measure(Dwell dwell) {
        List<FittedLine> lines =
                FittedLine.group(table, speed.ratioCorrection(), dwell.propellerHz(), dwell.durationS(), upToHz);
        if (lines.isEmpty()) {
            return channels.stream()
                    .map(c -> new DwellOrders(dwell, outOfRange(dwell), List.of(), java.util.Optional.empty()))
                    .toList();
        }
        List<FittedLine> along = new ArrayList<>(lines);
        along.addAll(folded(dwell, lines));
        SpeedTrack track = speed.track();
        DwellFit fit = DwellFit.of(recording, channels, track, dwell, along);
        for (int round = 0; round < MOST_ROUNDS && speed.confirmed(); round++) {
            SpeedTrack sharper = SharpenedTrack.of(track, fit.wishes(channels));
            if (2 * Math.PI * table.blades() * SharpenedTrack.size(sharper) < ENOUGH_RAD) {
                break;
            }
            track = sharper;
            fit = DwellFit.of(recording, channels, track, dwell, along);
        }
        List<double[]> residuals = residuals(fit);
        List<List<SteadyTones.Found>> tones = tones(dwell, fit, along, residuals);
        List<FittedLine> beating = beating(tones, lines, dwell, fit.blockS());
        if (!beating.isEmpty()) {
            List<FittedLine> more = new ArrayList<>(along);
            more.addAll(beating);
            fit = DwellFit.of(recording, channels, track, dwell, more);
            residuals = residuals(fit);
        }
        List<DwellOrders> result = new ArrayList<>();
        for (int c = 0; c < channels.size(); c++) {
            DwellReader reader = new DwellReader(
                    table, speed, dwell, lines, fit, c, recording.time().rateHz());
            result.add(reader.read(residuals.get(c), tones.get(c), outOfRange(dwell)));
        }
        return result;
    }

    /**
     * Lines above the range that fold down into it, to be fitted along so that they disturb neither the
     * orders nor the search for other lines; not those that fold onto a line of the table.
     */
    private List<FittedLine> folded(Dwell dwell, List<FittedLine> lines) {
        double rate = recording.source().sampleRateHz();
        if (recording.time().rateHz() < 0.99 * rate) {
            return List.of();
        }
        List<FittedLine> folded = new ArrayList<>();
        List<Double> taken = new ArrayList<>();
        lines.forEach(line -> taken.add(line.frequencyHz(dwell.propellerHz())));
        for (FittedLine line : FittedLine.group(
                table, speed.ratioCorrection(), dwell.propellerHz(), dwell.durationS(), Double.MAX_VALUE)) {
            double hz = line.frequencyHz(dwell.propellerHz());
            double at = appearsAtHz(hz);
            boolean free = taken.stream()
                    .allMatch(other -> Math.abs(other - at) * dwell.durationS() > 2 * FittedLine.RESOLVED);
            if (hz > upToHz && hz < rate && at * dwell.durationS() > 2 * FittedLine.RESOLVED && free) {
                folded.add(new FittedLine(List.of(), line.order(), 0));
                taken.add(at);
            }
        }
        return folded;
    }

    /** Where a frequency appears once sampled at the file's rate: |f − round(f/fs)·fs|. */
    private double appearsAtHz(double hz) {
        double rate = recording.source().sampleRateHz();
        return Math.abs(hz - Math.rint(hz / rate) * rate);
    }

    private List<double[]> residuals(DwellFit fit) {
        List<double[]> residuals = new ArrayList<>();
        for (int c = 0; c < channels.size(); c++) {
            residuals.add(fit.residual(channels, c));
        }
        return residuals;
    }

    private List<List<SteadyTones.Found>> tones(
            Dwell dwell, DwellFit fit, List<FittedLine> lines, List<double[]> residuals) {
        List<List<SteadyTones.Found>> all = new ArrayList<>();
        SteadyTones search =
                new SteadyTones(dwell, speed.track(), recording.time().rateHz());
        for (int c = 0; c < channels.size(); c++) {
            List<SteadyTones.Known> known = new ArrayList<>();
            for (int l = 0; l < lines.size(); l++) {
                known.add(new SteadyTones.Known(
                        appearsAtHz(lines.get(l).frequencyHz(dwell.propellerHz())), fit.amplitude(c, l)));
            }
            all.add(search.search(residuals.get(c), known, upToHz));
        }
        return all;
    }

    /** Tones near enough to an order to disturb it block by block. */
    private static List<FittedLine> beating(
            List<List<SteadyTones.Found>> tones, List<FittedLine> lines, Dwell dwell, double blockS) {
        List<FittedLine> beating = new ArrayList<>();
        for (List<SteadyTones.Found> ofChannel : tones) {
            for (SteadyTones.Found tone : ofChannel) {
                boolean near = lines.stream()
                        .anyMatch(l -> Math.abs(l.frequencyHz(dwell.propellerHz()) - tone.frequencyHz())
                                < BEATS_WITHIN_BLOCKS / blockS);
                boolean taken = beating.stream()
                        .anyMatch(l -> Math.abs(l.frequencyHz(dwell.propellerHz()) - tone.frequencyHz())
                                < FittedLine.RESOLVED / dwell.durationS() + 0.3);
                if (near && !taken && beating.size() < MOST_TONES) {
                    beating.add(
                            tone.followsSpeed()
                                    ? new FittedLine(List.of(), tone.frequencyHz() / dwell.propellerHz(), 0)
                                    : FittedLine.steady(tone.frequencyHz()));
                }
            }
        }
        return beating;
    }

    /** One reading per line of the table: beyond range where it is, a placeholder to be filled elsewhere. */
    private List<OrderReading> outOfRange(Dwell dwell) {
        List<OrderReading> readings = new ArrayList<>();
        for (OrderLine line : table.lines()) {
            double hz = FittedLine.order(line, speed.ratioCorrection()) * dwell.propellerHz();
            readings.add(new OrderReading(line, hz, new Level.BeyondRange(appearsAtHz(hz)), List.of()));
        }
        return readings;
    }
}
