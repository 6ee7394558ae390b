package evenblade.app;

import evenblade.comparison.MeasuredRun;
import evenblade.export.OrdersTable;
import evenblade.export.SpectrumTable;
import evenblade.report.RunPart;

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
