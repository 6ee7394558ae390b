package evenblade.app;

import evenblade.chart.Curve;
import evenblade.chart.Picture;
import evenblade.comparison.MeasuredRun;
import evenblade.comparison.RunComparison;
import evenblade.orders.ChannelOrders;
import evenblade.orders.DwellOrders;
import evenblade.orders.RunOrders;
import evenblade.report.ComparisonPictures;
import evenblade.signal.Spectrum;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Answers what two compared runs look like beside each other. */
public final class DrawComparison {
    private DrawComparison() {}

    /**
     * The pictures by name: {@code orders} before and after with intervals, {@code spectra} laid over each
     * other where the longest dwells are of one speed and one channel. None where the runs can't be compared.
     *
     * @param progress what it throws ends the work
     * @throws evenblade.problem.BadInput where a recording can't be used
     */
    public static Map<String, Picture> answer(Path job, CompareRuns.Answer compared, Progress progress) {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        RunComparison outcome = compared.comparison();
        ComparisonPictures.bars(outcome).ifPresent(picture -> pictures.put("orders", picture));
        if (outcome.comparable()) {
            AnalysedRecording before = AnalyseRun.answer(job, compared.before().id(), half(progress, 0));
            AnalysedRecording after = AnalyseRun.answer(job, compared.after().id(), half(progress, 0.5));
            spectra(outcome, before, after).ifPresent(picture -> pictures.put("spectra", picture));
        }
        return pictures;
    }

    private static Progress half(Progress progress, double from) {
        return (share, doing) -> progress.at(from + share / 2, doing);
    }

    private static Optional<Picture> spectra(RunComparison outcome, AnalysedRecording one, AnalysedRecording other) {
        String channel = outcome.channels().get(0).channel();
        int before = index(one.orders(), channel);
        int after = index(other.orders(), channel);
        if (before < 0 || after < 0) {
            return Optional.empty();
        }
        ChannelOrders first = one.orders().channels().get(before);
        ChannelOrders second = other.orders().channels().get(after);
        Optional<DwellOrders> from = main(one.orders(), first);
        Optional<DwellOrders> to = main(other.orders(), second);
        boolean alike = from.isPresent()
                && to.isPresent()
                && first.unit() == second.unit()
                && MeasuredRun.sameSpeed(
                        from.get().dwell().propellerHz(), to.get().dwell().propellerHz());
        return alike
                ? Optional.of(ComparisonPictures.spectra(
                        outcome,
                        curve(one, before),
                        curve(other, after),
                        second.unit(),
                        to.get(),
                        other.orders().ratio()))
                : Optional.empty();
    }

    private static Curve curve(AnalysedRecording run, int channel) {
        Spectrum spectrum = DrawRecording.spectrum(run, channel);
        return new Curve(spectrum.frequenciesHz(), spectrum.values());
    }

    private static int index(RunOrders run, String channel) {
        for (int i = 0; i < run.channels().size(); i++) {
            if (run.channels().get(i).channel().equals(channel)) {
                return i;
            }
        }
        return -1;
    }

    private static Optional<DwellOrders> main(RunOrders run, ChannelOrders channel) {
        return channel.dwells().stream()
                .filter(dwell ->
                        run.speed().main().filter(dwell.dwell()::equals).isPresent())
                .findFirst();
    }
}
