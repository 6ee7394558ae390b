package evenblade.tell.report;

import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.judge.findings.Cause;
import evenblade.judge.findings.Finding;
import evenblade.judge.findings.FindingFact;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A cause in the words of a customer. */
final class CauseWords {
    private CauseWords() {}

    /** What goes on after "because": {@code blade B was out of track}. */
    static String because(Finding finding) {
        Optional<String> blade = blade(finding);
        return switch (finding.cause()) {
            case TRACK -> blade.orElse("a blade") + " was out of track";
            case PITCH ->
                blade.map(name -> name + " had another pitch than the others")
                        .orElse("the blades did not have the same pitch");
            case MASS -> "the propeller was out of balance";
            case FLANGE -> "the hub or its flange was not true";
            case WEAK_CYLINDER -> "one cylinder was weaker than the others";
            case CRANK -> "the crank, flywheel or rotor was out of balance";
            case CARBURETTORS -> "the carburettors did not work in step";
            case DRIVE -> "the gear or belt drive did not run true";
            case BLADE -> "one blade pushed otherwise than the others";
            case RESONANCE -> "the mounts made it stronger near one speed";
            case LOOSE_MOUNT -> "a mount was loose";
            case RECORDING -> "the recording was not in order";
            case THROB -> "two shakings of nearly the same speed swell and fade together";
            case INSEPARABLE, UNTOLD, NOTHING -> "of something that these measurements can't show";
        };
    }

    /** A cause as a thing: {@code blade B out of track}. */
    static String thing(Finding finding) {
        Optional<String> blade = blade(finding);
        return switch (finding.cause()) {
            case TRACK -> blade.orElse("a blade") + " out of track";
            case PITCH -> blade.map(name -> "pitch of " + name).orElse("blades of different pitch");
            case MASS -> "balance of the propeller";
            case FLANGE -> "hub or flange not true";
            case WEAK_CYLINDER -> "a weak cylinder";
            case CRANK -> "balance of crank, flywheel or rotor";
            case CARBURETTORS -> "carburettors out of step";
            case DRIVE -> "gear or belt drive";
            case BLADE -> "a blade that pushes otherwise than the others";
            case RESONANCE -> "mounts that make one speed stronger";
            case LOOSE_MOUNT -> "a loose mount";
            case RECORDING -> "trouble with sensor or recording";
            case THROB -> "a slow throb of two shakings together";
            case INSEPARABLE -> "lines that can't be separated";
            case UNTOLD -> "the cause of the shaking";
            case NOTHING -> "nothing";
        };
    }

    /** The blades that a statement names, as {@code blade B} or {@code blades A and B}. */
    private static Optional<String> blade(Finding finding) {
        boolean named = (finding.cause() == Cause.TRACK || finding.cause() == Cause.PITCH)
                && Stream.of(FindingFact.POINTS_TO_TRACK_OF, FindingFact.POINTS_TO_PITCH_OF)
                        .anyMatch(code -> code == finding.statement().code());
        if (!named) {
            return Optional.empty();
        }
        List<String> names = finding.statement().values().stream()
                .limit(1)
                .flatMap(value -> value instanceof Listed list ? list.items().stream() : Stream.of(value))
                .filter(Quoted.class::isInstance)
                .map(value -> ((Quoted) value).text())
                .toList();
        return names.isEmpty()
                ? Optional.empty()
                : Optional.of((names.size() == 1 ? "blade " : "blades ")
                        + names.stream().collect(Collectors.joining(" and ")));
    }
}
