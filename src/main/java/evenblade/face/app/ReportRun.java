package evenblade.face.app;

import evenblade.judge.comparison.MeasuredRun;
import evenblade.tell.export.OrdersTable;
import evenblade.tell.export.SpectrumTable;
import evenblade.tell.report.RunPart;

/**
 * A run as a report needs it.
 *
 * @param measured its amplitudes
 * @param part the run in words and pictures
 * @param answer what was analysed
 */
record ReportRun(MeasuredRun measured, RunPart part, AnalysedRun answer) {
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
