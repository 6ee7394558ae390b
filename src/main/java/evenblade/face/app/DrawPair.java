package evenblade.face.app;

import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.RunComparison;
import evenblade.measure.orders.AngleAverage;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.speed.Dwell;
import evenblade.tell.chart.AnglePicture;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.Curve;
import evenblade.tell.chart.Picture;
import evenblade.tell.report.ComparisonPictures;
import java.util.Optional;

/**
 * Two analysed runs drawn over each other.
 *
 * @param before the first
 * @param after the second; the same where there is only one
 */
record DrawPair(Named before, Named after) {
    /**
     * An analysed run and what the user calls it.
     *
     * @param name of the run
     * @param answer what was analysed
     */
    record Named(String name, AnalysedRun answer) {
        private AnglePicture.Revolution revolution(AngleAverage turn) {
            return new AnglePicture.Revolution(name, turn.mean(), turn.standardError());
        }
    }

    /** Both spectra of the channel and the speed compared. */
    Optional<Picture> spectra(RunComparison outcome) {
        return ComparisonPictures.mainPair(outcome)
                .flatMap(pair -> spectra(outcome, outcome.channels().get(0).channel(), pair));
    }

    private Optional<Picture> spectra(RunComparison outcome, String channel, DwellComparison pair) {
        Optional<ChannelView> earlier = before.answer().view(channel, pair.before());
        Optional<ChannelView> later = after.answer().view(channel, pair.after());
        Optional<DwellOrders> marked = after.answer().orders().channels().stream()
                .filter(each -> each.channel().equals(channel))
                .flatMap(each -> each.dwells().stream())
                .filter(dwell -> dwell.dwell().equals(pair.after()))
                .findFirst();
        return earlier.isPresent()
                        && later.isPresent()
                        && marked.isPresent()
                        && earlier.get().unit() == later.get().unit()
                ? Optional.of(ComparisonPictures.spectra(
                        outcome,
                        curve(earlier.get()),
                        curve(later.get()),
                        later.get().unit(),
                        marked.get(),
                        after.answer().orders().ratio()))
                : Optional.empty();
    }

    private static Curve curve(ChannelView view) {
        return new Curve(view.spectrum().frequenciesHz(), view.spectrum().values());
    }

    /** One turn of the propeller at the speed compared, before and after. */
    Optional<Picture> turn(RunComparison outcome) {
        return ComparisonPictures.mainPair(outcome).flatMap(pair -> {
            String channel = outcome.channels().get(0).channel();
            Optional<ChannelView> earlier = before.answer().view(channel, pair.before());
            return after.answer().view(channel, pair.after()).flatMap(view -> turn(view, earlier));
        });
    }

    /** One turn of the propeller in the second run alone, on its first channel. */
    Optional<Picture> lastTurn() {
        return after.answer().views().stream().findFirst().flatMap(view -> turn(view, Optional.empty()));
    }

    private Optional<Picture> turn(ChannelView view, Optional<ChannelView> before) {
        Optional<AngleAverage> earlier =
                before.filter(same -> same.unit() == view.unit()).flatMap(ChannelView::turn);
        return view.turn().map(turn -> picture(view, turn, earlier));
    }

    private Picture picture(ChannelView view, AngleAverage turn, Optional<AngleAverage> earlier) {
        boolean fromMark = after.answer().fromMark()
                && (earlier.isEmpty() || before.answer().fromMark());
        double ratio = after.answer().orders().ratio();
        double propellerRpm = view.dwell().map(Dwell::propellerRpm).orElseThrow();
        return new AnglePicture(
                Caption.of(
                        earlier.isPresent() ? after.name() + " against " + before.name() : after.name(),
                        Caption.channel(view.channel()),
                        Caption.rpm(ratio * propellerRpm, propellerRpm),
                        "mean of " + turn.turns() + " turns",
                        fromMark ? "angle from the mark" : "no mark: where 0° is differs from run to run"),
                after.answer().orders().installation().propeller().blades(),
                fromMark,
                view.unit(),
                earlier.map(before::revolution),
                after.revolution(turn));
    }
}
