package evenblade.face.app;

import evenblade.judge.comparison.MeasuredRun;
import evenblade.tell.export.OrdersTable;
import evenblade.tell.export.SpectrumTable;
import evenblade.tell.report.ReportFigure;
import java.util.List;

/**
 * A run as a report needs it.
 *
 * @param measured its amplitudes
 * @param figures pictures of it
 * @param trouble why it isn't to be trusted; empty where all is well
 * @param answer what was analysed
 */
record ReportRun(MeasuredRun measured, List<ReportFigure> figures, String trouble, AnalysedRun answer) {
    ReportRun {
        figures = List.copyOf(figures);
    }

    /** The run as it is drawn against another. */
    DrawPair.Named named() {
        return new DrawPair.Named(measured.name(), answer);
    }

    /** Its orders as a table for other programs. */
    String ordersCsv() {
        return OrdersTable.csv(answer.orders().channels(), answer.orders().ratio());
    }

    /** Its spectra likewise. */
    String spectrumCsv() {
        return SpectrumTable.csv(answer.main().stream()
                .map(view -> new SpectrumTable.Column(view.channel(), view.unit(), view.spectrum()))
                .toList());
    }
}
