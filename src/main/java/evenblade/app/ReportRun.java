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
import evenblade.speed.Dwell;
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
 * @param unit of the channel to look at first
 * @param spectrum of that channel in the longest dwell
 * @param turn one mean turn of the propeller in that dwell, where there is one
 * @param fromMark whether a turn begins at the mark
 * @param ordersCsv its orders as a table for other programs
 * @param spectrumCsv its spectra likewise
 */
record ReportRun(
        MeasuredRun measured,
        RunPart part,
        SignalUnit unit,
        Curve spectrum,
        Optional<AngleAverage> turn,
        boolean fromMark,
        String ordersCsv,
        String spectrumCsv) {
    private static final int POINTS_PER_TURN = 180;
    private static final int WIDTH_PX = 1000;
    private static final int HEIGHT_PX = 560;
    private static final int LEAST_BARS_HEIGHT_PX = 330;
    private static final int PX_PER_BAR = 26;

    /**
     * Makes it.
     *
     * @param trouble why the answer is not to be trusted; empty where all is well
     * @param all whether speed and waterfall are drawn too, beside spectrum and orders
     */
    static ReportRun of(
            Event event,
            String name,
            RunConditions conditions,
            AnalysedRecording analysed,
            String trouble,
            boolean all) {
        RunOrders orders = analysed.orders();
        List<SpectrumTable.Column> columns = new ArrayList<>();
        for (int i = 0; i < orders.channels().size(); i++) {
            ChannelOrders channel = orders.channels().get(i);
            columns.add(
                    new SpectrumTable.Column(channel.channel(), channel.unit(), DrawRecording.spectrum(analysed, i)));
        }
        Spectrum first = columns.get(0).spectrum();
        AnalysedRecording shown = firstChannel(analysed);
        return new ReportRun(
                MeasuredRun.of(name, conditions, orders),
                RunParts.of(event, name, orders, trouble, figures(shown, all)),
                columns.get(0).unit(),
                new Curve(first.frequenciesHz(), first.values()),
                orders.speed().main().flatMap(dwell -> turn(shown, dwell)),
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

    private static Optional<AngleAverage> turn(AnalysedRecording shown, Dwell dwell) {
        Recording recording = shown.recording();
        return AngleAverage.of(
                recording.time(),
                recording.channels().get(0).values(),
                shown.orders().speed().track(),
                dwell.fromS(),
                dwell.toS(),
                POINTS_PER_TURN);
    }

    private static List<Figure> figures(AnalysedRecording shown, boolean all) {
        Map<String, Picture> pictures = DrawRecording.answer(shown);
        List<Figure> figures = new ArrayList<>();
        for (Map.Entry<String, Picture> each : pictures.entrySet()) {
            boolean always = each.getKey().equals("spectrum") || each.getKey().equals("orders");
            if (all || always) {
                int height = each.getKey().equals("orders") ? barsHeight(shown.orders()) : HEIGHT_PX;
                figures.add(Figure.wide(each.getValue().title(), each.getValue().png(WIDTH_PX, height)));
            }
        }
        return figures;
    }

    private static int barsHeight(RunOrders orders) {
        int lines = orders.channels().get(0).dwells().stream()
                .mapToInt(dwell -> dwell.readings().size())
                .max()
                .orElse(0);
        return LEAST_BARS_HEIGHT_PX / 2 + Math.max(LEAST_BARS_HEIGHT_PX / 2, PX_PER_BAR * lines);
    }
}
