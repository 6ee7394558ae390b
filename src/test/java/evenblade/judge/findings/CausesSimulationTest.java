package evenblade.judge.findings;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.rig.Fault;
import evenblade.rig.ShakingMachine;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The rules on machines of a rig whose makers didn't see them: any engine, drive, blade count, body, place of the sensor.
 * Seeds 1 to 40 were looked at while the rules were written; these were not. The lines come from the rig's own record with
 * a good measurement's scatter ({@link RigCase}). Counts are binomial: the bounds lie two standard errors below what was
 * measured (docs/figures.md), so that a rule may be changed, not broken.
 */
@Tag("long")
class CausesSimulationTest {
    private static final long FIRST = Long.getLong("rig.from", 101);
    private static final long LAST = Long.getLong("rig.to", 140);

    static final Map<Fault.Kind, Cause> MEANT = Map.of(
            Fault.Kind.PROPELLER_MASS, Cause.MASS,
            Fault.Kind.TRACK, Cause.TRACK,
            Fault.Kind.PITCH, Cause.PITCH,
            Fault.Kind.FLANGE_RUN_OUT, Cause.FLANGE,
            Fault.Kind.WEAK_CYLINDER, Cause.WEAK_CYLINDER,
            Fault.Kind.CRANK_MASS, Cause.CRANK,
            Fault.Kind.CARBURETTORS, Cause.CARBURETTORS,
            Fault.Kind.DRIVE, Cause.DRIVE,
            Fault.Kind.MOUNT_RESONANCE, Cause.RESONANCE,
            Fault.Kind.LOOSE_MOUNT, Cause.LOOSE_MOUNT);

    /** Faults whose line is propeller 1×. */
    private static final Set<Fault.Kind> ONCE = Set.of(
            Fault.Kind.PROPELLER_MASS,
            Fault.Kind.TRACK,
            Fault.Kind.PITCH,
            Fault.Kind.FLANGE_RUN_OUT,
            Fault.Kind.MOUNT_RESONANCE);

    /** What blames nothing. */
    private static final Set<Cause> BLAMES_NOTHING = Set.of(Cause.INSEPARABLE, Cause.UNTOLD, Cause.THROB);

    private record Outcome(long seed, RigCase one, List<Fault.Kind> kinds, List<Finding> findings) {
        Set<Cause> meant() {
            return kinds.stream().map(MEANT::get).collect(Collectors.toSet());
        }

        boolean right() {
            return !findings.isEmpty() && meant().contains(findings.get(0).cause());
        }

        /** Right, or one of two that the engine's kind leaves alike, with that said. */
        boolean rightOrAlike() {
            return right() || !findings.isEmpty() && alike() && findings.get(0).cause() == Cause.WEAK_CYLINDER;
        }

        /** Whether the first cause that is named, alone or as the likeliest of several, is the right one. */
        boolean firstNamed() {
            return right()
                    || !findings.isEmpty()
                            && findings.get(0).among().stream().limit(1).anyMatch(meant()::contains);
        }

        /** Whether the cause that is named first is one that is there, and the one that shakes more. */
        boolean firstIsTheLargest() {
            boolean massFirst = !findings.isEmpty()
                    && (findings.get(0).cause() == Cause.MASS
                            || findings.get(0).among().stream().limit(1).anyMatch(Cause.MASS::equals));
            return firstNamed() || massFirst && ownMass() && one.ownOnceMmS() > one.madeMmS();
        }

        /** Whether one place can tell the fault: it shakes enough, has a line to itself, and no other fault is the same. */
        boolean tellable() {
            double ratio = one.installation().reduction().ratio();
            boolean alike = kinds.contains(Fault.Kind.WEAK_CYLINDER) || kinds.contains(Fault.Kind.CARBURETTORS);
            int cylinders = one.installation().engine().cylinders();
            boolean onFiring = kinds.contains(Fault.Kind.CRANK_MASS)
                    && one.installation().engine().firingOrder() == 1;
            return !belowFloor()
                    && ratio != Math.rint(ratio)
                    && !onFiring
                    && !(alike && (cylinders < 4 || cylinders % 2 == 1));
        }

        /** Right, or several named together with the right one among them. */
        boolean rightOrAmong() {
            return rightOrAlike()
                    || !findings.isEmpty() && findings.get(0).among().stream().anyMatch(meant()::contains);
        }

        /** Whether the fault shakes less than any line that is blamed; then there is nothing to find. */
        boolean belowFloor() {
            boolean once = kinds.stream().allMatch(ONCE::contains);
            boolean little = once
                    && one.strongest(evenblade.rig.Shaft.PROPELLER, 1) < Thresholds.ONCE_MM_S
                    && one.installation().reduction().ratio() > 1;
            return little
                    || one.madeMmS() < (once ? Thresholds.ONCE_MM_S : Thresholds.BLAMED_MM_S)
                            && !kinds.contains(Fault.Kind.DRIVE);
        }

        private boolean alike() {
            int cylinders = one.installation().engine().cylinders();
            return kinds.contains(Fault.Kind.CARBURETTORS) && (cylinders < 4 || cylinders % 2 == 1);
        }

        boolean confidentlyWrong() {
            return findings.stream()
                    .filter(f -> f.sureness().confident())
                    .filter(f -> f.cause() != Cause.MASS || !ownMass())
                    .anyMatch(f -> !meant().contains(f.cause())
                            && !BLAMES_NOTHING.contains(f.cause())
                            && f.cause() != Cause.NOTHING);
        }

        /** Whether the machine's own unbalance, before any fault, shakes it as much as is called too much: that is no error. */
        boolean ownMass() {
            // What is read has 1 % of scatter, and the largest of several readings counts.
            return one.ownOnceMmS() >= 0.97 * Thresholds.TOO_MUCH_MM_S;
        }

        boolean ownMassBlamed() {
            return ownMass()
                    && !meant().contains(Cause.MASS)
                    && findings.stream()
                            .anyMatch(
                                    f -> f.cause() == Cause.MASS && f.sureness().confident());
        }

        boolean calledQuiet() {
            return !belowFloor()
                    && findings.stream()
                            .anyMatch(f ->
                                    f.cause() == Cause.NOTHING && f.sureness().confident());
        }

        boolean cantBeTold() {
            return !right() && findings.stream().limit(1).anyMatch(f -> BLAMES_NOTHING.contains(f.cause()));
        }

        String line() {
            return seed + " " + kinds + " " + one.seat() + " "
                    + one.installation().engine().cylinders() + "x"
                    + one.installation().engine().cycle() + " "
                    + one.installation().reduction().ratio() + " "
                    + String.format(Locale.ROOT, "made %.1f: ", one.madeMmS())
                    + String.format(Locale.ROOT, "own %.1f: ", one.ownOnceMmS())
                    + findings.stream()
                            .map(f -> f.cause()
                                    + (f.among().isEmpty() ? "" : f.among().toString()) + " "
                                    + Math.round(100 * f.sureness().share())
                                    + f.carried()
                                            .map(c -> String.format(Locale.ROOT, " (%.1f)", c.mmS()))
                                            .orElse(""))
                            .collect(Collectors.joining(", "));
        }
    }

    private static final Map<Fault.Kind, List<Outcome>> READ = new EnumMap<>(Fault.Kind.class);
    private static final Map<Fault.Kind, List<Outcome>> RUN_ONLY = new EnumMap<>(Fault.Kind.class);

    @BeforeAll
    static void oneFaultEach() {
        for (Fault.Kind kind : Fault.Kind.values()) {
            List<Outcome> read = new ArrayList<>();
            List<Outcome> run = new ArrayList<>();
            LongStream.rangeClosed(FIRST, LAST)
                    .filter(seed -> RigCase.possible(seed, kind))
                    .forEach(seed -> {
                        RigCase one = RigCase.of(seed, List.of(kind));
                        read.add(new Outcome(seed, one, List.of(kind), one.findings(true)));
                        run.add(new Outcome(seed, one, List.of(kind), one.findings(false)));
                    });
            READ.put(kind, read);
            RUN_ONLY.put(kind, run);
        }
        table("with tip marks, angles and run-out", READ);
        table("the run alone", RUN_ONLY);
        System.out.println("jobs in which the machine's own mass is blamed at 80 % and not counted as wrong: "
                + all(READ).stream().filter(Outcome::ownMassBlamed).count());
        List<Outcome> tellable = all(READ).stream().filter(Outcome::tellable).toList();
        System.out.printf(
                Locale.ROOT,
                "first cause named is right in %d of %d, where one place can tell in %d of %d%n",
                all(READ).stream().filter(Outcome::firstNamed).count(),
                all(READ).size(),
                tellable.stream().filter(Outcome::firstNamed).count(),
                tellable.size());
        System.out.printf(
                Locale.ROOT,
                "there the first named is the largest of the causes that are there, the machine's own mass among them, in %d%n",
                tellable.stream().filter(Outcome::firstIsTheLargest).count());
        if (Boolean.getBoolean("rig.loud")) {
            tellable.stream()
                    .filter(o -> !o.firstNamed())
                    .forEach(o -> System.out.println("   not first: " + o.line()));
        }
        seats();
    }

    private static void table(String title, Map<Fault.Kind, List<Outcome>> outcomes) {
        System.out.println(
                "| " + title
                        + " | below the floor | right first | or one of two alike | or among those named | can't be told | called quiet | wrong at 80 % |");
        outcomes.forEach((kind, all) -> {
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %d | %d of %d | %d | %d | %d | %d | %d |%n",
                    kind.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                    all.stream().filter(Outcome::belowFloor).count(),
                    all.stream().filter(Outcome::right).count(),
                    all.size(),
                    all.stream().filter(Outcome::rightOrAlike).count(),
                    all.stream().filter(Outcome::rightOrAmong).count(),
                    all.stream().filter(Outcome::cantBeTold).count(),
                    all.stream().filter(Outcome::calledQuiet).count(),
                    all.stream().filter(Outcome::confidentlyWrong).count());
        });
        if (Boolean.getBoolean("rig.loud")) {
            outcomes.values().stream()
                    .flatMap(List::stream)
                    .filter(o -> !o.belowFloor() && !o.rightOrAmong() || o.confidentlyWrong() || o.calledQuiet())
                    .forEach(o -> System.out.println("   " + o.line()));
        }
    }

    /** By the sensor's seat: first answers, and what pull against couple is taken for where either is clear. */
    private static void seats() {
        System.out.println(
                "| seat | jobs | right or among those named | wrong at 80 % | pull or couple right | wrong | open |");
        for (ShakingMachine.Seat seat : ShakingMachine.Seat.values()) {
            List<Outcome> here =
                    all(READ).stream().filter(o -> o.one().seat() == seat).toList();
            List<Outcome> turning = here.stream()
                    .filter(o -> ONCE.containsAll(o.kinds()) && !o.kinds().contains(Fault.Kind.MOUNT_RESONANCE))
                    .filter(o -> !o.belowFloor())
                    .toList();
            int[] told = new int[3];
            for (Outcome o : turning) {
                int points = o.one().pullPoints();
                boolean pull = o.kinds().contains(Fault.Kind.PROPELLER_MASS);
                told[Math.abs(points) < 2 ? 2 : points > 0 == pull ? 0 : 1]++;
            }
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %d | %d | %d | %d | %d | %d |%n",
                    seat,
                    here.size(),
                    here.stream()
                            .filter(o -> o.belowFloor() || o.rightOrAmong())
                            .count(),
                    here.stream().filter(Outcome::confidentlyWrong).count(),
                    told[0],
                    told[1],
                    told[2]);
        }
    }

    private static List<Outcome> all(Map<Fault.Kind, List<Outcome>> outcomes) {
        return outcomes.values().stream().flatMap(List::stream).toList();
    }

    private static double share(List<Outcome> of, Predicate<Outcome> what) {
        return of.stream().filter(what).count() / (double) of.size();
    }

    @Test
    void withAllReadingsTheRightCauseComesFirstInMostAndAWrongOneIsHardlyEverConfident() {
        double right = share(all(READ), o -> o.belowFloor() || o.rightOrAmong() || o.firstIsTheLargest());
        System.out.printf(Locale.ROOT, "right, named together, below the floor or the larger of two: %.3f%n", right);
        assertThat(right).isGreaterThan(MEASURED_RIGHT);
        assertThat(share(all(READ), Outcome::confidentlyWrong)).isLessThan(MOST_WRONG);
    }

    /** Cylinders of which two or three fire, or whole ratios, leave two faults with the same lines. */
    @Test
    void whereOnePlaceCanTellTheFirstCauseNamedIsTheRightOneInMost() {
        List<Outcome> tellable = all(READ).stream().filter(Outcome::tellable).toList();
        assertThat(share(tellable, Outcome::firstNamed)).isGreaterThan(MEASURED_FIRST);
    }

    @Test
    void fromTheRunAloneNothingIsBlamedWithConfidenceThatOnePlaceCantTell() {
        assertThat(share(all(RUN_ONLY), Outcome::confidentlyWrong)).isLessThan(MOST_WRONG);
        for (Fault.Kind kind :
                List.of(Fault.Kind.PROPELLER_MASS, Fault.Kind.TRACK, Fault.Kind.PITCH, Fault.Kind.FLANGE_RUN_OUT)) {
            assertThat(RUN_ONLY.get(kind))
                    .flatExtracting(Outcome::findings)
                    .filteredOn(f -> Set.of(Cause.MASS, Cause.TRACK, Cause.PITCH, Cause.FLANGE)
                            .contains(f.cause()))
                    .noneMatch(f -> f.sureness().confident());
        }
    }

    @Test
    void ofFindingsThatAreConfidentAtLeastEightOfTenAreRight() {
        Map<Integer, int[]> bands = new TreeMap<>();
        for (Outcome outcome : all(READ)) {
            for (Finding f : outcome.findings()) {
                if (!BLAMES_NOTHING.contains(f.cause()) && f.cause() != Cause.NOTHING) {
                    int[] band = bands.computeIfAbsent((int) (10 * f.sureness().share()), k -> new int[2]);
                    band[0]++;
                    boolean own = f.cause() == Cause.MASS && outcome.one().ownOnceMmS() >= ownCounts(f);
                    band[1] += outcome.meant().contains(f.cause()) || own ? 1 : 0;
                }
            }
        }
        bands.forEach((tenth, n) ->
                System.out.printf(Locale.ROOT, "| %d to %d %% | %d | %d |%n", 10 * tenth, 10 * tenth + 9, n[0], n[1]));
        int said = bands.entrySet().stream()
                .filter(e -> e.getKey() >= 8)
                .mapToInt(e -> e.getValue()[0])
                .sum();
        int right = bands.entrySet().stream()
                .filter(e -> e.getKey() >= 8)
                .mapToInt(e -> e.getValue()[1])
                .sum();
        assertThat(right / (double) said).isGreaterThan(0.9);
    }

    /** From which 1× of the machine's own it is true to blame mass so surely, less some scatter; mm/s. */
    private static double ownCounts(Finding f) {
        return 0.97 * (f.sureness().confident() ? Thresholds.TOO_MUCH_MM_S : Thresholds.ONCE_MM_S);
    }

    @Test
    void ofTwoFaultsAtOnceBothAreNamedInMost() {
        List<List<Fault.Kind>> pairs = List.of(
                List.of(Fault.Kind.PROPELLER_MASS, Fault.Kind.WEAK_CYLINDER),
                List.of(Fault.Kind.TRACK, Fault.Kind.WEAK_CYLINDER),
                List.of(Fault.Kind.TRACK, Fault.Kind.PITCH),
                List.of(Fault.Kind.PITCH, Fault.Kind.CRANK_MASS),
                List.of(Fault.Kind.PROPELLER_MASS, Fault.Kind.TRACK));
        int both = 0;
        int cases = 0;
        for (List<Fault.Kind> pair : pairs) {
            int named = 0;
            int made = 0;
            for (long seed = FIRST; seed <= Math.min(LAST, FIRST + 19); seed++) {
                long at = seed;
                if (pair.stream().allMatch(kind -> RigCase.possible(at, kind))) {
                    RigCase one = RigCase.of(seed, pair);
                    Set<Cause> said = one.findings(true).stream()
                            .flatMap(f -> Stream.concat(Stream.of(f.cause()), f.among().stream()))
                            .collect(Collectors.toSet());
                    made++;
                    named += said.containsAll(pair.stream().map(MEANT::get).toList()) ? 1 : 0;
                }
            }
            System.out.printf(Locale.ROOT, "| %s | %d of %d |%n", pair, named, made);
            both += named;
            cases += made;
        }
        assertThat(both / (double) cases).isGreaterThan(MEASURED_BOTH);
    }

    /** Two standard errors (√(p·(1−p)/n)) below what was measured on seeds 101 to 140. */
    private static final double MEASURED_RIGHT = 0.92;

    /** Wanted; measured 0.954 there, 0.89 to 0.93 on others. */
    private static final double MEASURED_FIRST = 0.9;

    private static final double MEASURED_BOTH = 0.72;
    /** None on these seeds; on others, not looked at before, 1 of 459. */
    private static final double MOST_WRONG = 0.006;
}
