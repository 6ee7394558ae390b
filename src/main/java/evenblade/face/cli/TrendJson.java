package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.face.app.ShowTrend;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.Trend;
import evenblade.keep.job.Event;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The JSON form of a job's trend. */
final class TrendJson {
    private final Map<String, Event> byName;

    private TrendJson(ShowTrend.Answer answer) {
        this.byName =
                answer.runs().stream().collect(Collectors.toMap(ShowTrend.NamedRun::name, ShowTrend.NamedRun::event));
    }

    static JsonFields of(ShowTrend.Answer answer) {
        TrendJson json = new TrendJson(answer);
        Function<Trend, JsonFields> channel = json::channel;
        return new JsonFields()
                .put("name", answer.name())
                .put("invented", answer.invented())
                .put("channels", answer.channels().stream().map(channel).toList())
                .put("warnings", WarningText.json(answer.warnings()));
    }

    private JsonFields channel(Trend trend) {
        return new JsonFields()
                .put("channel", trend.channel())
                .put("basis", trend.basis().word())
                .put("runs", trend.runs().stream().map(this::run).toList())
                .put("speeds", trend.speeds().stream().map(s -> speed(trend, s)).toList())
                .put("warnings", WarningText.json(trend.warnings()));
    }

    private JsonFields run(Trend.RunEntry run) {
        Event event = byName.get(run.name());
        return new JsonFields()
                .put("id", event.id())
                .put("label", event.label())
                .put("at", event.at().toString())
                .put("changedBefore", run.changesBefore())
                .put("followed", run.leftOut().isEmpty())
                .put("reasons", WarningText.json(run.leftOut()));
    }

    private JsonFields speed(Trend trend, Trend.SpeedGroup speed) {
        return new JsonFields()
                .put("engineRpm", speed.engineRpm())
                .put(
                        "runsWithoutDwell",
                        speed.without().stream().map(n -> byName.get(n).id()).toList())
                .put("figures", speed.lines().stream().map(l -> line(trend, l)).toList());
    }

    private JsonFields line(Trend trend, Trend.FigureLine line) {
        return ChangeJson.figure(line.figure(), trend.unit())
                .put("points", line.points().stream().map(this::point).toList());
    }

    private JsonFields point(Trend.Point point) {
        boolean hidden = ChangeJson.known(point.value()).isEmpty();
        return new JsonFields()
                .put("run", byName.get(point.run()).id())
                .put("engineRpm", point.engineRpm())
                .put("value", ChangeJson.known(point.value()))
                .put("below", ChangeJson.below(point.value()))
                .put("ciLow", hidden ? Optional.empty() : Optional.of(point.ciLow()))
                .put("ciHigh", hidden ? Optional.empty() : Optional.of(point.ciHigh()))
                .put("sinceLast", point.sinceLast().map(TrendJson::step))
                .put("sinceFirst", point.sinceFirst().map(TrendJson::step));
    }

    private static JsonFields step(Change change) {
        return ChangeJson.verdict(new JsonFields(), change);
    }
}
