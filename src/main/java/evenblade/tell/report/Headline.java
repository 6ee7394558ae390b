package evenblade.tell.report;

import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.Figure;
import evenblade.judge.comparison.RunComparison;
import evenblade.judge.comparison.RunComparison.ChannelComparison;
import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The one line of the shaking that the first page speaks of, in the first run and in the last.
 *
 * @param change of it
 * @param pair of dwells that it was compared in
 * @param channel that it was measured in
 * @param before run
 * @param after run
 */
record Headline(Change change, DwellComparison pair, ChannelComparison channel, String before, String after) {
    /** The line of a beat in a comparison, in its first channel and longest dwell; empty where it wasn't compared. */
    static Optional<Headline> of(RunComparison outcome, HowOften beat) {
        return outcome.channels().stream()
                .findFirst()
                .flatMap(channel -> of(outcome, beat, channel, ComparisonPictures.mainPair(outcome)));
    }

    /** This line in another comparison: in the channel of that name, at the nearest speed. */
    Optional<Headline> in(RunComparison outcome, HowOften beat) {
        return outcome.channels().stream()
                .filter(each -> each.channel().equals(channel.channel()))
                .findFirst()
                .flatMap(same -> of(
                        outcome,
                        beat,
                        same,
                        same.dwells().stream()
                                .min(Comparator.comparingDouble(
                                        each -> Math.abs(each.engineRpmBefore() - pair.engineRpmBefore())))));
    }

    private static Optional<Headline> of(
            RunComparison outcome, HowOften beat, ChannelComparison channel, Optional<DwellComparison> at) {
        return at.flatMap(pair -> pair.changes().stream()
                .filter(change -> change.figure().kind() != Figure.Kind.UNEVENNESS)
                .filter(change -> change.figure().line().filter(beat::shownBy).isPresent())
                .findFirst()
                .map(change -> new Headline(change, pair, channel, outcome.before(), outcome.after())));
    }

    /** Peak velocity before, or what it was below; empty where the scale isn't known. */
    OptionalDouble beforeMmS() {
        return mmS(change.before().size(), pair.before().propellerHz());
    }

    /** Peak velocity after. */
    OptionalDouble afterMmS() {
        return mmS(change.after().size(), pair.after().propellerHz());
    }

    private OptionalDouble mmS(double amplitude, double propellerHz) {
        if (change.figure().kind() != Figure.Kind.AMPLITUDE) {
            return OptionalDouble.empty();
        }
        SignalUnit unit = channel.unit();
        return Velocity.mmS(
                amplitude,
                unit,
                propellerHz * change.figure().line().orElseThrow().propellerOrder());
    }

    /** Whether noise hides it after. */
    boolean hiddenAfter() {
        return change.after() instanceof ComparedValue.Below;
    }

    /** Whether noise hid it before. */
    boolean hiddenBefore() {
        return change.before() instanceof ComparedValue.Below;
    }
}
