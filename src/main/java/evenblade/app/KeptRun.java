package evenblade.app;

import evenblade.comparison.MeasuredRun;
import evenblade.comparison.RunConditions;
import evenblade.installation.OrderLine;
import evenblade.installation.Shaft;
import evenblade.json.JsonDocument;
import evenblade.json.JsonFields;
import evenblade.json.JsonObject;
import evenblade.json.JsonWriter;
import evenblade.orders.ChannelOrders;
import evenblade.orders.DwellOrders;
import evenblade.orders.DwellOrders.Unevenness;
import evenblade.orders.Level;
import evenblade.orders.OrderReading;
import evenblade.orders.UnexplainedLine;
import evenblade.problem.BadInput;
import evenblade.speed.Dwell;
import evenblade.units.SignalUnit;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The form in which a measured run is kept in a job's cache: all that comparing needs, nothing of how the
 * run is called or of its conditions, for these don't depend on the recording. A number that isn't finite
 * is left out and comes back as infinite.
 */
final class KeptRun {
    /** To be raised with every change of this form or of what is measured. */
    static final int FORMAT = 2;

    private KeptRun() {}

    static byte[] written(MeasuredRun run) {
        JsonFields json = new JsonFields()
                .put("lossy", run.lossy())
                .put("speedDoubt", run.speedDoubt())
                .put("blades", run.blades())
                .put("ratio", run.ratio())
                .put("channels", run.channels().stream().map(KeptRun::channel).toList());
        return JsonWriter.write(json).getBytes(StandardCharsets.UTF_8);
    }

    static JsonFields channel(ChannelOrders channel) {
        return new JsonFields()
                .put("channel", channel.channel())
                .put("unit", channel.unit().name())
                .put("dwells", channel.dwells().stream().map(KeptRun::dwell).toList());
    }

    private static JsonFields dwell(DwellOrders measured) {
        Dwell dwell = measured.dwell();
        return new JsonFields()
                .put("fromS", dwell.fromS())
                .put("toS", dwell.toS())
                .put("propellerHz", dwell.propellerHz())
                .put("standardErrorHz", finite(dwell.standardErrorHz()))
                .put("minHz", dwell.minHz())
                .put("maxHz", dwell.maxHz())
                .put(
                        "readings",
                        measured.readings().stream().map(KeptRun::reading).toList())
                .put(
                        "unexplained",
                        measured.unexplained().stream()
                                .map(line -> new JsonFields()
                                        .put("frequencyHz", line.frequencyHz())
                                        .put("amplitude", line.amplitude())
                                        .put("propellerOrder", line.propellerOrder())
                                        .put("crankOrder", line.crankOrder())
                                        .put("followsSpeed", line.followsSpeed()))
                                .toList())
                .put("unevenness", measured.unevenness().map(u -> new JsonFields()
                        .put("value", u.value())
                        .put("ciLow", u.ciLow())
                        .put("ciHigh", finite(u.ciHigh()))));
    }

    private static JsonFields reading(OrderReading reading) {
        JsonFields json = new JsonFields()
                .put("of", reading.line().of().name())
                .put("order", reading.line().order())
                .put("propellerOrder", reading.line().propellerOrder())
                .put("name", reading.line().name())
                .put("role", reading.line().role().name())
                .put("frequencyHz", reading.frequencyHz())
                .put("inseparableFrom", reading.inseparableFrom());
        if (reading.level() instanceof Level.Measured level) {
            return json.put("amplitude", level.amplitude())
                    .put("standardError", finite(level.standardError()))
                    .put("ciLow", level.ciLow())
                    .put("ciHigh", finite(level.ciHigh()))
                    .put("phaseDeg", level.phaseDeg())
                    .put("detected", level.detected())
                    .put("estimator", level.estimator().name());
        }
        return json.put("foldsToHz", ((Level.BeyondRange) reading.level()).foldsToHz());
    }

    private static OptionalDouble finite(double number) {
        return Double.isFinite(number) ? OptionalDouble.of(number) : OptionalDouble.empty();
    }

    /** The run again; empty where the bytes aren't in this form. */
    static Optional<MeasuredRun> read(byte[] bytes, String name, RunConditions conditions) {
        try {
            JsonObject json = JsonDocument.parse(new String(bytes, StandardCharsets.UTF_8), "kept result");
            return Optional.of(new MeasuredRun(
                    name,
                    conditions,
                    json.flag("lossy"),
                    json.optionalText("speedDoubt"),
                    json.whole("blades", 1, 100),
                    json.number("ratio"),
                    json.objects("channels").stream().map(KeptRun::channel).toList()));
        } catch (BadInput | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    static ChannelOrders channel(JsonObject json) {
        return new ChannelOrders(
                json.text("channel"),
                SignalUnit.valueOf(json.text("unit")),
                json.objects("dwells").stream().map(KeptRun::dwell).toList());
    }

    private static DwellOrders dwell(JsonObject json) {
        Dwell dwell = new Dwell(
                json.number("fromS"),
                json.number("toS"),
                json.number("propellerHz"),
                orInfinite(json, "standardErrorHz"),
                json.number("minHz"),
                json.number("maxHz"));
        Optional<Unevenness> unevenness = json.optionalObject("unevenness")
                .map(u -> new Unevenness(u.number("value"), u.number("ciLow"), orInfinite(u, "ciHigh")));
        List<OrderReading> readings =
                json.objects("readings").stream().map(KeptRun::reading).toList();
        List<UnexplainedLine> unexplained = json.objects("unexplained").stream()
                .map(line -> new UnexplainedLine(
                        line.number("frequencyHz"),
                        line.number("amplitude"),
                        line.number("propellerOrder"),
                        line.number("crankOrder"),
                        line.flag("followsSpeed")))
                .toList();
        return new DwellOrders(dwell, readings, unexplained, unevenness);
    }

    private static OrderReading reading(JsonObject json) {
        OrderLine line = new OrderLine(
                Shaft.valueOf(json.text("of")),
                json.number("order"),
                json.number("propellerOrder"),
                json.text("name"),
                OrderLine.Role.valueOf(json.text("role")));
        return new OrderReading(line, json.number("frequencyHz"), level(json), json.texts("inseparableFrom"));
    }

    private static Level level(JsonObject json) {
        if (json.has("foldsToHz")) {
            return new Level.BeyondRange(json.number("foldsToHz"));
        }
        String estimator = json.text("estimator");
        return new Level.Measured(
                json.number("amplitude"),
                orInfinite(json, "standardError"),
                json.number("ciLow"),
                orInfinite(json, "ciHigh"),
                json.optionalNumber("phaseDeg"),
                json.flag("detected"),
                Arrays.stream(Level.Estimator.values())
                        .filter(e -> e.name().equals(estimator))
                        .findFirst()
                        .orElseThrow(IllegalArgumentException::new));
    }

    private static double orInfinite(JsonObject json, String key) {
        return json.optionalNumber(key).orElse(Double.POSITIVE_INFINITY);
    }
}
