package evenblade.face.app;

import evenblade.measure.orders.RunOrders;
import evenblade.tell.chart.Picture;
import evenblade.tell.report.ReportFigure;
import java.util.List;

/** The pictures that a report shows of one run. */
final class RunFigures {
    private static final int WIDTH_PX = 1000; // a page's width at some 150 pixels an inch
    private static final int HEIGHT_PX = 560; // about half the width
    private static final int SMALL_WIDTH_PX = 860; // an older run's picture needn't be read as closely
    private static final int SMALL_HEIGHT_PX = 440; // half its width
    private static final int LEAST_BARS_HEIGHT_PX = 330; // room for title, axis and two lines
    private static final int PX_PER_BAR = 26; // a line's name with some air

    private RunFigures() {}

    /** All pictures of the first channel, for the newest run. */
    static List<ReportFigure> all(AnalysedRecording analysed) {
        AnalysedRecording shown = firstChannel(analysed);
        // One turn is drawn of the whole job: the newest run against the first.
        return DrawRecording.draw(shown).entrySet().parallelStream()
                .filter(each -> !each.getKey().equals("turn"))
                .map(each -> drawn(
                        each.getValue(),
                        WIDTH_PX,
                        each.getKey().equals("orders") ? barsHeight(shown.orders()) : HEIGHT_PX))
                .toList();
    }

    /** Only the spectrum, for an older run whose table says the rest. */
    static List<ReportFigure> spectrum(AnalysedRun run) {
        return run.views().stream()
                .limit(1)
                .map(view -> DrawRecording.spectrum(run.orders(), view))
                .map(picture -> ReportFigure.wide(picture.title(), picture.png(SMALL_WIDTH_PX, SMALL_HEIGHT_PX)))
                .toList();
    }

    private static ReportFigure drawn(Picture picture, int widthPx, int heightPx) {
        return ReportFigure.drawn(picture, widthPx, heightPx);
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

    private static int barsHeight(RunOrders orders) {
        int lines = orders.channels().get(0).dwells().stream()
                .mapToInt(dwell -> dwell.readings().size())
                .max()
                .orElse(0);
        return LEAST_BARS_HEIGHT_PX / 2 + Math.max(LEAST_BARS_HEIGHT_PX / 2, PX_PER_BAR * lines);
    }
}
