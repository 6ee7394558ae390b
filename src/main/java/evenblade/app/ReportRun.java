package evenblade.app;

import evenblade.chart.Curve;
import evenblade.chart.Picture;
import evenblade.comparison.MeasuredRun;
import evenblade.comparison.RunConditions;
import evenblade.export.OrdersTable;
import evenblade.export.SpectrumTable;
import evenblade.job.Event;
import evenblade.orders.AngleAverage;
import evenblade.orders.ChannelOrders;
import evenblade.orders.RunOrders;
import evenblade.recording.Recording;
import evenblade.report.Figure;
import evenblade.report.RunPart;
import evenblade.report.RunParts;
import evenblade.signal.Spectrum;
import evenblade.speed.SpeedResult;
import evenblade.units.SignalUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a report needs of one analysed run; the recording itself isn't kept.
 *
 * @param measured its amplitudes
 * @param part the run in words and pictures
 * @param channels what is drawn against another run, the channel to look at first comes first
 * @param fromMark whether a turn begins at the mark
 * @param ordersCsv its orders as a table for other programs
 * @param spectrumCsv its spectra likewise
 */
record ReportRun(
        MeasuredRun measured,
        RunPart part,
        List<View> channels,
        boolean fromMark,
        String ordersCsv,
        String spectrumCsv) {
    private static final int POINTS_PER_TURN = 180;
    private static final int WIDTH_PX = 1000;
    private static final int HEIGHT_PX = 560;
    private static final int SMALL_WIDTH_PX = 860;
    private static final int SMALL_HEIGHT_PX = 440;
    private static final int LEAST_BARS_HEIGHT_PX = 330;
    private static final int PX_PER_BAR = 26;

    /**
     * One channel in the longest dwell.
     *
     * @param channel its name
     * @param unit of its amplitudes
     * @param spectrum over frequency
     * @param turn one mean turn of the propeller, where there is one
     */
    record View(String channel, SignalUnit unit, Curve spectrum, Optional<AngleAverage> turn) {}

    /** The view of a channel. */
    Optional<View> view(String channel) {
        return channels.stream().filter(view -> view.channel().equals(channel)).findFirst();
    }

    /**
     * Makes it.
     *
     * @param trouble why the answer is not to be trusted; empty where all is well
     * @param all whether all pictures are drawn, or only the spectrum
     * @param turning whether one turn of the propeller is worked out
     */
    static ReportRun of(
            Event event,
            String name,
            RunConditions conditions,
            AnalysedRecording analysed,
            String trouble,
            boolean all,
            boolean turning) {
        RunOrders orders = analysed.orders();
        List<SpectrumTable.Column> columns = new ArrayList<>();
        List<View> views = new ArrayList<>();
        for (int i = 0; i < orders.channels().size(); i++) {
            ChannelOrders channel = orders.channels().get(i);
            Spectrum spectrum = DrawRecording.spectrum(analysed, i);
            columns.add(new SpectrumTable.Column(channel.channel(), channel.unit(), spectrum));
            views.add(new View(
                    channel.channel(),
                    channel.unit(),
                    new Curve(spectrum.frequenciesHz(), spectrum.values()),
                    turning ? turn(analysed, i) : Optional.empty()));
        }
        return new ReportRun(
                MeasuredRun.of(name, conditions, orders),
                RunParts.of(event, name, orders, trouble, figures(firstChannel(analysed), all)),
                views,
                orders.speed().origin() == SpeedResult.Origin.MARK,
                OrdersTable.csv(orders.channels(), orders.ratio()),
                SpectrumTable.csv(columns));
    }

    private static AnalysedRecording firstChannel(AnalysedRecording analysed) {
        RunOrders orders = analysed.orders();
        return new AnalysedRecording(
                new RunOrders(
                        orders.source(),
                        orders.installation(),
                        orders.speed(),
                        orders.channels().subList(0, 1),
                        orders.quality(),
                        orders.stamps(),
                        orders.warnings()),
                ChosenChannels.only(analysed.recording(), List.of(0)));
    }

    private static Optional<AngleAverage> turn(AnalysedRecording analysed, int channel) {
        Recording recording = analysed.recording();
        SpeedResult speed = analysed.orders().speed();
        return speed.main()
                .filter(dwell -> speed.confirmed())
                .flatMap(dwell -> AngleAverage.of(
                        recording.time(),
                        recording.channels().get(channel).values(),
                        speed.track(),
                        dwell.fromS(),
                        dwell.toS(),
                        POINTS_PER_TURN));
    }

    /** All pictures of the newest run; of an older one only the spectrum, for its table says the rest. */
    private static List<Figure> figures(AnalysedRecording shown, boolean all) {
        Map<String, Picture> pictures = DrawRecording.answer(shown);
        if (!all) {
            Picture spectrum = pictures.get("spectrum");
            return List.of(Figure.wide(spectrum.title(), spectrum.png(SMALL_WIDTH_PX, SMALL_HEIGHT_PX)));
        }
        return pictures.entrySet().stream()
                .map(each -> Figure.wide(
                        each.getValue().title(),
                        each.getValue()
                                .png(
                                        WIDTH_PX,
                                        each.getKey().equals("orders") ? barsHeight(shown.orders()) : HEIGHT_PX)))
                .toList();
    }

    private static int barsHeight(RunOrders orders) {
        int lines = orders.channels().get(0).dwells().stream()
                .mapToInt(dwell -> dwell.readings().size())
                .max()
                .orElse(0);
        return LEAST_BARS_HEIGHT_PX / 2 + Math.max(LEAST_BARS_HEIGHT_PX / 2, PX_PER_BAR * lines);
    }
}
