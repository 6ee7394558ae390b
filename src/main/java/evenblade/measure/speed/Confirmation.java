package evenblade.measure.speed;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Shaft;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.IntToDoubleFunction;

/**
 * Whether the lines of a stretch show that this machine turns at this speed.
 *
 * <p>Counted is what agrees: the lines of the table that stand where they are expected, none for more than one. A count
 * alone says little, for rooms and other machines have lines too. So the same count is made in this very recording with
 * tables that are wrong on purpose, each at its best speed: with the two shafts' combs shifted against each other
 * ({@value #DETUNED} wrong ratios), or, where there is one shaft, with every order moved by itself. The right table must
 * beat all but {@value #CHANCE} of them, and at no other speed may it do clearly better.
 *
 * <p>Of two shafts both must be heard, and of one shaft lines that aren't all multiples of the same one. What lies on a
 * multiple of the grid's own frequency counts for nobody.
 */
final class Confirmation {
    /**
     * Share of the wrong ratios that may do as well. Two series of lines, blade pass and firing with their multiples,
     * can be explained by a few other ratios too, whatever stands: up to 7.6 % in runs of true machines.
     */
    private static final double CHANCE_OF_RATIO = 0.078;
    /** Share of the scrambled tables that may do as well. */
    private static final double CHANCE_OF_ORDERS = 0.01;
    /** Credit below which nothing is confirmed: rooms come to 1.7 by chance, true machines to 3 and more. */
    private static final double LEAST_CREDIT = 2.0;
    /** Where one shaft has nothing to agree with, no second shaft and no dial: other machines' series come to 2.4. */
    private static final double LEAST_CREDIT_OF_ONE = 2.5;
    /** Each shaft must bring so much of it: a line that is usually there, in full, or several others. */
    private static final double LEAST_OF_SHAFT = 0.3;
    /** Highest order to which the first main line of a wrong table is moved. */
    private static final double MAIN_UP_TO = 12;
    /** Wrong ratios tried, evenly over ± {@link #DETUNED_BY} in logarithm. */
    private static final int DETUNED = 300;

    private static final double DETUNED_BY = 0.5; // in logarithm; ours: wrong ratios up to 65 % off are tried
    /** A ratio nearer than this is the right one for short spectra. */
    private static final double SAME_RATIO = 0.012;
    /** Moves the engine's lines off the propeller's by more than a hundredth of a turn, by less than a ratio is told by. */
    private static final double ASIDE = 1.011;
    /** Wrong tables of a machine with one shaft. */
    private static final int SCRAMBLED = 200;
    /** Share by which a scrambled order is moved at most. */
    private static final double SCRAMBLED_BY = 0.12;
    /**
     * Two lines agree, one more makes it no chance: common practice, no source. Where a speed was read off and blade pass
     * and firing stand there, it is the third.
     */
    private static final int LEAST_LINES = 3;

    /** So many lines of one shaft, low and high, pin its speed: a series of another spacing misses most of them. */
    private static final int PINNED_BY = 7;
    /** ... where they stand out like a machine's: in runs of the rig 0.56 a line and more, in rooms 0.4 and less. */
    private static final double PINNED_CREDIT = 0.5;

    private static final int SLOWEST_PART = 4; // ours: a quarter of the speed and less isn't taken for it
    /** A part of a speed does as well from this share on: a wrong one misses half its lines. */
    private static final double AS_GOOD = 0.9;
    /** ... or from this share on where it explains so much by itself: a strong line, or several. */
    private static final double WELL_ENOUGH = 0.55;

    private static final double LEAST_ALONE = 0.9; // ours
    /**
     * ... and from this much on it explains a line between at all: where all stand at multiples of it, they are the once per
     * turn, the blade pass and the firing of the faster speed.
     */
    private static final double LEAST_BETWEEN = 0.07;

    private static final double HARDLY_WEAKER = 2; // in evidence, a logarithm of power over the floor: 9 dB; ours
    /** Lines nearer than this, in resolutions, are one. */
    private static final double SAME_LINE = 0.8;
    /** Grid places beside a speed that are still that speed. */
    private static final int BESIDE = 6;

    /** Speeds nearer than this are one speed. */
    private static final double SAME_SPEED = 0.01;
    /**
     * The judgement.
     *
     * @param propellerHz where the table does best
     * @param by the lines that stand there, strongest first
     * @param doubts empty where confirmed
     * @param credit of the right table at its best
     * @param chance share of wrong tables that did as well; 1 where another machine's explains more, or too little stands
     * @param better another entry that explains clearly more, if there is one
     */
    record Judgement(
            double propellerHz,
            List<OrderLine> by,
            List<SpeedDoubt> doubts,
            double credit,
            double chance,
            Optional<BetterEntry> better) {
        boolean confirmed() {
            return doubts.isEmpty();
        }

        DoubtfulDwell doubted(DwellFinder.Stretch stretch, SpeedDoubt doubt) {
            return new DoubtfulDwell(stretch.fromS(), stretch.toS(), propellerHz, doubt);
        }
    }

    private final OrderTable table;
    private final Comb comb;
    private final SpeedPrior prior;
    private final WhitenedLines spectrum;
    private final boolean twoShafts;
    private final boolean hum;

    private Confirmation(OrderTable table, Comb comb, SpeedPrior prior, WhitenedLines spectrum, boolean hum) {
        this.hum = hum;
        this.table = table;
        this.comb = comb;
        this.prior = prior;
        this.spectrum = spectrum;
        this.twoShafts = comb.teeth().stream().anyMatch(tooth -> !isWhole(2 * tooth.order()));
    }

    /**
     * @param spectrum of the stretch, along the path found, without mains hum
     * @param hum whether there was any
     * @param table the lines of the machine
     * @param prior where its speed may lie
     */
    static Judgement of(WhitenedLines spectrum, boolean hum, OrderTable table, Comb comb, SpeedPrior prior) {
        return new Confirmation(table, comb, prior, spectrum, hum).judge();
    }

    private Judgement judge() {
        return twoShafts ? judgeTwoShafts() : judgeOneShaft();
    }

    /** Distinct teeth of a shaft, as orders of that shaft's own speed; those that fall on the propeller's count there. */
    private double[] ofShaft(Shaft shaft) {
        return comb.teeth().stream()
                .filter(t -> shaftOf(t.line()) == shaft)
                .mapToDouble(t -> shaft == Shaft.CRANK ? t.order() / table.ratio() : t.order())
                .toArray();
    }

    private double[] weightsOf(Shaft shaft) {
        return comb.teeth().stream()
                .filter(t -> shaftOf(t.line()) == shaft)
                .mapToDouble(Comb.ExpectedLine::weight)
                .toArray();
    }

    /** The propeller where the line is a whole order of it, whatever else makes it. */
    private static Shaft shaftOf(OrderLine line) {
        boolean whole = Math.abs(line.propellerOrder() - Math.rint(line.propellerOrder())) < 0.01;
        return line.of() == Shaft.PROPELLER || whole ? Shaft.PROPELLER : Shaft.CRANK;
    }

    /**
     * What the lines of both shafts come to, each on the speeds of its shaft.
     *
     * @param alone the crank's with what an entered speed adds
     */
    private record Scores(CombScore crank, CombScore propeller, double[] alone) {}

    private Scores scores() {
        double ratio = table.ratio();
        CombScore crank = new CombScore(
                spectrum, ofShaft(Shaft.CRANK), weightsOf(Shaft.CRANK), prior.fromHz() * ratio, prior.toHz() * ratio);
        double reach = Math.exp(DETUNED_BY + 0.01);
        CombScore propeller = new CombScore(
                spectrum,
                ofShaft(Shaft.PROPELLER),
                weightsOf(Shaft.PROPELLER),
                prior.fromHz() / reach,
                prior.toHz() * reach);
        double[] alone = new double[crank.size()];
        for (int i = 0; i < alone.length; i++) {
            alone[i] = crank.at(i) + prior.bonus(crank.hz(i) / ratio);
        }
        return new Scores(crank, propeller, alone);
    }

    /**
     * A ratio that explains clearly more where all of the engine's lines were expected on the propeller's, as with a ratio of
     * 3: there both shafts look like one, which agrees with nothing if the ratio is another.
     *
     * @param most what the entry comes to
     */
    private Optional<BetterEntry> otherThanWhole(double most) {
        if (Math.abs(table.ratio() - 1) < OrderTable.COINCIDENT) {
            return Optional.empty();
        }
        OrderTable apart = new OrderTable(
                table.lines().stream()
                        .map(line -> line.of() == Shaft.PROPELLER ? line : beside(line))
                        .toList(),
                table.blades(),
                table.ratio() * ASIDE,
                table.exactness());
        Comb twoCombs = Comb.of(apart);
        Scores scores = new Confirmation(apart, twoCombs, prior, spectrum, hum).scores();
        return EntryRivals.of(
                        spectrum, apart, twoCombs, prior, scores.alone(), scores.crank(), scores.propeller(), most, 0)
                .filter(entry -> entry.ratio().isPresent());
    }

    private static OrderLine beside(OrderLine line) {
        return new OrderLine(
                line.of(), line.order(), line.propellerOrder() * ASIDE, line.name(), line.role(), line.multiple());
    }

    private Judgement judgeTwoShafts() {
        double ratio = table.ratio();
        Scores scores = scores();
        CombScore crank = scores.crank();
        CombScore propeller = scores.propeller();
        double[] alone = scores.alone();
        int right = propeller.shift(crank, ratio);
        int best = slowest(crank, ratio, i -> alone[i] + propeller.atOrNone(i + right));
        double most = alone[best] + propeller.atOrNone(best + right);
        int asGood = 0;
        int tried = 0;
        for (int d = 0; d < DETUNED; d++) {
            double off = DETUNED_BY * (2.0 * d / (DETUNED - 1) - 1);
            if (Math.abs(off) > SAME_RATIO) {
                tried++;
                int wrong = propeller.shift(crank, ratio * Math.exp(off));
                boolean reached = false;
                for (int i = 0; i < alone.length && !reached; i++) {
                    reached = alone[i] + propeller.atOrNone(i + wrong) >= most;
                }
                asGood += reached ? 1 : 0;
            }
        }
        double hz = crank.hz(best) / ratio;
        Optional<BetterEntry> better =
                EntryRivals.of(spectrum, table, comb, prior, alone, crank, propeller, most, best);
        return judged(hz, most - prior.bonus(hz), asGood / (double) tried, CHANCE_OF_RATIO, better);
    }

    private Judgement judgeOneShaft() {
        double[] orders =
                comb.teeth().stream().mapToDouble(Comb.ExpectedLine::order).toArray();
        double[] weights =
                comb.teeth().stream().mapToDouble(Comb.ExpectedLine::weight).toArray();
        CombScore right = new CombScore(spectrum, orders, weights, prior.fromHz(), prior.toHz());
        int best = best(right);
        double most = right.at(best) + prior.bonus(right.hz(best));
        if (right.at(best) < (prior.expects(right.hz(best)) ? LEAST_CREDIT : LEAST_CREDIT_OF_ONE)) {
            return judged(right.hz(best), right.at(best), 1, CHANCE_OF_ORDERS, otherThanWhole(most));
        }
        Random random = new Random(orders.length);
        int asGood = 0;
        for (int s = 0; s < SCRAMBLED; s++) {
            double[] moved = Arrays.stream(orders)
                    .map(o -> o * Math.exp(SCRAMBLED_BY * (2 * random.nextDouble() - 1)))
                    .toArray();
            asGood += best(moved, weights) >= most ? 1 : 0;
        }
        double chance = asGood / (double) SCRAMBLED;
        boolean open = !prior.expects(right.hz(best)) && !pinned(right.hz(best), right.at(best));
        boolean other = chance <= CHANCE_OF_ORDERS && open && rivalled(right.hz(best));
        return judged(right.hz(best), right.at(best), other ? 1 : chance, CHANCE_OF_ORDERS, otherThanWhole(most));
    }

    /** Whether so many lines stand, and so clearly, that no series of another spacing can be meant. */
    private boolean pinned(double hz, double credit) {
        int lines = standing(hz).size();
        return lines >= PINNED_BY && credit >= PINNED_CREDIT * lines;
    }

    /**
     * Whether a machine whose main lines lie at other orders explains more: then it is a series of lines, but not this
     * machine's. Strength counts here, for a series may show every line of a table.
     */
    private boolean rivalled(double hz) {
        double unit = comb.teeth().stream().anyMatch(t -> !isWhole(t.order())) ? 0.5 : 1;
        double[] mains = comb.teeth().stream()
                .filter(Comb.ExpectedLine::main)
                .mapToDouble(Comb.ExpectedLine::order)
                .toArray();
        double first = Arrays.stream(mains).min().orElse(1);
        double own = strength(1, unit, hz);
        for (double to = unit; to <= MAIN_UP_TO; to += unit) {
            double scale = to / first;
            boolean onGrid = Arrays.stream(mains).allMatch(m -> isWhole(m * scale / unit));
            if (onGrid && Math.abs(scale - 1) > 1e-9) {
                CombScore grid = new CombScore(spectrum, new double[0], new double[0], prior.fromHz(), prior.toHz());
                for (int i = 0; i < grid.size(); i++) {
                    if (strength(scale, unit, grid.hz(i)) > own) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** What a table comes to whose main lines lie at {@code scale} times their orders in this one. */
    private double strength(double scale, double unit, double hz) {
        double sum = 0;
        int count = (int) Math.round(comb.highestOrder() * Math.max(1, scale) / unit);
        for (int i = 1; i <= count; i++) {
            double order = i * unit;
            sum += Comb.weightAt(comb, order, scale) * spectrum.strength(order * hz);
        }
        return sum;
    }

    /** What a table comes to at its best speed. */
    private double best(double[] orders, double[] weights) {
        CombScore score = new CombScore(spectrum, orders, weights, prior.fromHz(), prior.toHz());
        int at = best(score);
        return score.at(at) + prior.bonus(score.hz(at));
    }

    private static boolean isWhole(double value) {
        return Math.abs(value - Math.rint(value)) < 1e-6;
    }

    private int best(CombScore score) {
        return slowest(score, 1, i -> score.at(i) + prior.bonus(score.hz(i)));
    }

    /**
     * The place that does best; where a half, a third or a quarter of that speed does nearly as well, that one: it
     * explains the lines between too, which the faster one leaves over.
     */
    private int slowest(CombScore grid, double ratio, IntToDoubleFunction score) {
        int best = 0;
        double most = -1;
        for (int i = 0; i < grid.size(); i++) {
            double value = score.applyAsDouble(i);
            if (value > most) {
                most = value;
                best = i;
            }
        }
        for (int part = SLOWEST_PART; part > 1; part--) {
            int middle = best - (int) Math.rint(Math.log(part) / WhitenedLines.STEP);
            if (middle >= BESIDE && middle < grid.size()) {
                int slower = climbed(middle, grid.size(), score);
                double value = score.applyAsDouble(slower);
                double only = onlyAt(grid.hz(slower) / ratio, grid.hz(best) / ratio);
                boolean alone = value > WELL_ENOUGH * most && only > LEAST_ALONE;
                if (mainsStand(grid.hz(slower) / ratio)
                        && mainsLead(grid.hz(slower) / ratio, grid.hz(best) / ratio)
                        && (value > AS_GOOD * most && only > LEAST_BETWEEN || alone)) {
                    return slower;
                }
            }
        }
        return best;
    }

    /** Whether the first blade pass and the first firing stand: a part of the true speed has one of them by luck alone. */
    private boolean mainsStand(double hz) {
        return comb.teeth().stream()
                .filter(Comb.ExpectedLine::first)
                .allMatch(t -> spectrum.stands(t.order() * hz) || t.order() * hz < spectrum.lowestHz());
    }

    /**
     * Whether the first blade pass and the first firing of a slower speed are hardly weaker than those of the faster one,
     * which would be their multiples: a mount that is loose makes weak lines at halves.
     */
    private boolean mainsLead(double slowerHz, double fasterHz) {
        return comb.teeth().stream()
                .filter(Comb.ExpectedLine::first)
                .allMatch(t -> t.order() * slowerHz < spectrum.lowestHz()
                        || spectrum.evidence(t.order() * slowerHz)
                                > spectrum.evidence(t.order() * fasterHz) - HARDLY_WEAKER);
    }

    /** Credit of lines that stand at one speed and that no line of the other explains. */
    private double onlyAt(double hz, double otherHz) {
        return comb.teeth().stream()
                .filter(t -> comb.teeth().stream()
                        .noneMatch(o ->
                                Math.abs(o.order() * otherHz - t.order() * hz) < SAME_LINE * spectrum.resolutionHz()))
                .mapToDouble(t -> t.weight() * spectrum.credit(t.order() * hz))
                .sum();
    }

    private static int climbed(int from, int size, IntToDoubleFunction score) {
        int best = from;
        for (int i = Math.max(0, from - BESIDE); i <= Math.min(size - 1, from + BESIDE); i++) {
            if (score.applyAsDouble(i) > score.applyAsDouble(best)) {
                best = i;
            }
        }
        return best;
    }

    private Judgement judged(double hz, double credit, double chance, double mostChance, Optional<BetterEntry> better) {
        List<OrderLine> by = standing(hz);
        List<SpeedDoubt> doubts = new ArrayList<>();
        if (by.isEmpty()) {
            doubts.add(hum ? SpeedDoubt.ONLY_MAINS : SpeedDoubt.NOTHING_STANDS);
        } else if (by.size() == 1) {
            doubts.add(SpeedDoubt.ONE_LINE);
        } else if (twoShafts && Arrays.stream(Shaft.values()).anyMatch(shaft -> creditOf(shaft, hz) < LEAST_OF_SHAFT)) {
            doubts.add(SpeedDoubt.ONE_SHAFT);
        } else if (!twoShafts && oneSeries(by)) {
            doubts.add(SpeedDoubt.ONE_SERIES);
        } else if (by.size() < LEAST_LINES && !(twoShafts && prior.readOff(hz) && mainsStand(hz))) {
            doubts.add(SpeedDoubt.TWO_LINES);
        }
        if (chance > mostChance || credit < LEAST_CREDIT) {
            doubts.add(SpeedDoubt.CHANCE);
        }
        Optional<BetterEntry> told = better.filter(entry -> entry.ratio().isPresent())
                .or(() -> otherBladesLead(hz))
                .or(() -> better.filter(entry -> !entry.sameSpeed() || !ownBladesLead(by) && !bladePassHidden(hz)));
        told.ifPresent(
                entry -> doubts.add(0, entry.blades().isPresent() ? SpeedDoubt.OTHER_BLADES : SpeedDoubt.OTHER_RATIO));
        if (doubts.isEmpty() && Math.abs(hz / spectrum.meanHz() - 1) > SAME_SPEED) {
            doubts.add(SpeedDoubt.OTHER_SPEED);
        }
        return new Judgement(hz, by, doubts, credit, chance, told);
    }

    /**
     * Whether the strongest propeller order above 1× is blade pass or a multiple of it, and blade pass itself stands.
     * Then the entered count stands at that speed, though a count with more lines in its table finds more of them.
     *
     * @param by strongest first
     */
    private static boolean ownBladesLead(List<OrderLine> by) {
        boolean leads = by.stream()
                .filter(line -> line.of() == Shaft.PROPELLER && !line.propellerOnce())
                .findFirst()
                .filter(line -> line.role() == OrderLine.Role.BLADE_PASS)
                .isPresent();
        return leads && by.size() >= PINNED_BY && by.stream().anyMatch(OrderLine::bladePass);
    }

    /** Whether blade pass lies where hum was taken out: its absence says nothing about the blades. */
    private boolean bladePassHidden(double hz) {
        return spectrum.takenOut(table.blades() * hz);
    }

    private Optional<BetterEntry> otherBladesLead(double hz) {
        OptionalInt other = BladeLead.other(spectrum, table, hz);
        return other.isPresent() ? Optional.of(BetterEntry.blades(other.getAsInt(), true)) : Optional.empty();
    }

    private double creditOf(Shaft shaft, double hz) {
        return comb.teeth().stream()
                .filter(t -> shaftOf(t.line()) == shaft)
                .mapToDouble(t -> t.weight() * spectrum.credit(t.order() * hz))
                .sum();
    }

    /** Lines of the table that stand at a speed, strongest first; two at one place count once. */
    private List<OrderLine> standing(double hz) {
        List<OrderLine> lines = new ArrayList<>();
        List<Double> places = new ArrayList<>();
        comb.teeth().stream()
                .filter(t -> spectrum.stands(t.order() * hz))
                .sorted(Comparator.comparingDouble((Comb.ExpectedLine t) -> -spectrum.evidence(t.order() * hz)))
                .forEach(t -> {
                    double place = t.order() * hz;
                    if (places.stream().noneMatch(p -> Math.abs(p - place) < SAME_LINE * spectrum.resolutionHz())) {
                        places.add(place);
                        lines.add(t.line());
                    }
                });
        return lines;
    }

    /** Whether all are multiples of one that is more than once per turn: any machine with that speed shows them too. */
    private static boolean oneSeries(List<OrderLine> lines) {
        long common = 0;
        for (OrderLine line : lines) {
            long halves = Math.round(2 * line.propellerOrder());
            while (halves != 0) {
                long rest = common % halves;
                common = halves;
                halves = rest;
            }
        }
        return common > 2;
    }
}
