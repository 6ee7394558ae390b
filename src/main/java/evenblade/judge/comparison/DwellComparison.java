package evenblade.judge.comparison;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Listed;
import evenblade.measure.speed.Dwell;
import java.util.ArrayList;
import java.util.List;

/**
 * Two dwells at the same speed, figure by figure.
 *
 * @param before the first run's dwell
 * @param after the second's
 * @param engineRpmBefore engine speed of the first
 * @param engineRpmAfter of the second
 * @param changes what could be compared, in the order of the order table
 * @param notCompared what couldn't
 */
public record DwellComparison(
        Dwell before,
        Dwell after,
        double engineRpmBefore,
        double engineRpmAfter,
        List<Change> changes,
        List<NotCompared> notCompared) {
    public DwellComparison {
        changes = List.copyOf(changes);
        notCompared = List.copyOf(notCompared);
    }

    /**
     * A figure that only looks comparable.
     *
     * @param figure which
     * @param why the reason
     */
    public record NotCompared(Figure figure, Fact why) {}

    static DwellComparison of(
            DwellPair dwells, ChannelPair channels, RunScatter scatter, double ratioBefore, double ratioAfter) {
        DwellFigures before = DwellFigures.of(dwells.before(), channels.basis());
        DwellFigures after = DwellFigures.of(dwells.after(), channels.basis());
        List<Change> changes = new ArrayList<>();
        List<NotCompared> notCompared = new ArrayList<>();
        before.entries().forEach((figure, a) -> {
            DwellFigures.Entry b = after.entries().get(figure);
            if (b == null) {
                notCompared.add(new NotCompared(figure, Fact.of(ComparisonFact.NOT_IN_SECOND)));
            } else if (!a.sharedWith().equals(b.sharedWith())) {
                notCompared.add(new NotCompared(
                        figure,
                        Fact.of(
                                ComparisonFact.SHARES_PLACE,
                                Listed.quoted(a.sharedWith().isEmpty() ? b.sharedWith() : a.sharedWith()))));
            } else {
                changes.add(change(figure, a, b, dwells, channels, scatter));
            }
        });
        after.entries().keySet().stream()
                .filter(figure -> !before.entries().containsKey(figure))
                .forEach(figure -> notCompared.add(new NotCompared(figure, Fact.of(ComparisonFact.NOT_IN_FIRST))));
        return new DwellComparison(
                dwells.before().dwell(),
                dwells.after().dwell(),
                dwells.before().dwell().propellerRpm() * ratioBefore,
                dwells.after().dwell().propellerRpm() * ratioAfter,
                changes,
                notCompared);
    }

    private static Change change(
            Figure figure,
            DwellFigures.Entry before,
            DwellFigures.Entry after,
            DwellPair dwells,
            ChannelPair channels,
            RunScatter scatter) {
        double factor = figure.kind() == Figure.Kind.AMPLITUDE ? channels.unitFactor() : 1;
        SpeedLaw law = SpeedLaw.between(
                dwells.speedStep(),
                channels.basis(),
                figure.kind(),
                channels.before().unit());
        return Change.of(
                figure, before.value(), after.value().times(factor), law, scatter.of(figure), before.sharedWith());
    }
}
