package evenblade.face.app;

import evenblade.input.recording.Recording;
import evenblade.measure.orders.AngleAverage;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.tell.chart.AnglePicture.Revolution;
import evenblade.tell.chart.AnglePicture;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Answers what one mean turn of the propeller looks like, in one run or in two. */
public final class DrawTurn {
    private static final int POINTS_PER_TURN = 180;

    private DrawTurn() {}

    /**
     * One channel of one run.
     *
     * @param name of the run
     * @param run as analysed
     * @param channel place of the channel among the analysed ones, from 0
     * @param dwell the stretch to average over
     */
    public record Shown(String name, AnalysedRecording run, int channel, Dwell dwell) {
        private Optional<AngleAverage> turn() {
            return average(run, channel, dwell);
        }

        private ChannelOrders orders() {
            return run.orders().channels().get(channel);
        }

        private boolean fromMark() {
            return run.orders().speed().origin() == SpeedResult.Origin.MARK;
        }
    }

    /**
     * The mean turn of one run.
     *
     * @return empty where no speed was confirmed, or too few whole turns were held
     */
    public static Optional<Picture> of(Shown run) {
        return average(run.run(), run.channel())
                .map(turn -> picture(run, turn, captionOfOne(run, turn), run.fromMark(), Optional.empty()));
    }

    /**
     * The mean turns of two runs, laid over each other.
     *
     * @return empty where either has none, or they are of different units
     */
    public static Optional<Picture> of(Shown before, Shown after) {
        Optional<AngleAverage> earlier = before.turn();
        Optional<AngleAverage> later = after.turn();
        if (earlier.isEmpty()
                || later.isEmpty()
                || before.orders().unit() != after.orders().unit()) {
            return Optional.empty();
        }
        Revolution first = revolution(before.name(), earlier.get());
        String turns = String.format(
                Locale.ROOT,
                "means of %d and %d turns at %s and %s engine rpm",
                earlier.get().turns(),
                later.get().turns(),
                rpm(before),
                rpm(after));
        boolean fromMark = before.fromMark() && after.fromMark();
        Caption caption = Caption.of(
                after.name() + " against " + before.name(),
                Caption.channel(after.orders().channel()),
                turns,
                angle(fromMark));
        return Optional.of(picture(after, later.get(), caption, fromMark, Optional.of(first)));
    }

    /** One mean turn of a channel over the longest dwell of a run whose speed is confirmed. */
    static Optional<AngleAverage> average(AnalysedRecording analysed, int channel) {
        return analysed.orders().speed().main().flatMap(dwell -> average(analysed, channel, dwell));
    }

    /** The same over one dwell. */
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

    private static Caption captionOfOne(Shown run, AngleAverage turn) {
        RunOrders orders = run.run().orders();
        Caption whole =
                Caption.ofRun(orders, Optional.of(run.orders()), orders.speed().main());
        List<String> parts = new ArrayList<>(whole.parts());
        parts.add("mean of " + turn.turns() + " turns");
        parts.add(angle(run.fromMark()));
        return new Caption(parts);
    }

    private static Picture picture(
            Shown run, AngleAverage turn, Caption caption, boolean fromMark, Optional<Revolution> before) {
        return new AnglePicture(new AnglePicture.Data(
                caption,
                run.run().orders().installation().propeller().blades(),
                fromMark,
                run.orders().unit(),
                before,
                revolution(run.name(), turn)));
    }

    private static String angle(boolean fromMark) {
        return fromMark ? "angle from the mark" : "no mark: where 0° lies differs from run to run";
    }

    private static String rpm(Shown run) {
        return FigureFormat.fixed(run.dwell().propellerRpm() * run.run().orders().ratio(), 0);
    }

    private static Revolution revolution(String name, AngleAverage turn) {
        return new Revolution(name, turn.mean(), turn.standardError());
    }
}
