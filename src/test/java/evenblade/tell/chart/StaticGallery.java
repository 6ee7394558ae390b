package evenblade.tell.chart;

import evenblade.base.units.Length;
import evenblade.input.recording.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The pictures of static checks and what they have to do with the shaking, from invented data. */
final class StaticGallery {
    private static final Caption CHECK = Caption.of("invented job", "tracking 2", "standing still: no speed");
    private static final Caption TIE = Caption.of(
            "invented job, 5 runs", "channel 1", "engine 4800 rpm, propeller 1975 rpm", "speed confirmed in all runs");

    private StaticGallery() {}

    static void addTo(Map<String, Picture> pictures) {
        pictures.put("tip-marks", tips(3));
        pictures.put("tip-marks--six", tips(6));
        pictures.put("deviation", deviation());
        pictures.put("track-tie", tie());
        pictures.put("polar", polar());
        pictures.put("balance-vectors", vectors());
        pictures.put("hub-weights", hub());
    }

    /** The second case of the balancing tests: 0.25 at 40°, 0.5 at 150° with the trial weight on. */
    static BalanceVectorsPicture vectors() {
        return new BalanceVectorsPicture(
                TIE,
                "m/s²",
                List.of(
                        new BalanceVectorsPicture.Run(
                                "without weights", BalanceVectorsPicture.Role.WITHOUT_WEIGHTS, 0.25, 40),
                        new BalanceVectorsPicture.Run("trial", BalanceVectorsPicture.Role.WITH_WEIGHTS, 0.5, 150),
                        new BalanceVectorsPicture.Run("check", BalanceVectorsPicture.Role.CHECK, 0.03, 200)),
                Optional.of(new BalanceVectorsPicture.Correction(0.25, 220, 0.01, 90, 0.06)));
    }

    static HubWeightsPicture hub() {
        List<HubWeightsPicture.Spot> places = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            places.add(new HubWeightsPicture.Spot(String.valueOf(i + 1), 60 * i));
        }
        return new HubWeightsPicture(
                TIE,
                true,
                true,
                false,
                List.of(
                        new HubWeightsPicture.Spot("position 1", 0),
                        new HubWeightsPicture.Spot("position 2", -120),
                        new HubWeightsPicture.Spot("position 3", -240)),
                places,
                List.of(
                        new HubWeightsPicture.Weight("10 g at 60 mm, 0°", 0, true),
                        new HubWeightsPicture.Weight("8 g at 60 mm, 60°", 60, false),
                        new HubWeightsPicture.Weight("3 g at 60 mm, 120°", 120, false)));
    }

    static TipMarksPicture tips(int blades) {
        double[] mm = {0, 1.6, 4.8, 0.8, 2.4, 3.2};
        List<TipMarksPicture.Tip> tips = new ArrayList<>();
        for (int i = 0; i < blades; i++) {
            tips.add(new TipMarksPicture.Tip(
                    String.valueOf((char) ('A' + i)), String.valueOf(i + 1), Length.ofMillimetres(mm[i])));
        }
        return new TipMarksPicture(
                new TipMarksPicture.Data(CHECK, tips, Length.ofMillimetres(0.4), Optional.of(Length.ofInches(0.125))));
    }

    static DeviationPicture deviation() {
        return new DeviationPicture(
                Caption.of("invented job", "2 tracking sessions", "standing still: no speed"),
                "deviation of the tip from the mean (mm)",
                List.of(row("blade A", -1.3, 0.6), row("blade B", -1.1, 0.6), row("blade C", 2.4, 0.6)),
                List.of(row("position 1", 0.2, 0.6), row("position 2", -0.3, 0.6), row("position 3", 0.1, 0.6)));
    }

    private static DeviationPicture.Row row(String name, double value, double half) {
        return new DeviationPicture.Row(
                name, new PlottedEstimate(value, value - half, value + half, Math.abs(value) > half));
    }

    static TrackTiePicture tie() {
        double[] track = {3.1, 2.9, 1.8, 0.9, 0.85};
        double[] amplitude = {1.42, 1.30, 0.88, 0.52, 0.50};
        List<TrackTiePicture.Run> runs = new ArrayList<>();
        for (int i = 0; i < track.length; i++) {
            double a = amplitude[i];
            runs.add(new TrackTiePicture.Run(
                    "run " + (i + 1), track[i], new PlottedEstimate(a, 0.93 * a, 1.07 * a, true)));
        }
        Series x = Series.of(0, 1, 2, 3, 4);
        return new TrackTiePicture(
                TIE,
                "size of the track vector (mm)",
                "propeller 1×, peak (m/s²)",
                runs,
                Optional.of(new TrackTiePicture.Fit(
                        new Curve(x, Series.of(0.18, 0.56, 0.95, 1.35, 1.75)),
                        new Curve(x, Series.of(0.05, 0.48, 0.87, 1.22, 1.55)),
                        new Curve(x, Series.of(0.32, 0.64, 1.03, 1.48, 1.95)))));
    }

    static PolarPicture polar() {
        return new PolarPicture(
                TIE,
                "m/s² peak",
                List.of(
                        new PolarPicture.Vector("run 1", 1.42, 205, 0.08),
                        new PolarPicture.Vector("run 2", 1.30, 211, 0.08),
                        new PolarPicture.Vector("run 3", 0.88, 160, 0.07),
                        new PolarPicture.Vector("run 4", 0.52, 20, 0.05),
                        new PolarPicture.Vector("run 5", 0.31, 35, 0.05)));
    }
}
