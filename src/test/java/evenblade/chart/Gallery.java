package evenblade.chart;

import evenblade.units.SignalUnit;
import java.util.LinkedHashMap;
import java.util.Map;

/** One of every picture, drawn from invented data. */
final class Gallery {
    private Gallery() {}

    static Map<String, Picture> all() {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        InventedRun usual = InventedRun.usual();
        pictures.put("spectrum", spectrum(usual, AmplitudeScale.DECADES));
        pictures.put("spectrum-linear", spectrum(usual, AmplitudeScale.LINEAR));
        pictures.put("spectrum-coinciding", spectrum(InventedRun.coinciding(), AmplitudeScale.DECADES));
        pictures.put("spectrum-crowded", spectrum(InventedRun.crowded(), AmplitudeScale.DECADES));
        pictures.put("order-bars", bars(usual));
        pictures.put("order-bars-coinciding", bars(InventedRun.coinciding()));
        pictures.put("order-bars-crowded", bars(InventedRun.crowded()));
        pictures.put(
                "speed",
                new SpeedPicture(new SpeedPicture.Data(
                        InventedRun.CAPTION, usual.trackTimeS(), usual.trackHz(), 2.43, usual.dwells())));
        pictures.put("waterfall", new WaterfallPicture(usual.waterfall()));
        return pictures;
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
