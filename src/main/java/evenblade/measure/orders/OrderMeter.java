package evenblade.measure.orders;

import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.orders.DwellOrders.UnexplainedLine;
import evenblade.measure.signal.BandLimit;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.MainsSeries;
import evenblade.measure.speed.SpeedResult;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Measures every line of an installation in every dwell of a run.
 *
 * <p>Shaft and firing lines are fitted together at the lowest rate that holds them; gear mesh, far
 * above, is fitted by itself at the recording's own rate; other steady lines are looked for up to
 * about a kilohertz.
 */
public final class OrderMeter {
    private static final double LOOKED_THROUGH_HZ = 1000; // the orders of interest lie below about 1 kHz
    /** Ours: a tone's place is good to this, and a grid strays no further within a dwell. */
    private static final double HUM_PLACED_HZ = 0.06;

    private static final double MARGIN = 1.03; // ours: the speed wanders by as much within a dwell
    /** Lines of a dwell whose samples have gaps are put together in groups, each time twice as wide, this often. */
    private static final int MOST_WIDENINGS = 20;

    private final Recording recording;
    private final Recording looking;
    private final Recording fitting;
    private final OrderTable table;
    private final SpeedResult speed;
    private final double upToHz;
    private final Set<String> rattling = new LinkedHashSet<>();

    private OrderMeter(Recording recording, List<Channel> channels, OrderTable table, SpeedResult speed) {
        this.table = table;
        this.speed = speed;
        this.recording = BandLimit.of(recording, channels, recording.time().rateHz());
        this.upToHz = Math.min(
                recording.usableUpToHz(),
                Recording.USABLE_SHARE_OF_RATE * recording.time().rateHz());
        double highest = Math.min(upToHz, MARGIN * highestShaftLineHz());
        this.looking = BandLimit.of(this.recording, this.recording.channels(), Math.max(LOOKED_THROUGH_HZ, highest));
        this.fitting = BandLimit.of(looking, looking.channels(), highest);
    }

    /**
     * Measures the lines.
     *
     * @param recording at a rate at which every line that the file can show lies in range
     * @param channels those to measure
     * @param table the lines
     * @param speed where the lines lie over time; where it isn't confirmed, nothing counts as detected
     * @return one entry per channel, in the same order, each with one entry per dwell; a dwell whose samples bear no
     *     fit at all is left out
     */
    public static List<ChannelOrders> measure(
            Recording recording, List<Channel> channels, OrderTable table, SpeedResult speed) {
        return of(recording, channels, table, speed).channels();
    }

    /**
     * What was measured.
     *
     * @param channels orders of each
     * @param rattling names of those whose sensor knocks
     */
    record Measured(List<ChannelOrders> channels, Set<String> rattling) {}

    /** Measures the lines, and says what they tell of the sensors. */
    static Measured of(Recording recording, List<Channel> channels, OrderTable table, SpeedResult speed) {
        OrderMeter meter = new OrderMeter(recording, channels, table, speed);
        List<List<DwellOrders>> perChannel = new ArrayList<>();
        channels.forEach(c -> perChannel.add(new ArrayList<>()));
        for (Dwell dwell : speed.dwells()) {
            List<DwellOrders> measured = meter.measure(dwell).orElse(List.of());
            for (int c = 0; c < measured.size(); c++) {
                perChannel.get(c).add(measured.get(c));
            }
        }
        List<ChannelOrders> result = new ArrayList<>();
        for (int c = 0; c < channels.size(); c++) {
            result.add(new ChannelOrders(channels.get(c).name(), channels.get(c).unit(), perChannel.get(c)));
        }
        return new Measured(result, meter.rattling);
    }

    private double highestShaftLineHz() {
        double fastest = speed.dwells().stream().mapToDouble(Dwell::maxHz).max().orElse(LOOKED_THROUGH_HZ);
        double highest = 0;
        for (OrderLine line : table.lines()) {
            if (line.role() != OrderLine.Role.MESH) {
                highest = Math.max(highest, FittedLine.order(line, speed.ratioCorrection()));
            }
        }
        return highest * fastest;
    }

    /** Puts lines together until the samples of the dwell can tell the groups apart; empty where they never can. */
    private Optional<List<DwellOrders>> measure(Dwell dwell) {
        double resolved = FittedLine.RESOLVED;
        for (int widened = 0; widened <= MOST_WIDENINGS; widened++) {
            List<FittedLine> groups = FittedLine.group(
                    table, speed.ratioCorrection(), dwell.propellerHz(), dwell.durationS(), upToHz, resolved);
            Optional<List<DwellOrders>> measured = measure(dwell, groups);
            if (measured.isPresent() || groups.size() < 2) {
                return measured;
            }
            resolved *= 2;
        }
        return Optional.empty();
    }

    private Optional<List<DwellOrders>> measure(Dwell dwell, List<FittedLine> groups) {
        List<FittedLine> shaft = new ArrayList<>();
        List<FittedLine> mesh = new ArrayList<>();
        for (FittedLine line : groups) {
            boolean onlyMesh =
                    line.members().stream().allMatch(m -> table.lines().get(m).role() == OrderLine.Role.MESH);
            (onlyMesh ? mesh : shaft).add(line);
        }
        List<List<OrderReading>> readings = new ArrayList<>();
        for (int c = 0; c < fitting.channels().size(); c++) {
            readings.add(beyondRange(dwell));
        }
        SpeedTrack track = speed.track();
        List<List<SteadyTones.Found>> tones = List.of();
        if (!shaft.isEmpty()) {
            FoldedLines folded = FoldedLines.of(fitting, table, speed, dwell, shaft, upToHz);
            Optional<ShaftLines> fitted = ShaftLines.fit(fitting, looking, table, speed, dwell, shaft, folded.along());
            if (fitted.isEmpty()) {
                return Optional.empty();
            }
            ShaftLines lines = fitted.get();
            lines.read(readings);
            readings.forEach(ofChannel -> tellHidden(folded, shaft, ofChannel));
            tones = lines.tones();
            track = lines.track();
            for (int c = 0; c < readings.size(); c++) {
                if (lines.knocks(c)) {
                    rattling.add(fitting.channels().get(c).name());
                }
            }
        }
        if (!mesh.isEmpty() && !readMesh(dwell, track, mesh, readings)) {
            return Optional.empty();
        }
        List<DwellOrders> result = new ArrayList<>();
        for (int c = 0; c < readings.size(); c++) {
            result.add(new DwellOrders(
                    dwell,
                    readings.get(c),
                    tones.isEmpty() ? List.of() : unexplained(tones.get(c), dwell),
                    tones.isEmpty() ? Optional.empty() : UnevennessIndex.of(readings.get(c), table),
                    SlowSwell.of(looking.time(), looking.channels().get(c).values(), dwell)
                            .flatMap(SlowSwell::swell),
                    blades(c, dwell, track)));
        }
        return Optional.of(result);
    }

    /** Which blade is which is known only where the angle is counted from a mark. */
    private Optional<BladeShares> blades(int channel, Dwell dwell, SpeedTrack track) {
        return speed.confirmed() && speed.origin() == SpeedResult.Origin.MARK
                ? BladeShares.of(looking.time(), looking.channels().get(channel).values(), track, dwell, table)
                : Optional.empty();
    }

    /** Says of lines on which others lie folded that they can't be told from those. */
    private static void tellHidden(FoldedLines folded, List<FittedLine> lines, List<OrderReading> readings) {
        folded.hiddenUnder().forEach((line, lying) -> {
            for (int member : lines.get(line).members()) {
                OrderReading reading = readings.get(member);
                List<OrderLine> all = new ArrayList<>(reading.inseparableFrom());
                all.addAll(lying);
                readings.set(member, new OrderReading(reading.line(), reading.frequencyHz(), reading.level(), all));
            }
        });
    }

    /** Whether the samples bear a fit. */
    private boolean readMesh(Dwell dwell, SpeedTrack track, List<FittedLine> mesh, List<List<OrderReading>> readings) {
        Optional<DwellFit> fitted = DwellFit.of(new DwellBlocks(recording, recording.channels(), dwell, mesh), track);
        if (fitted.isEmpty()) {
            return false;
        }
        DwellFit fit = fitted.get().settled();
        for (int c = 0; c < readings.size(); c++) {
            new OrderEstimator(table, speed, dwell, mesh, fit, c)
                    .read(new ResidualSpectrum(fit.residual(c), recording.time().rateHz()), readings.get(c));
        }
        return true;
    }

    /** One reading per line of the table, each as if beyond range; those that are not are replaced. */
    private List<OrderReading> beyondRange(Dwell dwell) {
        List<OrderReading> readings = new ArrayList<>();
        for (OrderLine line : table.lines()) {
            double hz = FittedLine.order(line, speed.ratioCorrection()) * dwell.propellerHz();
            readings.add(new OrderReading(
                    line, hz, Level.beyondRange(hz, recording.source().sampleRateHz()), List.of()));
        }
        return readings;
    }

    private List<UnexplainedLine> unexplained(List<SteadyTones.Found> tones, Dwell dwell) {
        double ratio = table.ratio() * (1 + speed.ratioCorrection());
        double[] hum = MainsSeries.among(
                tones.stream()
                        .filter(tone -> !tone.followsSpeed() && !tone.smeared())
                        .mapToDouble(SteadyTones.Found::frequencyHz)
                        .toArray(),
                HUM_PLACED_HZ);
        return tones.stream()
                .map(tone -> new UnexplainedLine(
                        tone.frequencyHz(),
                        tone.amplitude(),
                        tone.frequencyHz() / dwell.propellerHz(),
                        tone.frequencyHz() / dwell.propellerHz() / ratio,
                        tone.followsSpeed(),
                        Arrays.stream(hum).anyMatch(hz -> hz == tone.frequencyHz())))
                .toList();
    }
}
