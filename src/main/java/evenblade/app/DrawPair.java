package evenblade.app;

import evenblade.chart.AnglePicture;
import evenblade.chart.Caption;
import evenblade.chart.Curve;
import evenblade.chart.Picture;
import evenblade.comparison.MeasuredRun;
import evenblade.comparison.RunComparison;
import evenblade.orders.AngleAverage;
import evenblade.orders.DwellOrders;
import evenblade.report.ComparisonPictures;
import evenblade.speed.Dwell;
import java.util.Comparator;
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
        private Optional<DwellOrders> longest(String channel) {
            return answer.orders().channels().stream()
                    .filter(each -> each.channel().equals(channel))
                    .flatMap(each -> each.dwells().stream())
                    .max(Comparator.comparingDouble(dwell -> dwell.dwell().durationS()));
        }

        private AnglePicture.Revolution revolution(AngleAverage turn) {
            return new AnglePicture.Revolution(name, turn.mean(), turn.standardError());
        }
    }

    /** Both spectra of the channel compared, where the longest dwells of both runs are of the same speed. */
    Optional<Picture> spectra(RunComparison outcome) {
        if (!outcome.comparable()) {
            return Optional.empty();
        }
        String channel = outcome.channels().get(0).channel();
        Optional<DwellOrders> one = before.longest(channel);
        Optional<DwellOrders> other = after.longest(channel);
        Optional<ChannelView> earlier = before.answer().view(channel);
        Optional<ChannelView> later = after.answer().view(channel);
        boolean alike = one.isPresent()
                && other.isPresent()
                && earlier.isPresent()
                && later.isPresent()
                && earlier.get().unit() == later.get().unit()
                && MeasuredRun.sameSpeed(
                        one.get().dwell().propellerHz(), other.get().dwell().propellerHz());
        return alike
                ? Optional.of(ComparisonPictures.spectra(
                        outcome,
                        curve(earlier.get()),
                        curve(later.get()),
                        later.get().unit(),
                        other.get(),
                        after.answer().orders().ratio()))
                : Optional.empty();
    }

    private static Curve curve(ChannelView view) {
        return new Curve(view.spectrum().frequenciesHz(), view.spectrum().values());
    }

    /**
     * One turn of the propeller in the second run and, where the same channel has one at the same speed, in
     * the first.
     *
     * @param wanted the channel to show, where there is one
     */
    Optional<Picture> turn(Optional<String> wanted) {
        return wanted.flatMap(after.answer()::view)
                .or(() -> after.answer().views().stream().findFirst())
                .flatMap(view -> view.turn().map(turn -> turn(view, turn)));
    }

    private Picture turn(ChannelView view, AngleAverage turn) {
        Optional<AngleAverage> earlier = before.answer() == after.answer()
                ? Optional.empty()
                : before.answer()
                        .view(view.channel())
                        .filter(same -> same.unit() == view.unit() && sameSpeed())
                        .flatMap(ChannelView::turn);
        boolean fromMark = after.answer().fromMark()
                && (earlier.isEmpty() || before.answer().fromMark());
        return new AnglePicture(new AnglePicture.Data(
                Caption.of(
                        Caption.channel(view.channel()),
                        speed(after),
                        "mean of " + turn.turns() + " turns",
                        fromMark ? "angle from the mark" : "no mark: where 0° lies differs from run to run"),
                after.answer().orders().installation().propeller().blades(),
                fromMark,
                view.unit(),
                earlier.map(before::revolution),
                after.revolution(turn)));
    }

    /** Like with like: a turn at another speed is another turn. */
    private boolean sameSpeed() {
        Optional<Dwell> one = before.answer().orders().speed().main();
        Optional<Dwell> other = after.answer().orders().speed().main();
        return one.isPresent()
                && other.isPresent()
                && MeasuredRun.sameSpeed(one.get().propellerHz(), other.get().propellerHz());
    }

    private static String speed(Named run) {
        double ratio = run.answer().orders().ratio();
        Dwell main = run.answer().orders().speed().main().orElseThrow();
        return Caption.rpm(ratio * main.propellerRpm(), main.propellerRpm());
    }
}
