package evenblade.app;

import evenblade.chart.Curve;
import evenblade.comparison.RunConditions;
import evenblade.orders.AngleAverage;
import evenblade.recording.Series;
import evenblade.report.Fact;
import evenblade.report.Figure;
import evenblade.report.RunPart;
import evenblade.units.SignalUnit;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The form in which a job's cache keeps what a report needs of a run: one field after the other, texts and
 * lists with their length in front, curves in single precision.
 */
final class KeptReportRun {
    /** To be raised with every change of this form, of the words, of the pictures or of what is measured. */
    static final int FORMAT = 2;

    private KeptReportRun() {}

    /** Writes one thing. */
    private interface Put<T> {
        void into(DataOutputStream out, T thing) throws IOException;
    }

    /** Reads one thing. */
    private interface Get<T> {
        T from(DataInputStream in) throws IOException;
    }

    static byte[] written(ReportRun run) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            putBytes(out, KeptRun.written(run.measured()));
            putPart(out, run.part());
            put(out, run.channels(), KeptReportRun::putView);
            out.writeBoolean(run.fromMark());
            putText(out, run.ordersCsv());
            putText(out, run.spectrumCsv());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** The run again; empty where the bytes aren't in this form. */
    static Optional<ReportRun> read(byte[] bytes, String name, RunConditions conditions) {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            byte[] measured = getBytes(in);
            RunPart part = getPart(in);
            List<ReportRun.View> channels = get(in, KeptReportRun::getView);
            boolean fromMark = in.readBoolean();
            String orders = getText(in);
            String spectrum = getText(in);
            return KeptRun.read(measured, name, conditions)
                    .map(run -> new ReportRun(run, part, channels, fromMark, orders, spectrum));
        } catch (IOException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static void putPart(DataOutputStream out, RunPart part) throws IOException {
        putText(out, part.title());
        putText(out, part.remark());
        putText(out, part.trouble());
        put(out, part.conditions(), KeptReportRun::putFact);
        put(out, part.quality(), KeptReportRun::putFact);
        put(out, part.speed(), KeptReportRun::putText);
        put(out, part.tables(), KeptReportRun::putTable);
        put(out, part.cautions(), KeptReportRun::putText);
        put(out, part.figures(), KeptReportRun::putFigure);
    }

    private static RunPart getPart(DataInputStream in) throws IOException {
        return new RunPart(
                getText(in),
                getText(in),
                getText(in),
                get(in, KeptReportRun::getFact),
                get(in, KeptReportRun::getFact),
                get(in, KeptReportRun::getText),
                get(in, KeptReportRun::getTable),
                get(in, KeptReportRun::getText),
                get(in, KeptReportRun::getFigure));
    }

    private static void putFact(DataOutputStream out, Fact fact) throws IOException {
        putText(out, fact.name());
        putText(out, fact.value());
    }

    private static Fact getFact(DataInputStream in) throws IOException {
        return new Fact(getText(in), getText(in));
    }

    private static void putTable(DataOutputStream out, RunPart.Table table) throws IOException {
        putText(out, table.title());
        putText(out, table.unit());
        out.writeBoolean(table.main());
        put(out, table.rows(), KeptReportRun::putRow);
        put(out, table.sentences(), KeptReportRun::putText);
    }

    private static RunPart.Table getTable(DataInputStream in) throws IOException {
        return new RunPart.Table(
                getText(in),
                getText(in),
                in.readBoolean(),
                get(in, KeptReportRun::getRow),
                get(in, KeptReportRun::getText));
    }

    private static void putRow(DataOutputStream out, RunPart.Row row) throws IOException {
        putText(out, row.name());
        putText(out, row.hz());
        putText(out, row.amplitude());
        putText(out, row.interval());
        putText(out, row.note());
        out.writeBoolean(row.detected());
    }

    private static RunPart.Row getRow(DataInputStream in) throws IOException {
        return new RunPart.Row(getText(in), getText(in), getText(in), getText(in), getText(in), in.readBoolean());
    }

    private static void putFigure(DataOutputStream out, Figure figure) throws IOException {
        putText(out, figure.words());
        putBytes(out, figure.bytes());
    }

    private static Figure getFigure(DataInputStream in) throws IOException {
        return Figure.wide(getText(in), getBytes(in));
    }

    private static void putView(DataOutputStream out, ReportRun.View view) throws IOException {
        putText(out, view.channel());
        putText(out, view.unit().name());
        putSeries(out, view.spectrum().x());
        putSeries(out, view.spectrum().y());
        out.writeInt(view.turn().map(AngleAverage::turns).orElse(0));
        if (view.turn().isPresent()) {
            putSeries(out, view.turn().get().mean());
            putSeries(out, view.turn().get().standardError());
        }
    }

    private static ReportRun.View getView(DataInputStream in) throws IOException {
        String channel = getText(in);
        SignalUnit unit = SignalUnit.valueOf(getText(in));
        Curve spectrum = new Curve(getSeries(in), getSeries(in));
        int turns = in.readInt();
        Optional<AngleAverage> turn =
                turns > 0 ? Optional.of(new AngleAverage(getSeries(in), getSeries(in), turns)) : Optional.empty();
        return new ReportRun.View(channel, unit, spectrum, turn);
    }

    private static void putSeries(DataOutputStream out, Series series) throws IOException {
        out.writeInt(series.size());
        for (int i = 0; i < series.size(); i++) {
            out.writeFloat((float) series.at(i));
        }
    }

    private static Series getSeries(DataInputStream in) throws IOException {
        float[] values = new float[length(in)];
        for (int i = 0; i < values.length; i++) {
            values[i] = in.readFloat();
        }
        return Series.ofFloats(values, values.length);
    }

    private static void putText(DataOutputStream out, String text) throws IOException {
        putBytes(out, text.getBytes(StandardCharsets.UTF_8));
    }

    private static String getText(DataInputStream in) throws IOException {
        return new String(getBytes(in), StandardCharsets.UTF_8);
    }

    private static void putBytes(DataOutputStream out, byte[] bytes) throws IOException {
        out.writeInt(bytes.length);
        out.write(bytes);
    }

    private static byte[] getBytes(DataInputStream in) throws IOException {
        byte[] bytes = new byte[length(in)];
        in.readFully(bytes);
        return bytes;
    }

    private static <T> void put(DataOutputStream out, List<T> things, Put<T> put) throws IOException {
        out.writeInt(things.size());
        for (T thing : things) {
            put.into(out, thing);
        }
    }

    private static <T> List<T> get(DataInputStream in, Get<T> get) throws IOException {
        int size = length(in);
        List<T> things = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            things.add(get.from(in));
        }
        return things;
    }

    private static int length(DataInputStream in) throws IOException {
        int length = in.readInt();
        if (length < 0 || length > in.available()) {
            throw new IOException("a length of " + length);
        }
        return length;
    }
}
