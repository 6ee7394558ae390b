package evenblade.face.cli;

import evenblade.base.fact.Warning;
import evenblade.base.json.JsonFields;
import evenblade.face.app.CompareRuns;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.Figure;
import evenblade.judge.comparison.RunComparison;
import evenblade.judge.comparison.RunComparison.ChannelComparison;
import evenblade.keep.job.Event;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The JSON form of two runs compared. */
final class CompareJson {
    private CompareJson() {}

    static JsonFields of(CompareRuns.Answer answer) {
        RunComparison comparison = answer.comparison();
        Optional<ChannelComparison> first = comparison.channels().stream().findFirst();
        return new JsonFields()
                .put("comparable", comparison.comparable())
                .put("reasons", WarningText.json(comparison.comparable() ? List.of() : comparison.reasons()))
                .put("before", run(answer.before()))
                .put("after", run(answer.after()))
                .put("changedBetween", answer.changes())
                .put("invented", answer.invented())
                .put("channel", first.map(ChannelComparison::channel))
                .put("basis", first.map(c -> c.basis().word()))
                .put("repeatRuns", first.map(ChannelComparison::repeatRuns))
                .put("pairs", first.map(CompareJson::pairs).orElse(List.of()))
                .put(
                        "channels",
                        comparison.channels().stream().map(CompareJson::channel).toList())
                .put(
                        "warnings",
                        WarningText.json(Stream.of(
                                        answer.warnings(),
                                        comparison.comparable() ? comparison.reasons() : List.<Warning>of(),
                                        comparison.warnings())
                                .flatMap(List::stream)
                                .toList()));
    }

    private static JsonFields run(Event event) {
        return new JsonFields()
                .put("id", event.id())
                .put("label", event.label())
                .put("at", event.at().toString());
    }

    private static JsonFields channel(ChannelComparison channel) {
        return new JsonFields()
                .put("channel", channel.channel())
                .put("basis", channel.basis().word())
                .put("repeatRuns", channel.repeatRuns())
                .put("pairs", pairs(channel));
    }

    private static List<JsonFields> pairs(ChannelComparison channel) {
        return channel.dwells().stream().map(dwells -> pair(channel, dwells)).toList();
    }

    private static JsonFields pair(ChannelComparison channel, DwellComparison dwells) {
        return new JsonFields()
                .put("engineRpm", dwells.engineRpmBefore())
                .put("engineRpmAfter", dwells.engineRpmAfter())
                .put("takenOutPercent", 100 * dwells.takenOutShare())
                .put(
                        "orders",
                        dwells.changes().stream()
                                .filter(c -> c.figure().kind() != Figure.Kind.UNEVENNESS)
                                .map(c -> change(channel, c))
                                .toList())
                .put(
                        "unevenness",
                        dwells.changes().stream()
                                .filter(c -> c.figure().kind() == Figure.Kind.UNEVENNESS)
                                .map(c -> change(channel, c))
                                .findFirst())
                .put(
                        "notCompared",
                        dwells.notCompared().stream()
                                .map(n -> ChangeJson.figure(n.figure(), channel.unit())
                                        .put("why", WarningText.of(n.why())))
                                .toList());
    }

    private static JsonFields change(ChannelComparison channel, Change change) {
        return ChangeJson.change(ChangeJson.figure(change.figure(), channel.unit()), change);
    }
}
