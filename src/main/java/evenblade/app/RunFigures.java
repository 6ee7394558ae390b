package evenblade.app;

import evenblade.chart.Picture;
import evenblade.orders.RunOrders;
import evenblade.report.Figure;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;

/** The pictures that a report shows of one run, and the form in which a job's cache keeps them. */
final class RunFigures {
    /** To be raised with every change of this form or of a picture. */
    static final int FORMAT = 3;

    private static final int WIDTH_PX = 1000;
    private static final int HEIGHT_PX = 560;
    private static final int SMALL_WIDTH_PX = 860;
    private static final int SMALL_HEIGHT_PX = 440;
    private static final int LEAST_BARS_HEIGHT_PX = 330;
    private static final int PX_PER_BAR = 26;

    private RunFigures() {}

    /** All pictures of the first channel, for the newest run. */
    static List<Figure> all(AnalysedRecording analysed) {
        AnalysedRecording shown = firstChannel(analysed);
        // One turn is drawn of the whole job: the newest run against the first.
        return DrawRecording.answer(shown).entrySet().parallelStream()
                .filter(each -> !each.getKey().equals("turn"))
                .map(each -> drawn(
                        each.getValue(),
                        WIDTH_PX,
                        each.getKey().equals("orders") ? barsHeight(shown.orders()) : HEIGHT_PX))
                .toList();
    }

    /** Only the spectrum, for an older run whose table says the rest. */
    static List<Figure> spectrum(AnalysedRun run) {
        return run.views().stream()
                .limit(1)
                .map(view -> drawn(DrawRecording.spectrum(run.orders(), view), SMALL_WIDTH_PX, SMALL_HEIGHT_PX))
                .toList();
    }

    private static Figure drawn(Picture picture, int widthPx, int heightPx) {
        return Figure.wide(picture.title(), picture.png(widthPx, heightPx));
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

    static byte[] written(List<Figure> figures) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            KeptFields.list(out, figures, (to, figure) -> {
                KeptFields.text(to, figure.words());
                KeptFields.bytes(to, figure.bytes());
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** The pictures again; empty where the bytes aren't in this form. */
    static Optional<List<Figure>> read(byte[] bytes) {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            return Optional.of(KeptFields.list(in, from -> Figure.wide(KeptFields.text(from), KeptFields.bytes(from))));
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
