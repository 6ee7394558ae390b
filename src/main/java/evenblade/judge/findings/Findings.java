package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Listed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * All findings of a job, heaviest first: what still stands and leans at least that way, then what was put right, then
 * hints.
 *
 * @param list at least one entry where anything was measured
 */
public record Findings(List<Finding> list) {
    /** A sign this much weaker than before counts as gone. */
    private static final double GONE = 0.5;

    public Findings {
        list = List.copyOf(list);
    }

    /** Weighs a job's evidence. */
    public static Findings weigh(JobEvidence job) {
        List<Stage> stages = Stage.of(job);
        List<Finding> found = new ArrayList<>();
        for (Rule rule : Rules.ALL) {
            found(rule, stages).ifPresent(found::add);
        }
        Stage last = stages.get(stages.size() - 1);
        found.addAll(OneOfSeveral.of(last, found));
        boolean quiet = found.stream()
                .noneMatch(f ->
                        f.open() && f.cause() != Cause.THROB && f.sureness().share() >= Confidence.LEANING);
        if (quiet) {
            QuietMachine.in(
                            last,
                            found.stream()
                                    .filter(f -> f.open() && f.cause() != Cause.THROB)
                                    .mapToDouble(f -> f.sureness().share())
                                    .max()
                                    .orElse(0))
                    .ifPresent(found::add);
        }
        // Of causes that are sure, what shakes most comes first; of the others, what is likely to shake most.
        double left = found.stream()
                .filter(f -> f.open() && rank(f) == 0)
                .mapToDouble(Findings::carried)
                .max()
                .orElse(0);
        double most = found.stream().mapToDouble(Findings::carried).max().orElse(0);
        found.sort(Comparator.comparingInt((Finding f) -> curedMost(f, left) ? -1 : rank(f))
                .thenComparing(f -> f.sureness().confident(), Comparator.reverseOrder())
                .thenComparing(f -> f.sureness().confident() ? carried(f) : 0, Comparator.reverseOrder())
                .thenComparing(f -> weight(f, most), Comparator.reverseOrder())
                .thenComparing(f -> f.sureness().share(), Comparator.reverseOrder())
                .thenComparing(f -> f.among().isEmpty()) // several named honestly before one of them alone
                .thenComparing(Finding::points, Comparator.reverseOrder()));
        return new Findings(found);
    }

    /** Whether a change cured it, and it shook more than anything that is left: then it is what the job was about. */
    private static boolean curedMost(Finding finding, double left) {
        return !finding.open() && finding.sureness().share() >= Confidence.LEANING && carried(finding) > left;
    }

    private static double carried(Finding finding) {
        return finding.carried().map(Carried::mmS).orElse(0.0);
    }

    /**
     * How sure, times what it carries of the most that any finding does; all where that isn't known.
     *
     * @param most mm/s
     */
    private static double weight(Finding finding, double most) {
        return finding.sureness().share()
                * finding.carried()
                        .filter(c -> most > 0)
                        .map(c -> c.mmS() / most)
                        .orElse(1.0);
    }

    private static int rank(Finding finding) {
        if (finding.cause() == Cause.UNTOLD) {
            return 0;
        }
        if (finding.cause() == Cause.NOTHING) {
            return 1;
        }
        if (finding.cause() == Cause.INSEPARABLE || finding.cause() == Cause.THROB) {
            return 2; // says what can't be told, and blames nothing
        }
        boolean leaning = finding.sureness().share() >= Confidence.LEANING;
        return !leaning ? 3 : finding.open() ? 0 : 1;
    }

    /** The finding of one rule: from the stage where it is surest, and whether it went away since. */
    private static Optional<Finding> found(Rule rule, List<Stage> stages) {
        int best = -1;
        Assessment strongest = null;
        for (int i = 0; i < stages.size(); i++) {
            Optional<Assessment> said = rule.weigh(stages.get(i));
            if (said.isPresent() && (strongest == null || said.get().points() > strongest.points())) {
                strongest = said.get();
                best = i;
            }
        }
        if (strongest == null || strongest.sureness().share() < Confidence.WORTH_TELLING) {
            return Optional.empty();
        }
        return Optional.of(finding(rule, strongest, gone(rule, strongest, best, stages)));
    }

    /** The first stage from which on the sign is no longer there. */
    private static Optional<Stage> gone(Rule rule, Assessment strongest, int best, List<Stage> stages) {
        Optional<Stage> since = Optional.empty();
        for (int i = best + 1; i < stages.size(); i++) {
            Optional<Assessment> now = rule.weigh(stages.get(i));
            if (now.isEmpty() && cannotTell(rule, stages.get(i), strongest)) {
                continue;
            }
            boolean seen = now.isPresent()
                    && now.get().sureness().share() >= Confidence.WORTH_TELLING
                    && now.get().symptom() > GONE * strongest.symptom();
            if (seen) {
                since = Optional.empty();
            } else if (since.isEmpty()) {
                since = Optional.of(stages.get(i));
            }
        }
        return since;
    }

    /** A stage whose runs show nothing at all, or whose silence means nothing, doesn't say that a cause went away. */
    private static boolean cannotTell(Rule rule, Stage stage, Assessment strongest) {
        return stage.sightings().isEmpty() || rule.mayPersist(stage, strongest.symptom());
    }

    private static Finding finding(Rule rule, Assessment said, Optional<Stage> gone) {
        Fact next = gone.map(Findings::afterwards).orElse(said.next());
        return new Finding(
                rule.cause(),
                said.statement(),
                pieces(said, p -> p.points() >= 0),
                pieces(said, p -> p.points() < 0),
                next,
                said.sureness(),
                gone.map(stage -> stage.runs().get(0).ref()),
                said.carried(),
                List.of());
    }

    private static Fact afterwards(Stage stage) {
        List<String> changes = stage.runs().get(0).changesBefore();
        return changes.isEmpty()
                ? Fact.of(FindingFact.KEEP_AN_EYE)
                : Fact.of(FindingFact.WENT_AWAY_AFTER, Listed.quoted(withoutStop(changes)));
    }

    /** Changes as they were noted, the last without its full stop. */
    private static List<String> withoutStop(List<String> changes) {
        List<String> all = new ArrayList<>(changes);
        all.set(all.size() - 1, all.get(all.size() - 1).replaceFirst("[.;]$", ""));
        return all;
    }

    private static List<EvidenceItem> pieces(Assessment said, Predicate<EvidenceItem> wanted) {
        return said.pieces().stream()
                .filter(wanted)
                .sorted(Comparator.comparingInt((EvidenceItem p) -> Math.abs(p.points()))
                        .reversed())
                .toList();
    }
}
