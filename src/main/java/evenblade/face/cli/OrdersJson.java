package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Source;
import evenblade.input.recording.StampQuality;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.orders.UnexplainedLine;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The JSON form of a recording's orders. */
final class OrdersJson {
    private final RunOrders run;

    private OrdersJson(RunOrders run) {
        this.run = run;
    }

    static JsonFields of(RunOrders run) {
        OrdersJson json = new OrdersJson(run);
        ChannelOrders first = run.channels().get(0);
        return new JsonFields()
                .put("recording", recording(run.source()))
                .put("channel", first.channel())
                .put("speed", json.speed())
                .put("dwells", json.dwells(first))
                .put(
                        "channels",
                        run.channels().stream()
                                .map(channel -> new JsonFields()
                                        .put("channel", channel.channel())
                                        .put("unit", channel.unit().symbol())
                                        .put("dwells", json.dwells(channel)))
                                .toList())
                .put("quality", run.quality().stream().map(OrdersJson::quality).toList())
                .put("stamps", run.stamps().map(OrdersJson::stamps))
                .put("warnings", WarningText.json(run.warnings()));
    }

    private static JsonFields recording(Source source) {
        return new JsonFields()
                .put("file", source.file().toString())
                .put("sha256", source.sha256())
                .put("kind", source.kind())
                .put("lossy", source.lossy())
                .put("sampleRateHz", source.sampleRateHz())
                .put("durationS", source.durationS())
                .put("channels", source.channels());
    }

    private JsonFields speed() {
        SpeedResult speed = run.speed();
        Optional<Dwell> main = speed.main();
        return new JsonFields()
                .put("source", main.isPresent() ? Optional.of(speed.origin().word()) : Optional.empty())
                .put("confirmed", speed.confirmed())
                .put("doubt", speed.doubt().map(WarningText::of))
                .put("engineRpm", main.map(dwell -> engineRpm(dwell.propellerHz())))
                .put("propellerRpm", main.map(Dwell::propellerRpm))
                .put("standardErrorEngineRpm", main.flatMap(dwell -> finite(engineRpm(dwell.standardErrorHz()))))
                .put("minEngineRpm", main.map(dwell -> engineRpm(dwell.minHz())))
                .put("maxEngineRpm", main.map(dwell -> engineRpm(dwell.maxHz())))
                .put("ratio", run.ratio());
    }

    private double engineRpm(double propellerHz) {
        return 60 * propellerHz * run.ratio();
    }

    private List<JsonFields> dwells(ChannelOrders channel) {
        return channel.dwells().stream()
                .map(dwell -> dwell(dwell, channel.unit()))
                .toList();
    }

    private JsonFields dwell(DwellOrders measured, SignalUnit unit) {
        Dwell dwell = measured.dwell();
        return new JsonFields()
                .put("fromS", dwell.fromS())
                .put("toS", dwell.toS())
                .put("engineRpm", engineRpm(dwell.propellerHz()))
                .put("propellerRpm", dwell.propellerRpm())
                .put("standardErrorEngineRpm", finite(engineRpm(dwell.standardErrorHz())))
                .put("minEngineRpm", engineRpm(dwell.minHz()))
                .put("maxEngineRpm", engineRpm(dwell.maxHz()))
                .put(
                        "orders",
                        measured.readings().stream()
                                .map(reading -> order(reading, unit))
                                .toList())
                .put("unevenness", measured.unevenness().map(DwellOrders.Unevenness::value))
                .put("unevennessCiLow", measured.unevenness().map(DwellOrders.Unevenness::ciLow))
                .put("unevennessCiHigh", measured.unevenness().flatMap(each -> finite(each.ciHigh())))
                .put(
                        "unexplained",
                        measured.unexplained().stream()
                                .map(line -> unexplained(line, unit))
                                .toList());
    }

    private static JsonFields order(OrderReading reading, SignalUnit unit) {
        Optional<Level.Measured> measured =
                reading.level() instanceof Level.Measured each ? Optional.of(each) : Optional.empty();
        Optional<Level.BeyondRange> beyond =
                reading.level() instanceof Level.BeyondRange each ? Optional.of(each) : Optional.empty();
        return new JsonFields()
                .put("of", reading.line().of().word())
                .put("order", reading.line().order())
                .put("propellerOrder", reading.line().propellerOrder())
                .put("name", reading.line().name())
                .put("frequencyHz", reading.frequencyHz())
                .put("amplitude", measured.map(Level.Measured::amplitude))
                .put("standardError", measured.flatMap(each -> finite(each.standardError())))
                .put("ciLow", measured.map(Level.Measured::ciLow))
                .put("ciHigh", measured.flatMap(each -> finite(each.ciHigh())))
                .put("unit", unit.symbol())
                .put("detector", "peak")
                .put("phaseDeg", measured.map(Level.Measured::phaseDeg))
                .put("detected", reading.detected())
                .put("inseparableFrom", reading.inseparableFrom())
                .put("beyondRange", beyond.isPresent())
                .put("foldsToHz", beyond.map(Level.BeyondRange::foldsToHz).orElse(OptionalDouble.empty()))
                .put("estimator", measured.map(each -> each.estimator().word()));
    }

    private static JsonFields unexplained(UnexplainedLine line, SignalUnit unit) {
        return new JsonFields()
                .put("frequencyHz", line.frequencyHz())
                .put("amplitude", line.amplitude())
                .put("unit", unit.symbol())
                .put("propellerOrder", line.propellerOrder())
                .put("crankOrder", line.crankOrder())
                .put("followsSpeed", line.followsSpeed());
    }

    private static JsonFields quality(ChannelQuality quality) {
        return new JsonFields()
                .put("channel", quality.channel())
                .put("clippedShare", quality.clippedShare())
                .put("longestStuckRun", quality.longestStuckRun())
                .put("peak", quality.peak())
                .put("mean", quality.mean())
                .put("rms", quality.rms());
    }

    private static JsonFields stamps(StampQuality stamps) {
        return new JsonFields()
                .put("medianStepS", stamps.medianStepS())
                .put("jitterShare", stamps.jitterShare())
                .put("gaps", stamps.gaps())
                .put("lostS", stamps.lostS())
                .put("unsorted", stamps.unsorted())
                .put("doubled", stamps.doubled());
    }

    /** Nothing where a number has no end, as the error of too short a dwell. */
    private static Optional<Double> finite(double number) {
        return Double.isFinite(number) ? Optional.of(number) : Optional.empty();
    }
}
