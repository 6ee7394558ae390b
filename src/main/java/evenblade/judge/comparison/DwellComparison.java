package evenblade.judge.comparison;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Listed;
import evenblade.machine.installation.Shaft;
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
 * @param takenOutShare by how much the engine's lines say that the sensor felt all lines more in the second run: taken out
 *     of every change; 0 where they say nothing
 */
public record DwellComparison(
        Dwell before,
        Dwell after,
        double engineRpmBefore,
        double engineRpmAfter,
        List<Change> changes,
        List<NotCompared> notCompared,
        double takenOutShare) {
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
        List<CommonPart.Step> steps = new ArrayList<>();
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
                steps.add(step(figure, a, b, dwells, channels, scatter));
            }
        });
        after.entries().keySet().stream()
                .filter(figure -> !before.entries().containsKey(figure))
                .forEach(figure -> notCompared.add(new NotCompared(figure, Fact.of(ComparisonFact.NOT_IN_FIRST))));
        List<CommonPart.Step> apart = steps.stream()
                .filter(step -> before.entries().get(step.figure()).sharedWith().isEmpty())
                .toList();
        List<Change> changes = steps.stream()
                .map(step -> Change.of(
                        step,
                        CommonPart.in(step.figure(), apart),
                        before.entries().get(step.figure()).sharedWith()))
                .toList();
        return new DwellComparison(
                dwells.before().dwell(),
                dwells.after().dwell(),
                dwells.before().dwell().propellerRpm() * ratioBefore,
                dwells.after().dwell().propellerRpm() * ratioAfter,
                changes,
                notCompared,
                apart.stream()
                        .map(CommonPart.Step::figure)
                        .filter(figure -> figure.of()
                                .filter(shaft -> shaft == Shaft.PROPELLER)
                                .isPresent())
                        .findFirst()
                        .map(figure -> Math.expm1(CommonPart.in(figure, apart).shift()))
                        .orElse(0.0));
    }

    private static CommonPart.Step step(
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
        return new CommonPart.Step(figure, before.value(), after.value().times(factor), law, scatter.of(figure));
    }
}
