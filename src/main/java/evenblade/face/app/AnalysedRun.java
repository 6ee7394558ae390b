package evenblade.face.app;

import evenblade.input.recording.Source;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * An analysed run of a job: its answer, and what is drawn of it. The recording itself isn't held.
 *
 * @param orders the answer
 * @param views of each channel, in the order of {@link RunOrders#channels}, its longest dwell and then the others
 * @param turning whether one turn of the propeller was looked for
 */
record AnalysedRun(RunOrders orders, List<ChannelView> views, boolean turning) {

    AnalysedRun {
        views = List.copyOf(views);
    }

    /** What stays of an analysed recording, the channels worked on at the same time. */
    static AnalysedRun of(AnalysedRecording analysed, boolean turning) {
        List<ChannelView> views = IntStream.range(
                        0, analysed.orders().channels().size())
                .parallel()
                .mapToObj(i -> DrawRecording.views(analysed, i, turning))
                .flatMap(List::stream)
                .toList();
        return new AnalysedRun(analysed.orders(), views, turning);
    }

    /** Each channel in the longest dwell. */
    List<ChannelView> main() {
        return orders.channels().stream()
                .flatMap(channel -> view(channel.channel()).stream())
                .toList();
    }

    /** A channel in the longest dwell. */
    Optional<ChannelView> view(String channel) {
        return views.stream().filter(view -> view.channel().equals(channel)).findFirst();
    }

    /** A channel in one dwell. */
    Optional<ChannelView> view(String channel, Dwell dwell) {
        return views.stream()
                .filter(view -> view.channel().equals(channel)
                        && view.dwell().filter(dwell::equals).isPresent())
                .findFirst();
    }

    /** Whether a turn begins at the mark. */
    boolean fromMark() {
        return orders.speed().origin() == SpeedResult.Origin.MARK;
    }

    /** This answer, of a file that lies elsewhere now. */
    AnalysedRun at(Path file) {
        Source source = orders.source();
        Source moved = new Source(
                file,
                source.sha256(),
                source.kind(),
                source.lossy(),
                source.sampleRateHz(),
                source.durationS(),
                source.channels());
        return new AnalysedRun(
                new RunOrders(
                        moved,
                        orders.installation(),
                        orders.speed(),
                        orders.channels(),
                        orders.quality(),
                        orders.stamps(),
                        orders.warnings()),
                views,
                turning);
    }
}
