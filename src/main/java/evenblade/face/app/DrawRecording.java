package evenblade.face.app;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.SeriesBuilder;
import evenblade.keep.job.PlainName;
import evenblade.measure.orders.AngleAverage;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.orders.SlowSwell;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.EvenGrid;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.signal.Waterfall;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.tell.chart.AmplitudeScale;
import evenblade.tell.chart.AnglePicture;
import evenblade.tell.chart.AnglePicture.Revolution;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.EnvelopePicture;
import evenblade.tell.chart.OrderBarsPicture;
import evenblade.tell.chart.OrderMark;
import evenblade.tell.chart.OrderRows;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.ShaftSpeeds;
import evenblade.tell.chart.SpectrumPicture;
import evenblade.tell.chart.SpeedPicture;
import evenblade.tell.chart.WaterfallPicture;
import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Answers what an analysed recording looks like: a picture of each kind, none of them drawn yet. */
public final class DrawRecording {
    /** Length of the stretches that the spectrum is averaged over. */
    static final double SPECTRUM_STRETCH_S = 4;

    static final int WATERFALL_SLICES = 400; // fills a screen
    static final int WATERFALL_BINS = 600; // fills a screen
    static final int SPEED_STEPS = 2000; // more than a picture has pixels across
    private static final double LEAST_LEVEL = 1e-12; // keeps the logarithm of silence finite

    private final AnalysedRecording analysed;
    private final RunOrders run;
    private final Recording recording;
    private final Optional<Dwell> main;

    private DrawRecording(AnalysedRecording analysed, Optional<Dwell> main) {
        this.analysed = analysed;
        this.run = analysed.orders();
        this.recording = analysed.recording();
        this.main = main;
    }

    /**
     * The pictures by name (a word or two in kebab-case, fit for a file): of each channel its spectrum,
     * order bars, waterfall and one mean turn, and the speed once. Where no dwell is known, spectra and
     * waterfalls without orders are all there is.
     */
    public static Map<String, Picture> draw(AnalysedRecording analysed) {
        return new DrawRecording(analysed, longest(analysed.orders())).pictures();
    }

    /** Pictures of a dwell that need not be the longest. */
    public static Map<String, Picture> draw(AnalysedRecording analysed, Dwell dwell) {
        return new DrawRecording(analysed, Optional.of(dwell)).pictures();
    }

    private static Optional<Dwell> longest(RunOrders run) {
        return run.speed().main().filter(run.speed().dwells()::contains);
    }

    /**
     * One channel as it is drawn without its recording: over the longest dwell first, then over the others in order
     * of time; over the whole, where there is no dwell.
     */
    static List<ChannelView> views(AnalysedRecording analysed, int channel, boolean turning) {
        Optional<Dwell> longest = longest(analysed.orders());
        List<Optional<Dwell>> stretches = new ArrayList<>(List.of(longest));
        analysed.orders().speed().dwells().stream()
                .map(Optional::of)
                .filter(dwell -> !dwell.equals(longest))
                .forEach(stretches::add);
        EvenGrid grid = grid(analysed.recording(), channel);
        return stretches.stream()
                .map(stretch -> new DrawRecording(analysed, stretch).view(channel, grid, turning))
                .toList();
    }

    private ChannelView view(int place, EvenGrid grid, boolean turning) {
        ChannelOrders channel = run.channels().get(place);
        Series part = main.map(dwell -> part(grid, dwell.fromS(), dwell.toS())).orElse(grid.values());
        return new ChannelView(
                channel.channel(),
                channel.unit(),
                main,
                spectrum(part, grid),
                usableUpToHz(recording, grid),
                main.filter(dwell -> turning).flatMap(dwell -> DrawRecording.meanTurn(analysed, place, dwell)));
    }

    private static Spectrum spectrum(Series part, EvenGrid grid) {
        return AveragedSpectrum.hann(SPECTRUM_STRETCH_S, grid.rateHz(), Spectrum.Scaling.AMPLITUDE)
                .of(part, grid.rateHz());
    }

    private Map<String, Picture> pictures() {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        if (run.speed().main().isPresent()) {
            pictures.put("speed", speed());
        }
        for (int i = 0; i < run.channels().size(); i++) {
            ChannelOrders channel = run.channels().get(i);
            String name = run.channels().size() == 1
                    ? ""
                    : "-" + (i + 1) + "-" + PlainName.of(channel.channel()).toLowerCase(Locale.ROOT);
            Optional<DwellOrders> dwell = in(channel, main);
            EvenGrid grid = grid(recording, i);
            pictures.put("spectrum" + name, spectrum(run, view(i, grid, false)));
            dwell.ifPresent(each -> pictures.put("orders" + name, bars(channel, each)));
            pictures.put("waterfall" + name, waterfall(channel, dwell, grid));
            int place = i;
            main.flatMap(held -> SlowSwell.of(
                            recording.time(), recording.channels().get(place).values(), held))
                    .filter(swells -> swells.swell().isPresent())
                    .ifPresent(swells -> pictures.put("swell" + name, swell(channel, swells)));
            main.flatMap(held -> turn(analysed, place, held)).ifPresent(turn -> pictures.put("turn" + name, turn));
        }
        return pictures;
    }

    /** A channel's samples at even steps. */
    static EvenGrid grid(Recording recording, int place) {
        Channel channel = recording.channels().get(place);
        return recording.time().even()
                ? new EvenGrid(recording.time().at(0), recording.time().rateHz(), channel.values())
                : EvenGrid.of(recording.time(), channel.values(), EvenGrid.Interpolation.CUBIC);
    }

    private static Caption caption(
            RunOrders run, Optional<ChannelOrders> channel, Optional<Dwell> dwell, String... more) {
        List<String> parts = new ArrayList<>(Caption.ofRun(run, channel, dwell).parts());
        parts.addAll(List.of(more));
        return new Caption(parts);
    }

    private SpeedPicture speed() {
        return new SpeedPicture(SpeedPicture.Data.of(
                caption(run, Optional.empty(), Optional.empty()),
                run.speed().track(),
                run.ratio(),
                run.speed().dwells().stream().map(this::withClock).toList(),
                SPEED_STEPS));
    }

    private EnvelopePicture swell(ChannelOrders channel, SlowSwell swells) {
        return new EnvelopePicture(
                caption(run, Optional.of(channel), main), channel.unit().display(), swells.timeS(), swells.level());
    }

    /** A dwell with what the clock adds to the error of its speed. */
    private Dwell withClock(Dwell dwell) {
        return new Dwell(
                dwell.fromS(),
                dwell.toS(),
                dwell.propellerHz(),
                run.standardErrorHz(dwell),
                dwell.minHz(),
                dwell.maxHz(),
                dwell.confirmedBy());
    }

    private OrderBarsPicture bars(ChannelOrders channel, DwellOrders dwell) {
        return new OrderBarsPicture(new OrderBarsPicture.Data(
                caption(run, Optional.of(channel), Optional.of(dwell.dwell())), channel.unit(), OrderRows.bars(dwell)));
    }

    /** What a channel shows in a dwell; empty where the speed never settles. */
    private static Optional<DwellOrders> in(ChannelOrders channel, Optional<Dwell> dwell) {
        return channel.dwells().stream()
                .filter(each -> dwell.filter(each.dwell()::equals).isPresent())
                .findFirst();
    }

    /** The spectrum of one channel of an analysed run. */
    static SpectrumPicture spectrum(RunOrders run, ChannelView view) {
        ChannelOrders channel = run.channels().stream()
                .filter(each -> each.channel().equals(view.channel()))
                .findFirst()
                .orElseThrow();
        Optional<DwellOrders> dwell = in(channel, view.dwell());
        return new SpectrumPicture(new SpectrumPicture.Data(
                        caption(
                                run,
                                Optional.of(channel),
                                dwell.map(DwellOrders::dwell),
                                "Hann window, bins of "
                                        + hz(view.spectrum().binHz()) + ", averaged over "
                                        + view.spectrum().segments() + " stretches"),
                        view.spectrum().frequenciesHz(),
                        view.spectrum().values(),
                        channel.unit(),
                        dwell.map(OrderRows::marks).orElse(List.of()),
                        upToHz(dwell, view.usableUpToHz()),
                        AmplitudeScale.DECADES)
                .turning(dwell.map(each -> new ShaftSpeeds(each.dwell().propellerHz(), run.ratio()))));
    }

    /** The samples of a stretch, at least one. */
    static Series part(EvenGrid grid, double fromS, double toS) {
        int size = grid.values().size();
        int from = (int) Math.max(0, Math.min(size - 1.0, Math.ceil((fromS - grid.startS()) * grid.rateHz())));
        int to = (int) Math.max(from + 1.0, Math.min(size, (toS - grid.startS()) * grid.rateHz()));
        if (from == 0 && to == size) {
            return grid.values();
        }
        // Single precision is plenty for a picture, and half the memory of an hour's dwell.
        SeriesBuilder builder = new SeriesBuilder();
        float[] block = new float[4096];
        for (int start = from; start < to; start += block.length) {
            int length = Math.min(block.length, to - start);
            for (int i = 0; i < length; i++) {
                block[i] = (float) grid.values().at(start + i);
            }
            builder.append(block, 0, length);
        }
        return builder.build(1);
    }

    private WaterfallPicture waterfall(ChannelOrders channel, Optional<DwellOrders> dwell, EvenGrid grid) {
        double upTo = upToHz(dwell, usableUpToHz(recording, grid));
        Waterfall fall = Waterfall.of(grid.values(), grid.rateHz(), upTo, WATERFALL_SLICES, WATERFALL_BINS);
        List<OrderMark> marks = dwell.map(OrderRows::marks).orElse(List.of());
        double[] times = new double[SPEED_STEPS];
        double[] speeds = new double[SPEED_STEPS];
        double from = run.speed().track().fromS();
        double to = run.speed().track().toS();
        for (int i = 0; i < SPEED_STEPS; i++) {
            times[i] = from + i * (to - from) / (SPEED_STEPS - 1);
            speeds[i] = run.speed().track().propellerHzAt(times[i]);
        }
        double step = fall.slices() > 1
                ? fall.timeS(1) - fall.timeS(0)
                : recording.time().durationS();
        return new WaterfallPicture(new WaterfallPicture.Data(
                caption(run, Optional.of(channel), Optional.empty(), "bins of " + hz(fall.frequencyHz(1))),
                grid.startS() + fall.timeS(0),
                step,
                fall.slices(),
                fall.frequencyHz(1),
                fall.bins(),
                levelsDb(fall),
                levelTitle(channel.unit()),
                marks,
                Series.of(times),
                Series.of(speeds),
                upTo));
    }

    /** Levels of a waterfall, slice after slice. */
    static Series levelsDb(Waterfall fall) {
        double[] db = new double[fall.slices() * fall.bins()];
        for (int slice = 0; slice < fall.slices(); slice++) {
            for (int bin = 0; bin < fall.bins(); bin++) {
                db[slice * fall.bins() + bin] = 20 * Math.log10(Math.max(LEAST_LEVEL, fall.amplitude(slice, bin)));
            }
        }
        return Series.of(db);
    }

    /** What the levels of a waterfall are. */
    static String levelTitle(SignalUnit unit) {
        return "level (dB re 1 " + unit.display() + " peak)";
    }

    private static String hz(double hz) {
        return FigureFormat.fixed(hz, 2) + " Hz";
    }

    static double usableUpToHz(Recording recording, EvenGrid grid) {
        return Math.min(recording.usableUpToHz(), Recording.USABLE_SHARE_OF_RATE * grid.rateHz());
    }

    /** Up to a little above the orders, or the highest frequency there is. */
    static double upToHz(Optional<DwellOrders> dwell, double highest) {
        double orders = dwell.map(OrderRows::upToHz).orElse(highest);
        // Steady lines that no order explains are shown too, as far as they matter.
        double others = dwell.stream()
                .flatMap(each -> each.unexplained().stream())
                .sorted(Comparator.comparingDouble(line -> -line.amplitude()))
                .limit(3)
                .mapToDouble(line -> 1.05 * line.frequencyHz())
                .max()
                .orElse(0);
        return Math.min(highest, Math.max(orders, others));
    }

    /** Two degrees a point: finer than the narrowest push of a blade, coarse enough to average few turns. */
    private static final int POINTS_PER_TURN = 180;

    /**
     * One channel over one dwell.
     *
     * @param channel place of the channel among the analysed ones, from 0
     * @return empty where no speed was confirmed, or too few whole turns were held
     */
    static Optional<Picture> turn(AnalysedRecording analysed, int channel, Dwell dwell) {
        return meanTurn(analysed, channel, dwell).map(turn -> picture(analysed.orders(), channel, dwell, turn));
    }

    private static Picture picture(RunOrders run, int channel, Dwell dwell, AngleAverage turn) {
        ChannelOrders shown = run.channels().get(channel);
        boolean fromMark = run.speed().origin() == SpeedResult.Origin.MARK;
        List<String> parts = new ArrayList<>(
                Caption.ofRun(run, Optional.of(shown), Optional.of(dwell)).parts());
        parts.add("mean of " + turn.turns() + " turns");
        parts.add(fromMark ? "angle from the mark" : "no mark: where 0° is differs from run to run");
        return new AnglePicture(
                new Caption(parts),
                run.installation().propeller().blades(),
                fromMark,
                shown.unit(),
                Optional.empty(),
                new Revolution("mean turn", turn.mean(), turn.standardError()));
    }

    /**
     * One mean turn of a channel over one dwell of a run whose speed is confirmed.
     *
     * @param channel place of the channel among the analysed ones, from 0
     */
    static Optional<AngleAverage> meanTurn(AnalysedRecording analysed, int channel, Dwell dwell) {
        Recording recording = analysed.recording();
        SpeedResult speed = analysed.orders().speed();
        return speed.confirmed()
                ? AngleAverage.of(
                        recording.time(),
                        recording.channels().get(channel).values(),
                        speed.track(),
                        dwell.fromS(),
                        dwell.toS(),
                        POINTS_PER_TURN)
                : Optional.empty();
    }
}
