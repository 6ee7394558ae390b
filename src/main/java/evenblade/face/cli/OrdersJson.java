package evenblade.face.cli;

import evenblade.base.fact.Fact;
import evenblade.base.json.JsonFields;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Source;
import evenblade.input.recording.StampQuality;
import evenblade.machine.installation.OrderLine;
import evenblade.measure.orders.BladeShares;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.DwellOrders.UnexplainedLine;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.DoubtfulDwell;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** The JSON form of a recording's orders. */
record OrdersJson(RunOrders run) {
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

    static JsonFields recording(Source source) {
        return new JsonFields()
                .put("file", source.file().toString())
                .put("sha256", source.sha256().hex())
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
                .put("otherMachine", speed.otherMachine())
                .put("engineRpm", main.map(dwell -> engineRpm(dwell.propellerHz())))
                .put("propellerRpm", main.map(Dwell::propellerRpm))
                .put("standardErrorEngineRpm", main.flatMap(dwell -> finite(engineRpm(run.standardErrorHz(dwell)))))
                .put("minEngineRpm", main.map(dwell -> engineRpm(dwell.minHz())))
                .put("maxEngineRpm", main.map(dwell -> engineRpm(dwell.maxHz())))
                .put("clockStandardErrorShare", run.clockShare())
                .put("ratio", run.ratio());
    }

    private double engineRpm(double propellerHz) {
        return 60 * propellerHz * run.ratio();
    }

    private List<JsonFields> dwells(ChannelOrders channel) {
        TreeMap<Double, JsonFields> byTime = new TreeMap<>();
        channel.dwells().forEach(each -> byTime.put(each.dwell().fromS(), dwell(each, channel.unit())));
        run.speed().doubtful().forEach(each -> byTime.put(each.fromS(), doubtful(each)));
        return List.copyOf(byTime.values());
    }

    private JsonFields doubtful(DoubtfulDwell dwell) {
        return new JsonFields()
                .put("fromS", dwell.fromS())
                .put("toS", dwell.toS())
                .put("engineRpm", engineRpm(dwell.propellerHz()))
                .put("propellerRpm", 60 * dwell.propellerHz())
                .put("confirmed", false)
                .put("confirmedBy", List.of())
                .put("doubt", WarningText.of(Fact.of(dwell.doubt())))
                .put("orders", List.of())
                .put("unexplained", List.of());
    }

    /** Names of the lines that agree, or the mark. */
    private List<String> confirmedBy(Dwell dwell) {
        return run.speed().origin() == SpeedResult.Origin.MARK
                ? List.of("once-per-revolution mark")
                : dwell.confirmedBy().stream().map(OrderLine::name).toList();
    }

    private JsonFields dwell(DwellOrders measured, SignalUnit unit) {
        Dwell dwell = measured.dwell();
        return new JsonFields()
                .put("fromS", dwell.fromS())
                .put("toS", dwell.toS())
                .put("engineRpm", engineRpm(dwell.propellerHz()))
                .put("propellerRpm", dwell.propellerRpm())
                .put("standardErrorEngineRpm", finite(engineRpm(run.standardErrorHz(dwell))))
                .put("minEngineRpm", engineRpm(dwell.minHz()))
                .put("maxEngineRpm", engineRpm(dwell.maxHz()))
                .put("confirmed", true)
                .put("confirmedBy", confirmedBy(dwell))
                .put(
                        "orders",
                        measured.readings().stream()
                                .map(reading -> order(reading, unit))
                                .toList())
                .put("unevenness", measured.unevenness().map(DwellOrders.Unevenness::value))
                .put("unevennessCiLow", measured.unevenness().map(DwellOrders.Unevenness::ciLow))
                .put("unevennessCiHigh", measured.unevenness().flatMap(each -> finite(each.ciHigh())))
                .put(
                        "blades",
                        measured.blades().stream()
                                .flatMap(all -> all.shares().stream())
                                .map(OrdersJson::blade)
                                .toList())
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
                .put("inseparableFrom", reading.inseparableNames())
                .put("beyondRange", beyond.isPresent())
                .put("foldsToHz", beyond.map(Level.BeyondRange::foldsToHz).orElse(OptionalDouble.empty()))
                .put("estimator", measured.map(each -> each.estimator().word()));
    }

    /** One blade against the mean of all, in the order in which they go by after the mark. */
    private static JsonFields blade(BladeShares.Share share) {
        return new JsonFields()
                .put("atTurns", share.atTurns())
                .put("strength", share.strength().value())
                .put("strengthStandardError", share.strength().standardError())
                .put("lateDeg", share.late().value())
                .put("lateStandardErrorDeg", share.late().standardError());
    }

    private static JsonFields unexplained(UnexplainedLine line, SignalUnit unit) {
        return new JsonFields()
                .put("frequencyHz", line.frequencyHz())
                .put("amplitude", line.amplitude())
                .put("unit", unit.symbol())
                .put("propellerOrder", line.propellerOrder())
                .put("crankOrder", line.crankOrder())
                .put("followsSpeed", line.followsSpeed())
                .put("hum", line.hum());
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
