package evenblade.face.app;

import evenblade.face.app.LookAtRecording.LookedAt;
import evenblade.input.recording.Series;
import evenblade.measure.lines.ChannelSpectrum;
import evenblade.measure.lines.LineOrders;
import evenblade.measure.lines.LineSpectrum;
import evenblade.measure.lines.SteadyLine;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.signal.Waterfall;
import evenblade.tell.chart.AmplitudeScale;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.MarkKind;
import evenblade.tell.chart.OrderMark;
import evenblade.tell.chart.OrderRows;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.ShaftSpeeds;
import evenblade.tell.chart.SpectrumPicture;
import evenblade.tell.chart.WaterfallPicture;
import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Answers what a recording looks like of which no more than its samples are known: spectrum and waterfall. */
public final class DrawSpectrum {
    /** More names don't fit above a spectrum. */
    private static final int MOST_MARKS = 16;

    private final LookedAt looked;
    private final ChannelSpectrum channel;
    private final LineSpectrum measured;

    private DrawSpectrum(LookedAt looked) {
        this.looked = looked;
        this.channel = looked.spectrum();
        this.measured = channel.measured();
    }

    /** The pictures by name (fit for a file), none of them drawn yet. */
    public static Map<String, Picture> draw(LookedAt looked) {
        DrawSpectrum draw = new DrawSpectrum(looked);
        Map<String, Picture> pictures = new LinkedHashMap<>();
        pictures.put("spectrum", draw.spectrum());
        pictures.put("waterfall", draw.waterfall());
        return pictures;
    }

    private SpectrumPicture spectrum() {
        return new SpectrumPicture(new SpectrumPicture.Data(
                        caption("Hann window, bins of " + binHz(measured.resolutionHz()) + ", averaged over "
                                + measured.averages() + " stretches"),
                        measured.spectrum().frequenciesHz(),
                        measured.spectrum().values(),
                        channel.unit(),
                        measured.lines().stream()
                                .limit(MOST_MARKS)
                                .map(this::mark)
                                .toList(),
                        measured.upToHz(),
                        AmplitudeScale.DECADES)
                .turning(looked.dwell()
                        .map(dwell -> new ShaftSpeeds(
                                dwell.dwell().propellerHz(),
                                looked.run().orElseThrow().ratio()))));
    }

    private OrderMark mark(SteadyLine line) {
        List<OrderReading> orders = looked.dwell()
                .map(dwell -> LineOrders.of(dwell, line, measured.resolutionHz()))
                .orElse(List.of());
        String name = orders.isEmpty()
                ? FigureFormat.plain(line.frequencyHz()) + " Hz"
                : looked.dwell().stream()
                        .flatMap(dwell -> LineOrders.names(dwell, line, measured.resolutionHz()).stream())
                        .collect(Collectors.joining(" = "));
        MarkKind unnamed = looked.dwell().isPresent() ? MarkKind.OTHER : MarkKind.STEADY;
        return new OrderMark(
                name,
                orders.isEmpty() ? unnamed : OrderRows.kind(orders),
                orders.isEmpty() ? 0 : orders.get(0).line().propellerOrder(),
                line.frequencyHz(),
                OptionalDouble.of(line.amplitude()),
                FigureFormat.NINETY_FIVE * line.standardError(),
                true);
    }

    private WaterfallPicture waterfall() {
        Waterfall fall = Waterfall.of(
                measured.grid().values(),
                measured.grid().rateHz(),
                measured.upToHz(),
                DrawRecording.WATERFALL_SLICES,
                DrawRecording.WATERFALL_BINS);
        double step = fall.slices() > 1 ? fall.timeS(1) - fall.timeS(0) : channel.toS() - channel.fromS();
        List<OrderMark> marks = looked.dwell().map(OrderRows::marks).orElse(List.of());
        double[] times = new double[marks.isEmpty() ? 0 : DrawRecording.SPEED_STEPS];
        double[] speeds = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = channel.fromS() + i * (channel.toS() - channel.fromS()) / (times.length - 1);
            speeds[i] = looked.run().orElseThrow().speed().track().propellerHzAt(times[i]);
        }
        return new WaterfallPicture(new WaterfallPicture.Data(
                caption("bins of " + binHz(fall.frequencyHz(1))),
                channel.fromS() + fall.timeS(0),
                step,
                fall.slices(),
                fall.frequencyHz(1),
                fall.bins(),
                DrawRecording.levelsDb(fall),
                DrawRecording.levelTitle(channel.unit()),
                marks,
                Series.of(times),
                Series.of(speeds),
                measured.upToHz()));
    }

    private Caption caption(String made) {
        List<String> parts = new ArrayList<>();
        parts.add(String.valueOf(channel.source().file().getFileName()));
        parts.add(Caption.channel(channel.channel()));
        parts.add(FigureFormat.fixed(channel.fromS(), 1) + " to " + FigureFormat.fixed(channel.toS(), 1) + " s");
        Optional<RunOrders> run = looked.run();
        run.ifPresent(each -> {
            looked.dwell()
                    .map(known -> known.dwell())
                    .ifPresent(
                            known -> parts.add(Caption.rpm(each.ratio() * known.propellerRpm(), known.propellerRpm())));
            parts.add(Caption.speedWords(each.speed()));
        });
        parts.add(made);
        return new Caption(parts);
    }

    private static String binHz(double hz) {
        return FigureFormat.fixed(hz, 2) + " Hz";
    }
}
