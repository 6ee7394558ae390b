package evenblade.face.app;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Series;
import evenblade.measure.live.LiveReading;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.signal.Spectrum;
import evenblade.tell.chart.AmplitudeScale;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.OrderMark;
import evenblade.tell.chart.OrderRows;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.ShaftSpeeds;
import evenblade.tell.chart.SpectrumPicture;
import evenblade.tell.chart.WaterfallPicture;
import evenblade.tell.document.FigureFormat;
import java.util.List;
import java.util.Optional;

/** Answers what a ground run looks like while it is recorded. */
public final class DrawLive {
    /** Shown where no speed is known. */
    private static final double USUAL_HZ = 400;

    private static final int BINS = 400; // one for each pixel or two of the picture
    private static final double LEAST_LEVEL = 1e-9; // keeps the logarithm of silence finite

    private DrawLive() {}

    /** The spectrum of the latest window with the orders marked; empty before the first. */
    public static Optional<Picture> spectrum(LiveReading reading) {
        if (reading.spectrum().isEmpty()) {
            return Optional.empty();
        }
        Spectrum spectrum = reading.spectrum().get();
        Optional<DwellOrders> dwell = dwell(reading);
        List<OrderMark> marks = dwell.map(OrderRows::marks).orElse(List.of());
        return Optional.of(new SpectrumPicture(new SpectrumPicture.Data(
                        caption(reading),
                        spectrum.frequenciesHz(),
                        spectrum.values(),
                        reading.channels().stream()
                                .findFirst()
                                .map(ChannelOrders::unit)
                                .orElse(SignalUnit.FULL_SCALE),
                        marks,
                        Math.min(
                                dwell.map(OrderRows::upToHz).orElse(USUAL_HZ),
                                spectrum.frequenciesHz()
                                        .at(spectrum.frequenciesHz().size() - 1)),
                        AmplitudeScale.DECADES)
                .turning(turning(reading))));
    }

    /** One line of the waterfall: levels in decibels, evenly spaced up to 400 Hz. */
    public static Optional<Series> line(LiveReading reading) {
        return reading.spectrum().map(spectrum -> {
            double[] db = new double[BINS];
            double step = USUAL_HZ / BINS;
            int bin = 0;
            for (int i = 0; i < db.length; i++) {
                double most = LEAST_LEVEL;
                while (bin < spectrum.values().size()
                        && spectrum.frequenciesHz().at(bin) < (i + 1) * step) {
                    most = Math.max(most, spectrum.values().at(bin));
                    bin++;
                }
                db[i] = 20 * Math.log10(most);
            }
            return Series.of(db);
        });
    }

    /**
     * The waterfall since the start.
     *
     * @param lines at least one, a hop apart
     * @param latest the reading of the last of them
     */
    public static Picture fall(List<Series> lines, LiveReading latest) {
        double[] db = new double[lines.size() * BINS];
        for (int i = 0; i < lines.size(); i++) {
            for (int bin = 0; bin < BINS; bin++) {
                db[i * BINS + bin] = lines.get(i).at(bin);
            }
        }
        double fromS = latest.toS() - lines.size();
        double hz = latest.propellerRpm().orElse(0.0) / 60;
        List<OrderMark> marks = latest.propellerRpm().isEmpty()
                ? List.of()
                : dwell(latest).map(OrderRows::marks).orElse(List.of());
        return new WaterfallPicture(new WaterfallPicture.Data(
                caption(latest),
                fromS,
                1,
                lines.size(),
                USUAL_HZ / BINS,
                BINS,
                Series.of(db),
                "level (dB re full scale)",
                marks,
                Series.of(new double[] {latest.fromS(), latest.toS()}),
                Series.of(new double[] {hz, hz}),
                USUAL_HZ));
    }

    private static Optional<ShaftSpeeds> turning(LiveReading reading) {
        return reading.engineRpm()
                .flatMap(engine -> reading.propellerRpm().map(rpm -> new ShaftSpeeds(rpm / 60, engine / rpm)));
    }

    private static Optional<DwellOrders> dwell(LiveReading reading) {
        return reading.channels().stream()
                .limit(1)
                .flatMap(channel -> channel.dwells().stream())
                .reduce((one, later) -> later);
    }

    private static Caption caption(LiveReading reading) {
        String speed = reading.engineRpm().map(Caption::rpm).orElse("speed not found yet");
        return Caption.of("recording, last " + FigureFormat.fixed(reading.toS() - reading.fromS(), 0) + " s", speed);
    }
}
