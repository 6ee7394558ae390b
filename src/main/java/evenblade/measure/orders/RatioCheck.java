package evenblade.measure.orders;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.DwellOrders.UnexplainedLine;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Whether another reduction ratio explains the lines of a run clearly better than the entered one.
 *
 * <p>A speed found with a wrong ratio is mostly right for one of the two shafts: its lines fall into
 * place, and those of the other shaft are left over as steady lines that no order explains. So the
 * speed of either shaft is kept in turn, and every left-over line is tried as each order of the other:
 * that gives a ratio, and with it places for all of that shaft's lines. A line counts ln(1 + A²/2s²), A
 * its amplitude and s the standard error of the nearest measured order, up to {@value #MOST_EVIDENCE},
 * weighted by how usual it is; a usual line that is missing counts against.
 *
 * <p>Another ratio is named only where at least {@value #LEAST_LINES} left-over lines fit it, the
 * strongest among them, and they outweigh both the rest of what is left over and the lines that only
 * the entered ratio explains.
 *
 * <p><b>When it is silent though the ratio is wrong.</b> Where one shaft shows fewer than two lines of
 * its own, or all its lines fall on the other's. <b>When it may be wrong.</b> Something else that
 * turns in step, such as a belt-driven generator, on a machine whose engine isn't heard.
 */
public final class RatioCheck {
    private static final int LEAST_LINES = 2; // one line fits some ratio always
    private static final double MOST_EVIDENCE = 12; // ours: no single line shall decide
    /** The lines of the other ratio must weigh this many times what only the entered one explains. */
    private static final double CLEARLY = 2;
    /** ... and this share of all that is left over. */
    private static final double SHARE_OF_LEFT_OVER = 0.6;
    /** What a usual line costs that isn't there, as a share of the mean evidence of those that are. */
    private static final double ABSENT = 0.5;
    /** A candidate nearly as good as the best is preferred where it is a likelier mistake. */
    private static final double NEARLY = 0.8;

    private static final double NEARBY = 0.25; // in logarithm: a slip of digits lies nearer; ours
    /** A line smeared because the speed was followed badly may show beside its place by this share. */
    private static final double SMEARED = 0.01;

    private static final double SMEARED_MOST = 3; // ours
    /** A line this far below a left-over one, as a share, may be what leaks of it into the fit. */
    private static final double LEAST_SHARE = 0.15;
    /** How well a steady line's place is known where the speed was followed badly, as a share. */
    private static final double PLACED = 0.002;

    private static final double SAME_RATIO = 0.005; // ours: nearer ratios can't be told apart
    private static final double LEAST_RATIO = 0.2; // as far as an installation file may say
    private static final double MOST_RATIO = 10; // as far as an installation file may say

    private static final double[] MAINS_HZ = {50, 60}; // the two mains of the world
    private static final double MAINS_STRAY = 0.001; // a grid holds its frequency nearer than that
    /** Multiples of a shaft's speed, beyond those of the table, that the shaft may well show too. */
    private static final int BEYOND_TABLE = 4;

    private final OrderTable table;
    private final List<View> views;

    private RatioCheck(OrderTable table, List<View> views) {
        this.table = table;
        this.views = views;
    }

    /**
     * Holds a run against other ratios.
     *
     * @param channels as measured; each is judged by itself and the clearest answer taken
     * @param table the lines of the entered ratio
     * @param speed what they were measured with
     * @return empty where the entered ratio stands, or nothing can be said
     */
    public static Optional<RatioDoubt> of(List<ChannelOrders> channels, OrderTable table, SpeedResult speed) {
        if (!speed.confirmed()) {
            return Optional.empty();
        }
        double ratio = table.ratio() * (1 + speed.ratioCorrection());
        return channels.stream()
                .map(channel -> new RatioCheck(
                                table,
                                channel.dwells().stream()
                                        .map(dwell -> new View(dwell, ratio, table))
                                        .toList())
                        .judge())
                .flatMap(Optional::stream)
                .max(Comparator.comparingDouble(RatioDoubt::margin));
    }

    /** A line seen in a dwell and how much it counts. */
    private record Seen(double hz, double amplitude, double evidence) {
        static Seen of(double hz, double amplitude, double error) {
            // An error of exactly zero would be one of an invented signal.
            double signal = amplitude / Math.max(error, 1e-300);
            return new Seen(hz, amplitude, Math.min(MOST_EVIDENCE, Math.log1p(0.5 * signal * signal)));
        }

        boolean near(Seen other, double share) {
            return Math.abs(hz - other.hz) < share * hz;
        }
    }

    /** One dwell: what each shaft shows of its own, and what is left over. */
    private static final class View {
        final double propellerHz;
        final double crankHz;
        final double upToHz;
        private final double reachHz;
        /** Lines that only this shaft explains, and lines that either does. */
        final List<Seen> propeller = new ArrayList<>();

        final List<Seen> crank = new ArrayList<>();
        final List<Seen> both = new ArrayList<>();
        final List<Seen> leftOver = new ArrayList<>();

        View(DwellOrders measured, double ratio, OrderTable table) {
            Dwell dwell = measured.dwell();
            propellerHz = dwell.propellerHz();
            crankHz = propellerHz * ratio;
            // Resolution of the longest stretch that steady tones are looked for in, and a hair for a drift; ours.
            reachHz = 0.4 / Math.max(1, Math.min(8, dwell.durationS() / 4)) + 0.05;
            double measuredUpToHz = measured.readings().stream()
                    .filter(reading -> reading.level() instanceof Level.Measured
                            && reading.line().role() != OrderLine.Role.MESH)
                    .mapToDouble(OrderReading::frequencyHz)
                    .max()
                    .orElse(0);
            List<Seen> others = others(measured);
            upToHz = others.stream().mapToDouble(Seen::hz).reduce(measuredUpToHz, Math::max);
            // Blocks of a second or an eighth of the dwell, but no more than 400 of them.
            double blockS = Math.max(Math.min(1, dwell.durationS() / 8), dwell.durationS() / 400);
            for (OrderReading reading : measured.readings()) {
                if (reading.level() instanceof Level.Measured level
                        && level.detected()
                        && reading.line().role() != OrderLine.Role.MESH) {
                    Seen line = Seen.of(reading.frequencyHz(), level.amplitude(), level.standardError());
                    boolean leaked = others.stream()
                            .anyMatch(other -> line.amplitude
                                    < other.amplitude / (1 + Math.PI * Math.abs(line.hz - other.hz) * blockS));
                    if (!leaked) {
                        of(reading).add(line);
                    }
                }
            }
            for (Seen other : others) {
                boolean smeared = java.util.stream.Stream.of(propeller, crank, both)
                        .flatMap(List::stream)
                        .anyMatch(line -> other.near(line, SMEARED) && other.amplitude < SMEARED_MOST * line.amplitude);
                if (ratio != table.ratio() && onCrank(table, other.hz)) {
                    crank.add(other);
                } else if (!smeared && !beyondTable(other.hz)) {
                    leftOver.add(other);
                }
            }
        }

        /** Whether a crank line lies there with the ratio as entered, before it was corrected. */
        private boolean onCrank(OrderTable table, double hz) {
            return table.lines().stream()
                    .filter(line -> line.of() == Shaft.CRANK && line.role() != OrderLine.Role.MESH)
                    .anyMatch(line -> Math.abs(line.propellerOrder() * propellerHz - hz) < reachHz + PLACED * hz);
        }

        private List<Seen> of(OrderReading reading) {
            if (!reading.inseparableFrom().isEmpty()) {
                return both;
            }
            return reading.line().of() == Shaft.PROPELLER ? propeller : crank;
        }

        /** Steady lines that turn with the machine, strongest first, each once though it may be smeared. */
        private List<Seen> others(DwellOrders measured) {
            Dwell dwell = measured.dwell();
            double wander = (dwell.maxHz() - dwell.minHz()) / propellerHz;
            double binHz = 1 / Math.max(1, Math.min(8, dwell.durationS() / 4));
            List<Seen> others = new ArrayList<>();
            for (UnexplainedLine line : measured.unexplained()) {
                // Where the speed hardly wanders, nothing shows whether a line follows it.
                boolean turns = line.followsSpeed() || wander * line.frequencyHz() < binHz;
                Seen seen = Seen.of(line.frequencyHz(), line.amplitude(), errorNear(measured, line.frequencyHz()));
                if (turns && !onMains(line) && others.stream().noneMatch(other -> other.near(seen, SMEARED))) {
                    others.add(seen);
                }
            }
            return others;
        }

        /** Whether the entered ratio explains it after all, by an order above those of the table. */
        private boolean beyondTable(double hz) {
            double order = hz / propellerHz;
            double onCrank = 2 * hz / crankHz;
            return Math.abs(order - Math.rint(order)) * propellerHz < reachHz
                    || Math.abs(onCrank - Math.rint(onCrank)) * crankHz / 2 < reachHz && onCrank > 2 * BEYOND_TABLE;
        }

        private boolean onMains(UnexplainedLine line) {
            if (line.followsSpeed()) {
                return false;
            }
            for (double mains : MAINS_HZ) {
                double multiple = Math.rint(line.frequencyHz() / mains);
                if (multiple >= 1
                        && Math.abs(line.frequencyHz() - multiple * mains) < multiple * mains * MAINS_STRAY + reachHz) {
                    return true;
                }
            }
            return false;
        }

        private static double errorNear(DwellOrders measured, double hz) {
            return measured.readings().stream()
                    .filter(reading -> reading.level() instanceof Level.Measured)
                    .min(Comparator.comparingDouble(reading -> Math.abs(reading.frequencyHz() - hz)))
                    .map(reading -> ((Level.Measured) reading.level()).standardError())
                    .orElse(Double.MAX_VALUE);
        }

        Optional<Seen> at(List<Seen> lines, double hz) {
            return lines.stream()
                    .filter(line -> Math.abs(line.hz - hz) < reachHz)
                    .findFirst();
        }
    }

    private Optional<RatioDoubt> judge() {
        List<RatioDoubt> doubts = new ArrayList<>();
        for (Shaft kept : Shaft.values()) {
            List<Double> ratios = candidates(kept);
            for (double ratio : ratios) {
                held(kept, ratio).ifPresent(doubts::add);
            }
        }
        double best = doubts.stream().mapToDouble(RatioDoubt::margin).max().orElse(0);
        return doubts.stream()
                .filter(doubt -> doubt.margin() >= NEARLY * best)
                .min(Comparator.comparingInt(this::unlikeliness)
                        .thenComparing(
                                Comparator.comparingDouble(RatioDoubt::margin).reversed()));
    }

    /** Slips of the pen before others: a ratio nearby, or one upside down. */
    private int unlikeliness(RatioDoubt doubt) {
        double off = Math.abs(Math.log(doubt.pointsTo() / doubt.entered()));
        return off < NEARBY || doubt.upsideDown() ? 0 : 1;
    }

    private List<Double> candidates(Shaft kept) {
        List<Double> ratios = new ArrayList<>();
        for (View view : views) {
            for (Seen line : view.leftOver) {
                for (OrderLine other : table.lines()) {
                    if (other.of() != kept && other.role() != OrderLine.Role.MESH) {
                        double otherHz = line.hz / other.order();
                        double ratio = kept == Shaft.PROPELLER ? otherHz / view.propellerHz : view.crankHz / otherHz;
                        // Nearer than any ratio can be told from another.
                        boolean known = ratios.stream().anyMatch(r -> Math.abs(r / ratio - 1) < 1e-4);
                        if (ratio >= LEAST_RATIO
                                && ratio <= MOST_RATIO
                                && Math.abs(ratio / table.ratio() - 1) > SAME_RATIO
                                && !known) {
                            ratios.add(ratio);
                        }
                    }
                }
            }
        }
        return ratios;
    }

    private Optional<RatioDoubt> held(Shaft kept, double ratio) {
        double other = 0;
        double entered = 0;
        double fits = 0;
        double leftOver = 0;
        int enteredLines = 0;
        boolean strongestFits = false;
        List<String> named = new ArrayList<>();
        double sumRatio = 0;
        double sumWeight = 0;
        double loudest = views.stream()
                .flatMap(view -> view.leftOver.stream())
                .mapToDouble(Seen::amplitude)
                .max()
                .orElse(0);
        for (View view : views) {
            double otherHz = kept == Shaft.PROPELLER ? view.propellerHz * ratio : view.crankHz / ratio;
            List<Seen> own = kept == Shaft.PROPELLER ? view.crank : view.propeller;
            List<Seen> keptLines = kept == Shaft.PROPELLER ? view.propeller : view.crank;
            double strongest =
                    view.leftOver.stream().mapToDouble(Seen::evidence).max().orElse(0);
            leftOver += view.leftOver.stream().mapToDouble(Seen::evidence).sum();
            double absent = 0;
            double sum = 0;
            int found = 0;
            List<Seen> explained = new ArrayList<>();
            for (OrderLine line : table.lines()) {
                double hz = line.order() * otherHz;
                if (line.of() == kept || line.role() == OrderLine.Role.MESH || hz > view.upToHz) {
                    continue;
                }
                Optional<Seen> left = view.at(view.leftOver, hz);
                Optional<Seen> already = left.isPresent() ? Optional.empty() : view.at(own, hz);
                if (left.isPresent()) {
                    fits += left.get().evidence;
                    strongestFits |= left.get().evidence >= strongest;
                    named.add(line.name());
                    sumRatio += left.get().evidence
                            * (kept == Shaft.PROPELLER
                                    ? left.get().hz / line.order() / view.propellerHz
                                    : view.crankHz * line.order() / left.get().hz);
                    sumWeight += left.get().evidence;
                }
                already.ifPresent(explained::add);
                double seen = left.or(() -> already).map(Seen::evidence).orElse(0.0);
                if (seen > 0) {
                    sum += weight(line) * seen;
                    found++;
                } else if (usual(line)
                        && view.at(keptLines, hz).isEmpty()
                        && view.at(view.both, hz).isEmpty()) {
                    absent++;
                }
            }
            other += sum - (found > 0 ? ABSENT * absent * sum / found : 0);
            for (Seen line : own) {
                if (!explained.contains(line) && line.amplitude > LEAST_SHARE * loudest) {
                    entered += line.evidence;
                    enteredLines++;
                }
            }
        }
        long lines = named.stream().distinct().count();
        boolean clear = lines >= LEAST_LINES
                && strongestFits
                && fits > SHARE_OF_LEFT_OVER * leftOver
                && other > CLEARLY * entered
                && lines * views.size() > CLEARLY * enteredLines;
        return clear
                ? Optional.of(new RatioDoubt(
                        table.ratio(),
                        sumRatio / sumWeight,
                        kept,
                        named.stream().distinct().toList(),
                        enteredLines,
                        other - CLEARLY * entered))
                : Optional.empty();
    }

    private boolean usual(OrderLine line) {
        return switch (line.role()) {
            case BLADE_PASS, FIRING, UNEVEN_PROPELLER, CRANK -> line.first();
            default -> false;
        };
    }

    /** Common practice, no source: lines that most machines show count a little more. */
    private double weight(OrderLine line) {
        return switch (line.role()) {
            case BLADE_PASS, FIRING -> usual(line) ? 1.2 : 1; // by judgement, as all of these
            case UNEVEN_PROPELLER, CRANK -> usual(line) ? 1.1 : 0.85; // by judgement
            case HALF_CRANK -> 0.75; // by judgement
            case MESH -> 0;
        };
    }
}
