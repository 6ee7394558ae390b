package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Series;
import evenblade.measure.orders.Level;
import evenblade.tell.chart.PlottedEstimate.PlacedEstimate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One of every picture, drawn from invented data; a second of a kind has {@code --} in its name. */
final class Gallery {
    private Gallery() {}

    static Map<String, Picture> all() {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        InventedRun usual = InventedRun.usual();
        pictures.put("spectrum", spectrum(usual, AmplitudeScale.DECADES));
        pictures.put("spectrum--linear", spectrum(usual, AmplitudeScale.LINEAR));
        pictures.put("spectrum--coinciding", spectrum(InventedRun.coinciding(), AmplitudeScale.DECADES));
        pictures.put("spectrum--crowded", spectrum(InventedRun.crowded(), AmplitudeScale.DECADES));
        pictures.put("order-bars", bars(usual));
        pictures.put("order-bars--coinciding", bars(InventedRun.coinciding()));
        pictures.put("order-bars--crowded", bars(InventedRun.crowded()));
        pictures.put(
                "speed",
                new SpeedPicture(new SpeedPicture.Data(
                        InventedRun.CAPTION, usual.trackTimeS(), usual.trackHz(), 2.43, usual.dwells())));
        pictures.put("waterfall", new WaterfallPicture(usual.waterfall()));
        pictures.put("spectra-before-after", spectra(usual));
        pictures.put("bars-before-after", beforeAfter(usual));
        pictures.put("trend", trend(6));
        pictures.put("trend--long", trend(40));
        pictures.put("amplitude-against-rpm", againstRpm());
        pictures.put("angle", angle());
        pictures.put("swell", swell());
        StaticGallery.addTo(pictures);
        return pictures;
    }

    private static final Caption TWO_RUNS = Caption.of(
            "invented-run-2.wav against invented-run-3.wav",
            "channel 1",
            "engine 4800 rpm, propeller 1975 rpm",
            "speed confirmed by the signal in both");

    /** Two sines of 1 and 0.4 that lie 3 Hz apart, as their level over 80 ms would be. */
    static EnvelopePicture swell() {
        double[] time = new double[2000];
        double[] level = new double[2000];
        for (int i = 0; i < 2000; i++) {
            time[i] = 12 + 0.005 * i;
            level[i] = Math.sqrt(1 + 0.16 + 0.8 * Math.cos(2 * Math.PI * 3 * time[i]));
        }
        return new EnvelopePicture(InventedRun.CAPTION, "m/s²", Series.of(time), Series.of(level));
    }

    static SpectrumPicture spectra(InventedRun run) {
        return new SpectrumPicture(new SpectrumPicture.Data(
                TWO_RUNS,
                List.of(
                        new SpectrumCurve(
                                "after: invented-run-3",
                                new Curve(run.spectrumHz(), run.spectrum(0.55)),
                                SpectrumCurve.Role.AFTER),
                        new SpectrumCurve(
                                "before: invented-run-2",
                                new Curve(run.spectrumHz(), run.spectrum(1)),
                                SpectrumCurve.Role.BEFORE)),
                SignalUnit.METRE_PER_SECOND_SQUARED,
                OrderRows.lines(run.orders()),
                Optional.empty(),
                OrderRows.upToHz(run.orders()),
                AmplitudeScale.LINEAR));
    }

    static BeforeAfterBarsPicture beforeAfter(InventedRun run) {
        List<BeforeAfterBarsPicture.Row> rows = OrderRows.bars(run.orders()).stream()
                .filter(b -> b.level() instanceof Level.Measured)
                .map(b -> {
                    Level.Measured m = (Level.Measured) b.level();
                    return new BeforeAfterBarsPicture.Row(
                            b.name(),
                            b.kind(),
                            new PlottedEstimate(m.amplitude(), m.ciLow(), m.ciHigh(), m.detected()),
                            new PlottedEstimate(0.6 * m.amplitude(), 0.6 * m.ciLow(), 0.6 * m.ciHigh(), m.detected()),
                            m.detected() ? "lower, −40 % (−46 to −33)" : "no change shown");
                })
                .toList();
        return new BeforeAfterBarsPicture(new BeforeAfterBarsPicture.Data(
                TWO_RUNS,
                "invented-run-2",
                "invented-run-3",
                List.of(
                        new BeforeAfterBarsPicture.Strip("acceleration, peak (m/s²)", rows),
                        new BeforeAfterBarsPicture.Strip(
                                "ratio (no unit)",
                                List.of(new BeforeAfterBarsPicture.Row(
                                        "unevenness",
                                        MarkKind.PROPELLER,
                                        new PlottedEstimate(3.2, 3.1, 3.3, true),
                                        new PlottedEstimate(0.4, 0.38, 0.42, true),
                                        "lower, −88 % (−89 to −86)"))))));
    }

    static TrendPicture trend(int runs) {
        List<String> names = new ArrayList<>();
        List<Optional<PlottedEstimate>> once = new ArrayList<>();
        List<Optional<PlottedEstimate>> bladePass = new ArrayList<>();
        List<Optional<PlottedEstimate>> uneven = new ArrayList<>();
        for (int i = 0; i < runs; i++) {
            names.add("run " + (i + 1));
            double a = 1.4 * Math.exp(-2.0 * i / runs);
            once.add(Optional.of(new PlottedEstimate(a, 0.9 * a, 1.1 * a, true)));
            bladePass.add(i == 2 ? Optional.empty() : Optional.of(new PlottedEstimate(0.7, 0.66, 0.74, true)));
            uneven.add(Optional.of(new PlottedEstimate(a / 0.7, 0.88 * a / 0.7, 1.12 * a / 0.7, i % 5 != 4)));
        }
        return new TrendPicture(
                Caption.of(
                        "invented job",
                        "channel 1",
                        "engine 4800 rpm, propeller 1975 rpm",
                        "speed confirmed in all runs"),
                names,
                List.of(
                        new TrendPicture.Band(
                                "peak (m/s²)",
                                List.of(
                                        new TrendPicture.Line("propeller 1×", once),
                                        new TrendPicture.Line("blade pass", bladePass))),
                        new TrendPicture.Band(
                                "unevenness (ratio)", List.of(new TrendPicture.Line("unevenness", uneven)))),
                List.of(
                        new TrendPicture.Correction(1, "hub and blade roots cleaned and reseated"),
                        new TrendPicture.Correction(3, "blades B and C changed over"),
                        new TrendPicture.Correction(5, "12 g at hub bolt 4")));
    }

    static AmplitudeAgainstRpmPicture againstRpm() {
        List<PlacedEstimate> once = new ArrayList<>();
        List<PlacedEstimate> bladePass = new ArrayList<>();
        for (int rpm = 2400; rpm <= 5400; rpm += 300) {
            double a = 0.9 / Math.hypot(1 - Math.pow(rpm / 3900.0, 2), 0.25 * rpm / 3900.0) * Math.pow(rpm / 5000.0, 2);
            once.add(new PlacedEstimate(rpm, new PlottedEstimate(a, 0.92 * a, 1.08 * a, true)));
            double b = 0.6 * Math.pow(rpm / 5000.0, 2);
            bladePass.add(new PlacedEstimate(rpm, new PlottedEstimate(b, 0.8 * b, 1.2 * b, rpm > 2700)));
        }
        return new AmplitudeAgainstRpmPicture(
                Caption.of(
                        "invented-run-5.wav",
                        "channel 1",
                        "11 dwells, engine 2400 to 5400 rpm",
                        "speed confirmed by the signal"),
                SignalUnit.METRE_PER_SECOND_SQUARED,
                List.of(
                        new AmplitudeAgainstRpmPicture.Line("propeller 1×", once),
                        new AmplitudeAgainstRpmPicture.Line("blade pass", bladePass)));
    }

    static AnglePicture angle() {
        return new AnglePicture(
                TWO_RUNS,
                3,
                true,
                SignalUnit.METRE_PER_SECOND_SQUARED,
                Optional.of(revolution("invented-run-2", 0.8)),
                revolution("invented-run-3", 0.2));
    }

    private static AnglePicture.Revolution revolution(String name, double uneven) {
        double[] mean = new double[240];
        double[] error = new double[240];
        for (int i = 0; i < 240; i++) {
            double angle = 2 * Math.PI * i / 240;
            mean[i] = uneven * Math.cos(angle - 0.7) + 0.7 * Math.cos(3 * angle) + 0.2 * Math.cos(6 * angle + 1);
            error[i] = 0.06 + 0.02 * Math.cos(angle);
        }
        return new AnglePicture.Revolution(name, Series.of(mean), Series.of(error));
    }

    static SpectrumPicture spectrum(InventedRun run, AmplitudeScale scale) {
        return new SpectrumPicture(new SpectrumPicture.Data(
                InventedRun.CAPTION,
                run.spectrumHz(),
                run.spectrum(1),
                SignalUnit.METRE_PER_SECOND_SQUARED,
                OrderRows.marks(run.orders()),
                OrderRows.upToHz(run.orders()),
                scale));
    }

    static OrderBarsPicture bars(InventedRun run) {
        return new OrderBarsPicture(new OrderBarsPicture.Data(
                InventedRun.CAPTION, SignalUnit.METRE_PER_SECOND_SQUARED, OrderRows.bars(run.orders())));
    }
}
