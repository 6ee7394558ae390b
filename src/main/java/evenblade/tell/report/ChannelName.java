package evenblade.tell.report;

import evenblade.keep.job.Conditions;
import evenblade.keep.job.Detail;
import evenblade.tell.chart.Caption;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** A channel by the direction that was noted for it: {@code along (channel 3)}; without a note as the file calls it. */
final class ChannelName {
    private ChannelName() {}

    static String of(Optional<ReportedRun> run, String channel) {
        List<String> directions = run.map(each -> ((Detail.Run) each.event().detail()).conditions())
                .flatMap(conditions -> conditions.get(Conditions.Condition.DIRECTION))
                .map(text -> Stream.of(text.split(",")).map(String::strip).toList())
                .orElse(List.of());
        int place = run.flatMap(ReportedRun::orders)
                .map(orders -> orders.source().channels().indexOf(channel))
                .orElse(-1);
        String called = Caption.channel(channel);
        boolean noted = place >= 0 && place < directions.size() && directions.size() > 1;
        if (!noted
                || channel.toLowerCase(Locale.ROOT)
                        .contains(directions.get(place).toLowerCase(Locale.ROOT))) {
            return called;
        }
        return directions.get(place) + " (" + called + ")";
    }
}
