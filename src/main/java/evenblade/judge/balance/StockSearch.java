package evenblade.judge.balance;

import evenblade.base.numeric.Phasor;
import evenblade.judge.balance.BalanceRequest.HubPlace;
import evenblade.judge.balance.Split.Share;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * The best set of weights that a shop has, on at most {@value #MOST_PLACES} places. Of each mass in stock as many are
 * taken as are needed.
 *
 * <p>All sets of places are tried with all masses that pieces of the stock make up, at most so much at one place. What is
 * left of the correction decides; of sets that leave about the same (within {@link #ALIKE} of the correction's error) the
 * one on fewest places, then the one with the fewest pieces, then the lightest.
 */
public final class StockSearch {
    /** A correction is a sum of two neighbours; a third place takes up the steps of the stock. */
    static final int MOST_PLACES = 3;
    /** Differences of this share of the correction's standard error can't be seen in a run. */
    private static final double ALIKE = 0.25;
    /** Pieces at one place, so that a fine stock can't make the search endless. */
    private static final int MOST_PIECES = 8;
    /** Once pieces make up so many masses, no more pieces are added. */
    private static final int MOST_SUMS = 200;
    /** With more masses than this two places come near enough, and three would be slow to try. */
    private static final int FINE = 60;
    /** Places next to the wanted angle that are tried. */
    private static final int NEAREST_PLACES = 8;
    /** Where no largest mass is given: no place needs more than this many times the correction. */
    private static final double FAR = 1.5;
    /** Masses closer than this in g are the same: below any scale of a shop. */
    private static final double SAME_G = 1e-3;

    private final Unbalance correction;
    private final List<HubPlace> places;
    private final List<Pile> piles;
    private final List<Split> found = new ArrayList<>();

    private record Pile(double massG, List<Double> pieces) {}

    private StockSearch(Unbalance correction, List<HubPlace> places, List<Pile> piles) {
        this.correction = correction;
        this.places = places;
        this.piles = piles;
    }

    /**
     * Searches.
     *
     * @param correction what is wanted
     * @param errorGmm its standard error
     * @param places at least one
     * @param stockG masses of the kinds of weight, each above zero; at least one
     * @param largestG the most at one place
     */
    public static Split best(
            Unbalance correction,
            double errorGmm,
            List<HubPlace> places,
            List<Double> stockG,
            OptionalDouble largestG) {
        double nearest = places.stream().mapToDouble(HubPlace::radiusMm).min().orElseThrow();
        double most = largestG.orElse(FAR * correction.gramsAt(nearest));
        List<HubPlace> near = places.stream()
                .sorted(Comparator.comparingDouble(p -> Math.abs(Correction.turn(p.angleDeg(), correction.angleDeg()))))
                .limit(NEAREST_PLACES)
                .toList();
        StockSearch search = new StockSearch(correction, near, piles(stockG, most));
        search.found.add(new Split(List.of(), correction.gmm()));
        search.extend(new ArrayList<>(), 0, correction.vectorGmm());
        double least = search.found.stream().mapToDouble(Split::leftGmm).min().orElseThrow();
        double alike = least + ALIKE * errorGmm;
        return search.found.stream()
                .filter(s -> s.leftGmm() <= alike)
                .min(Comparator.<Split>comparingInt(s -> s.shares().size())
                        .thenComparingInt(s -> s.shares().stream()
                                .mapToInt(h -> h.piecesG().size())
                                .sum())
                        .thenComparingDouble(Split::leftGmm)
                        .thenComparingDouble(Split::totalG))
                .orElseThrow();
    }

    /** Adds one place; the last one is solved for, the ones before it take every pile. */
    private void extend(List<Share> on, int from, Phasor left) {
        for (int p = from; p < places.size(); p++) {
            HubPlace place = places.get(p);
            nearest(place, left).forEach(pile -> keep(on, place, pile));
            if (on.size() + 1 < (piles.size() > FINE ? MOST_PLACES - 1 : MOST_PLACES)) {
                for (Pile pile : piles) {
                    on.add(new Share(place, pile.massG, pile.pieces));
                    extend(on, p + 1, left.minus(place.with(pile.massG).vectorGmm()));
                    on.remove(on.size() - 1);
                }
            }
        }
    }

    private void keep(List<Share> on, HubPlace place, Pile pile) {
        List<Share> all = new ArrayList<>(on);
        all.add(new Share(place, pile.massG, pile.pieces));
        double left = correction.minus(new Split(all, 0).sum()).gmm();
        // Everything far worse than the best so far is dropped at once.
        if (found.isEmpty() || left < 2 * found.get(found.size() - 1).leftGmm() + SAME_G) {
            found.add(new Split(all, left));
        }
    }

    /** The piles just below and just above what is left along a place. */
    private List<Pile> nearest(HubPlace place, Phasor left) {
        Phasor unit = Phasor.ofDegrees(1, place.angleDeg());
        double wanted = (left.re() * unit.re() + left.im() * unit.im()) / place.radiusMm();
        List<Pile> near = new ArrayList<>();
        for (int i = 0; i < piles.size(); i++) {
            boolean below = piles.get(i).massG <= wanted && (i + 1 == piles.size() || piles.get(i + 1).massG > wanted);
            boolean above = piles.get(i).massG > wanted && (i == 0 || piles.get(i - 1).massG <= wanted);
            if (wanted > 0 && (below || above)) {
                near.add(piles.get(i));
            }
        }
        return near;
    }

    /** Every mass up to the most, made of as few pieces as possible; lightest first. */
    private static List<Pile> piles(List<Double> stockG, double mostG) {
        TreeMap<Long, List<Double>> known = new TreeMap<>();
        List<Double> kinds =
                stockG.stream().distinct().sorted(Comparator.reverseOrder()).toList();
        List<List<Double>> last = List.of(List.of());
        for (int count = 1; count <= MOST_PIECES && known.size() < MOST_SUMS; count++) {
            List<List<Double>> next = new ArrayList<>();
            for (List<Double> pile : last) {
                for (double kind : kinds) {
                    boolean descending = pile.isEmpty() || kind <= pile.get(pile.size() - 1);
                    double sum = sum(pile) + kind;
                    if (descending && sum <= mostG + SAME_G) {
                        List<Double> more = new ArrayList<>(pile);
                        more.add(kind);
                        if (known.putIfAbsent(Math.round(sum / SAME_G), more) == null) {
                            next.add(more);
                        }
                    }
                }
            }
            last = next;
        }
        return known.values().stream()
                .map(pieces -> new Pile(sum(pieces), pieces))
                .toList();
    }

    private static double sum(List<Double> pieces) {
        return pieces.stream().mapToDouble(d -> d).sum();
    }
}
