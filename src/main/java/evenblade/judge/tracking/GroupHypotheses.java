package evenblade.judge.tracking;

import evenblade.judge.tracking.GroupHypothesis.Family;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * All hypotheses of the marks, each with its probability: nothing out; one blade, two, or all different; the same for
 * hub positions; a blade and a position; all of both; and each of them with one reading that slipped besides.
 *
 * <p>What is thought likely beforehand is this program's own choice: nothing is out in half of the jobs, and where
 * something is, blades and positions are equally likely, both together half as often, one rather than more. One reading
 * in fifty slips; where two shares use up all that the marks can tell, slips aren't weighed.
 */
final class GroupHypotheses {
    /** Shares before the readings: guesses of ours, not counted from real jobs. */
    private static final double NOTHING = 0.5;

    private static final double ONE_KIND = 0.2; // a guess, as above
    private static final double BOTH_KINDS = 0.1; // a guess, as above
    private static final double SINGLE_OF_FEW = 0.85; // of two or three blades mostly one is off; a guess
    private static final double SINGLE = 0.7; // a guess
    private static final double PAIR = 0.2; // a guess
    private static final double SLIPS = 0.02; // one mark in fifty is written down wrong; a guess

    /** With two blades a slip looks much like a blade and a position together. */
    private static final double SLIPS_OF_TWO = 0.005;

    /** Pairs take four: two out of three are as well one out of three and all different. */
    private static final int FEWEST_FOR_PAIRS = 4;

    /** A blade and a position. */
    private static final int SHARES_OF_BOTH = 2;

    /** With more readings, slips are weighed only beside the simpler hypotheses. */
    private static final int MANY_READINGS = 40;

    private final MarkEvidence evidence;
    private final List<Weighed> weighed;

    /**
     * A hypothesis and its probability.
     *
     * @param hypothesis the hypothesis
     * @param probability 0 to 1; all add up to 1
     */
    record Weighed(GroupHypothesis hypothesis, double probability) {}

    private record Prior(GroupHypothesis hypothesis, double share) {}

    private GroupHypotheses(MarkEvidence evidence) {
        this.evidence = evidence;
        List<Prior> priors = priors();
        boolean spare = evidence.told() > SHARES_OF_BOTH;
        double slips =
                spare ? 1 - Math.pow(1 - (evidence.blades() == 2 ? SLIPS_OF_TWO : SLIPS), evidence.readings()) : 0;
        List<GroupHypothesis> all = new ArrayList<>();
        List<Double> logs = new ArrayList<>();
        for (Prior prior : priors) {
            all.add(prior.hypothesis);
            logs.add(Math.log(prior.share * (1 - slips)) + evidence.log(prior.hypothesis));
            int size = prior.hypothesis.blades().size()
                    + prior.hypothesis.positions().size();
            if (!spare || evidence.readings() > MANY_READINGS && size > 1) {
                continue;
            }
            for (int r = 0; r < evidence.readings(); r++) {
                GroupHypothesis slipped = prior.hypothesis.with(r);
                all.add(slipped);
                logs.add(Math.log(prior.share * slips / evidence.readings()) + evidence.log(slipped));
            }
        }
        double most = logs.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
        double sum = logs.stream().mapToDouble(l -> Math.exp(l - most)).sum();
        weighed = IntStream.range(0, all.size())
                .mapToObj(i -> new Weighed(all.get(i), Math.exp(logs.get(i) - most) / sum))
                .toList();
    }

    static GroupHypotheses of(SwapModel model) {
        return new GroupHypotheses(new MarkEvidence(model.sessions(), model.blades(), model.errorsMm()));
    }

    double probability(Predicate<GroupHypothesis> which) {
        return weighed.stream()
                .filter(w -> which.test(w.hypothesis))
                .mapToDouble(Weighed::probability)
                .sum();
    }

    double probability(Family family) {
        return probability(e -> e.family() == family);
    }

    /** The most probable of a family, a slip left out of account. */
    GroupHypothesis best(Family family) {
        return weighed.stream()
                .filter(w -> w.hypothesis.family() == family)
                .collect(Collectors.groupingBy(
                        w -> new GroupHypothesis(w.hypothesis.blades(), w.hypothesis.positions(), OptionalInt.empty()),
                        java.util.LinkedHashMap::new,
                        Collectors.summingDouble(Weighed::probability)))
                .entrySet()
                .stream()
                .max(Comparator.comparingDouble(e -> e.getValue()))
                .orElseThrow()
                .getKey();
    }

    /** The most probable of what else is out where the mark of a session and position, both from 0, slipped. */
    GroupHypothesis bestBesideSlip(int session, int position) {
        return weighed.stream()
                .filter(w -> w.hypothesis.slip().isPresent())
                .filter(w -> {
                    int[] place = evidence.place(w.hypothesis.slip().getAsInt());
                    return place[0] == session && place[1] == position;
                })
                .max(Comparator.comparingDouble(Weighed::probability))
                .orElseThrow()
                .hypothesis();
    }

    /** Session and position, from 0, of the mark that most probably slipped; nothing where none stands out. */
    Optional<int[]> slipped(double surely) {
        double slips = probability(e -> e.slip().isPresent());
        return weighed.stream()
                .filter(w -> w.hypothesis.slip().isPresent())
                .collect(Collectors.groupingBy(
                        w -> {
                            int[] place = evidence.place(w.hypothesis.slip().getAsInt());
                            return List.of(place[0], place[1]);
                        },
                        java.util.LinkedHashMap::new,
                        Collectors.summingDouble(Weighed::probability)))
                .entrySet()
                .stream()
                .max(Comparator.comparingDouble(e -> e.getValue()))
                .filter(e -> e.getValue() >= surely * slips)
                .map(e -> new int[] {e.getKey().get(0), e.getKey().get(1)});
    }

    private List<Prior> priors() {
        List<Prior> priors = new ArrayList<>();
        priors.add(new Prior(hypothesis(Set.of(), Set.of()), NOTHING));
        for (Set<Integer> blades : groups(evidence.blades())) {
            priors.add(new Prior(hypothesis(blades, Set.of()), ONE_KIND * share(blades, evidence.blades())));
        }
        for (Set<Integer> positions : groups(evidence.positions())) {
            priors.add(new Prior(hypothesis(Set.of(), positions), ONE_KIND * share(positions, evidence.positions())));
        }
        // Four in five of both kinds are one blade and one position, the rest all of both; a guess.
        double pairs = 0.8 / evidence.blades() / evidence.positions();
        for (int b = 0; b < evidence.blades(); b++) {
            for (int p = 0; p < evidence.positions(); p++) {
                priors.add(new Prior(hypothesis(Set.of(b), Set.of(p)), BOTH_KINDS * pairs));
            }
        }
        // The rest, as above.
        priors.add(new Prior(hypothesis(all(evidence.blades()), all(evidence.positions())), BOTH_KINDS * 0.2));
        return priors;
    }

    private static GroupHypothesis hypothesis(Set<Integer> blades, Set<Integer> positions) {
        return new GroupHypothesis(blades, positions, OptionalInt.empty());
    }

    private static Set<Integer> all(int count) {
        return IntStream.range(0, count).boxed().collect(Collectors.toCollection(TreeSet::new));
    }

    /** Each alone, each two, and all. */
    private static List<Set<Integer>> groups(int count) {
        List<Set<Integer>> groups = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            groups.add(Set.of(i));
            for (int j = i + 1; j < count && count >= FEWEST_FOR_PAIRS; j++) {
                groups.add(Set.of(i, j));
            }
        }
        groups.add(all(count));
        return groups;
    }

    private static double share(Set<Integer> group, int count) {
        if (group.size() == 1) {
            return (count >= FEWEST_FOR_PAIRS ? SINGLE : SINGLE_OF_FEW) / count;
        }
        if (group.size() == count) {
            return count >= FEWEST_FOR_PAIRS ? 1 - SINGLE - PAIR : 1 - SINGLE_OF_FEW;
        }
        return PAIR / (count * (count - 1) / 2.0);
    }
}
