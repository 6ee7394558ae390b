package evenblade.judge.comparison;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The run-to-run scatter of one channel, from its repeat runs.
 *
 * <p>For every dwell speed of every stage with several runs, the logarithms of a figure (brought to the
 * same speed) scatter about their mean: sum of squares S with ν degrees of freedom, summed over speeds and
 * stages. From {@value #ENOUGH} degrees on, a figure has a scatter of its own, √(S/ν). With fewer, all
 * well-measured figures of the same nature are put together and weighed against the assumed scatter s₀,
 * which counts as {@value #ASSUMED_COUNTS} degrees: s² = (4·s₀² + ΣS)/(4 + Σν), the moderated variance of
 * Smyth 2004, Stat. Appl. Genet. Mol. Biol. 3:3 (from memory).
 *
 * @param perFigure of figures with enough repeats of their own
 * @param perNature of all others
 * @param repeats runs that repeat another one
 * @param asked what to ask of runs that stand as repeats of each other and differ too much to be any: they are left out
 */
record RunScatter(
        Map<Figure, Scatter> perFigure, Map<Figure.Nature, Scatter> perNature, int repeats, List<Warning> asked) {
    /** Degrees of freedom from which on a figure's own repeats speak alone. */
    private static final int ENOUGH = 4;
    /** What the assumed scatter weighs beside a few repeats. */
    private static final int ASSUMED_COUNTS = 4;
    /** A figure whose own error reaches further says little of the scatter between runs. */
    private static final double WELL_MEASURED = 0.05;
    /** Repeats of which one shows this many times the other's propeller 1× or blade pass aren't any: own limit. */
    private static final double NO_REPEAT = 2;

    /**
     * Squares about the mean of repeats.
     *
     * @param squares sum
     * @param degrees of freedom
     * @param widestReach of the values that went in
     */
    record Spread(double squares, int degrees, double widestReach) {
        Spread plus(Spread other) {
            return new Spread(
                    squares + other.squares, degrees + other.degrees, Math.max(widestReach, other.widestReach));
        }
    }

    RunScatter {
        perFigure = Map.copyOf(perFigure);
        perNature = Map.copyOf(perNature);
        asked = List.copyOf(asked);
    }

    /** What to say of the repeats: a question, or that there is none. */
    List<Warning> warnings() {
        List<Warning> all = new ArrayList<>(asked);
        if (repeats == 0) {
            all.add(Warning.of(WarningCode.NO_REPEAT_RUN, Subject.Whole.COMPARISON));
        }
        return all;
    }

    /** The scatter to allow for in one run's figure. */
    Scatter of(Figure figure) {
        return perFigure.getOrDefault(figure, perNature.get(figure.nature()));
    }

    private static RunScatter of(Map<Figure, Spread> spreads, int repeats, List<Warning> asked) {
        Map<Figure, Scatter> perFigure = new HashMap<>();
        spreads.forEach((figure, own) -> {
            if (own.degrees() >= ENOUGH) {
                perFigure.put(
                        figure,
                        Scatter.of(Math.sqrt(own.squares() / own.degrees()), own.degrees(), Scatter.Source.REPEATS));
            }
        });
        Map<Figure.Nature, Scatter> perNature = new EnumMap<>(Figure.Nature.class);
        for (Figure.Nature nature : Figure.Nature.values()) {
            perNature.put(nature, together(nature, spreads));
        }
        return new RunScatter(perFigure, perNature, repeats, asked);
    }

    private static Scatter together(Figure.Nature nature, Map<Figure, Spread> spreads) {
        Scatter assumed = Scatter.assumed(nature);
        double squares = 0;
        int degrees = 0;
        for (Map.Entry<Figure, Spread> entry : spreads.entrySet()) {
            if (entry.getKey().nature() == nature && entry.getValue().widestReach() <= WELL_MEASURED) {
                squares += entry.getValue().squares();
                degrees += entry.getValue().degrees();
            }
        }
        if (degrees == 0) {
            return assumed;
        }
        int counts = ASSUMED_COUNTS + degrees;
        double variance = (ASSUMED_COUNTS * assumed.deviation() * assumed.deviation() + squares) / counts;
        return Scatter.of(Math.sqrt(variance), counts, Scatter.Source.FEW_REPEATS);
    }

    /** The scatter of a channel over the stages, from the runs that are measured like a given one. */
    static RunScatter of(List<TrendStage> stages, MeasuredRun like, ChannelOrders channel, Basis basis) {
        Map<Figure, Spread> spreads = new LinkedHashMap<>();
        int repeats = 0;
        List<Warning> asked = new ArrayList<>();
        for (TrendStage stage : stages) {
            List<ChannelOrders> alike = new ArrayList<>();
            String last = "";
            for (MeasuredRun run : stage.runs()) {
                Optional<ChannelOrders> same = sameChannel(run, like, channel, basis);
                if (same.isEmpty()) {
                    continue;
                }
                Optional<Figure> jumped = alike.isEmpty() || run.conditions().nothingChanged()
                        ? Optional.empty()
                        : jumped(alike.get(alike.size() - 1), same.get(), basis);
                if (jumped.isPresent()) {
                    asked.add(Warning.of(
                            WarningCode.REPEATS_DIFFER,
                            new Subject.Channel(channel.channel()),
                            new Quoted(last),
                            new Quoted(run.name()),
                            new Quoted(jumped.get().name())));
                    repeats += together(alike, basis, spreads);
                    alike.clear();
                }
                alike.add(same.get());
                last = run.name();
            }
            repeats += together(alike, basis, spreads);
        }
        return of(spreads, repeats, asked);
    }

    /** Adds what runs alike say; how many of them repeat another. */
    private static int together(List<ChannelOrders> alike, Basis basis, Map<Figure, Spread> spreads) {
        if (alike.size() < 2) {
            return 0;
        }
        spread(alike, basis).forEach((figure, spread) -> spreads.merge(figure, spread, Spread::plus));
        return alike.size() - 1;
    }

    /** A figure that tells most and differs too much for two runs with nothing changed between them. */
    private static Optional<Figure> jumped(ChannelOrders one, ChannelOrders other, Basis basis) {
        for (DwellPair pair : DwellPair.of(one, other)) {
            Map<Figure, DwellFigures.Entry> after =
                    DwellFigures.of(pair.after(), basis).entries();
            for (Map.Entry<Figure, DwellFigures.Entry> entry :
                    DwellFigures.of(pair.before(), basis).entries().entrySet()) {
                DwellFigures.Entry now = after.get(entry.getKey());
                if (entry.getKey().tellsMost()
                        && now != null
                        && entry.getValue().value() instanceof ComparedValue.Known a
                        && now.value().times(inUnit(entry.getKey(), other.unit(), one.unit()))
                                instanceof ComparedValue.Known b
                        && Math.abs(Math.log(a.value() / b.value())) > Math.log(NO_REPEAT) + a.reach() + b.reach()) {
                    return Optional.of(entry.getKey());
                }
            }
        }
        return Optional.empty();
    }

    /** What a figure in one unit is to be multiplied by to stand in another; a ratio has none. */
    private static double inUnit(Figure figure, SignalUnit from, SignalUnit to) {
        return figure.kind() == Figure.Kind.AMPLITUDE ? from.siFactor() / to.siFactor() : 1;
    }

    private static Optional<ChannelOrders> sameChannel(
            MeasuredRun run, MeasuredRun like, ChannelOrders channel, Basis basis) {
        if (!Likeness.of(like, run).reasons().isEmpty()) {
            return Optional.empty();
        }
        return ChannelPair.of(like, run).stream()
                .filter(p -> p.before().channel().equals(channel.channel())
                        && p.basis() == basis
                        && p.reasons().isEmpty())
                .map(p -> p.after())
                .findFirst();
    }

    private static Map<Figure, Spread> spread(List<ChannelOrders> repeats, Basis basis) {
        Map<Figure, Spread> spreads = new LinkedHashMap<>();
        ChannelOrders first = repeats.get(0);
        for (DwellOrders dwell : first.dwells()) {
            Map<Figure, List<ComparedValue.Known>> atThisSpeed = new LinkedHashMap<>();
            for (ChannelOrders run : repeats) {
                DwellPair.of(first, run).stream()
                        .filter(p -> p.before() == dwell)
                        .forEach(p -> collect(p, run.unit(), basis, atThisSpeed));
            }
            atThisSpeed.forEach((figure, values) -> {
                if (values.size() > 1) {
                    spreads.merge(figure, about(values), Spread::plus);
                }
            });
        }
        return spreads;
    }

    private static void collect(
            DwellPair pair, SignalUnit unit, Basis basis, Map<Figure, List<ComparedValue.Known>> atThisSpeed) {
        DwellFigures.of(pair.after(), basis).entries().forEach((figure, entry) -> {
            if (entry.value() instanceof ComparedValue.Known known) {
                double shift = basis.exponent(figure.kind(), unit) * pair.speedStep();
                double factor = figure.kind() == Figure.Kind.AMPLITUDE ? unit.siFactor() : 1;
                atThisSpeed
                        .computeIfAbsent(figure, f -> new ArrayList<>())
                        .add(new ComparedValue.Known(known.value() * factor * Math.exp(-shift), known.reach()));
            }
        });
    }

    private static Spread about(List<ComparedValue.Known> values) {
        double mean =
                values.stream().mapToDouble(v -> Math.log(v.value())).average().orElseThrow();
        double squares = values.stream()
                .mapToDouble(v -> Math.pow(Math.log(v.value()) - mean, 2))
                .sum();
        double widest =
                values.stream().mapToDouble(ComparedValue.Known::reach).max().orElseThrow();
        return new Spread(squares, values.size() - 1, widest);
    }
}
