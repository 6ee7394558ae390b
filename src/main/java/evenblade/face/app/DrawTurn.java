package evenblade.face.app;

import evenblade.input.recording.Recording;
import evenblade.measure.orders.AngleAverage;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.tell.chart.AnglePicture;
import evenblade.tell.chart.AnglePicture.Revolution;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.Picture;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Answers what one mean turn of the propeller looks like in one dwell of a run. */
final class DrawTurn {
    /** Two degrees a point: finer than the narrowest push of a blade, coarse enough to average few turns. */
    private static final int POINTS_PER_TURN = 180;

    private DrawTurn() {}

    /**
     * One channel over one dwell.
     *
     * @param channel place of the channel among the analysed ones, from 0
     * @return empty where no speed was confirmed, or too few whole turns were held
     */
    static Optional<Picture> of(AnalysedRecording analysed, int channel, Dwell dwell) {
        return average(analysed, channel, dwell).map(turn -> picture(analysed.orders(), channel, dwell, turn));
    }

    private static Picture picture(RunOrders run, int channel, Dwell dwell, AngleAverage turn) {
        ChannelOrders shown = run.channels().get(channel);
        boolean fromMark = run.speed().origin() == SpeedResult.Origin.MARK;
        List<String> parts = new ArrayList<>(
                Caption.ofRun(run, Optional.of(shown), Optional.of(dwell)).parts());
        parts.add("mean of " + turn.turns() + " turns");
        parts.add(fromMark ? "angle from the mark" : "no mark: where 0° lies differs from run to run");
        return new AnglePicture(new AnglePicture.Data(
                new Caption(parts),
                run.installation().propeller().blades(),
                fromMark,
                shown.unit(),
                Optional.empty(),
                new Revolution("mean turn", turn.mean(), turn.standardError())));
    }

    /**
     * One mean turn of a channel over one dwell of a run whose speed is confirmed.
     *
     * @param channel place of the channel among the analysed ones, from 0
     */
    static Optional<AngleAverage> average(AnalysedRecording analysed, int channel, Dwell dwell) {
        Recording recording = analysed.recording();
        SpeedResult speed = analysed.orders().speed();
        return speed.confirmed()
                ? AngleAverage.of(
                        recording.time(),
                        recording.channels().get(channel).values(),
                        speed.track(),
                        dwell.fromS(),
                        dwell.toS(),
                        POINTS_PER_TURN)
                : Optional.empty();
    }
}
