package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.face.app.LookAtRecording.LookedAt;
import evenblade.measure.lines.ChannelSpectrum;
import evenblade.measure.lines.LineOrders;
import evenblade.measure.lines.LineSpectrum;
import evenblade.measure.lines.SteadyLine;

/** The JSON form of a recording's spectrum. */
final class SpectrumJson {
    private SpectrumJson() {}

    static JsonFields of(LookedAt looked) {
        ChannelSpectrum spectrum = looked.spectrum();
        LineSpectrum measured = spectrum.measured();
        return new JsonFields()
                .put("recording", OrdersJson.recording(spectrum.source()))
                .put("channel", spectrum.channel())
                .put("fromS", spectrum.fromS())
                .put("toS", spectrum.toS())
                .put("fromHz", measured.fromHz())
                .put("upToHz", measured.upToHz())
                .put("resolutionHz", measured.resolutionHz())
                .put("noiseBandwidthHz", measured.noiseBandwidthHz())
                .put("window", LineSpectrum.WINDOW)
                .put("averages", measured.averages())
                .put("falseAlarm", LineSpectrum.FALSE_ALARM)
                .put(
                        "lines",
                        measured.lines().stream()
                                .map(line -> line(looked, line))
                                .toList())
                .put("warnings", WarningText.json(spectrum.warnings()));
    }

    private static JsonFields line(LookedAt looked, SteadyLine line) {
        JsonFields fields = new JsonFields()
                .put("frequencyHz", line.frequencyHz())
                .put("amplitude", line.amplitude())
                .put("standardError", line.standardError())
                .put("unit", looked.spectrum().unit().symbol())
                .put("steady", line.steady());
        double binHz = looked.spectrum().measured().resolutionHz();
        looked.dwell().ifPresent(dwell -> fields.put("orders", LineOrders.names(dwell, line, binHz)));
        return fields;
    }
}
