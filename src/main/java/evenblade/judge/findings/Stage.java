package evenblade.judge.findings;

import evenblade.base.fact.Listed;
import evenblade.judge.tie.TieAnswer;
import evenblade.machine.installation.Installation;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A stretch of a job in which nothing was changed, with the static readings that were valid then.
 *
 * @param installation what it is about
 * @param runs of the stretch, in order of time; none where the engine hasn't run yet
 * @param track tip marks
 * @param pitch blade angles
 * @param runOut of the flange
 * @param disc whether a pull in the disc or a couple explains propeller 1× better; empty where neither was measured
 * @param tie what all runs of the job say about vibration and track together
 */
record Stage(
        Installation installation,
        List<RunEvidence> runs,
        Optional<StaticEvidence.Track> track,
        Optional<StaticEvidence.Pitch> pitch,
        Optional<StaticEvidence.RunOut> runOut,
        Optional<DiscFit> disc,
        Optional<TieAnswer> tie) {
    Stage {
        runs = List.copyOf(runs);
    }

    /** The stages of a job, in order of time; one without runs where there are only static readings. */
    static List<Stage> of(JobEvidence job) {
        List<List<RunEvidence>> groups = new ArrayList<>();
        for (RunEvidence run : job.runs()) {
            if (groups.isEmpty() || !run.changesBefore().isEmpty()) {
                groups.add(new ArrayList<>());
            }
            groups.get(groups.size() - 1).add(run);
        }
        if (groups.isEmpty()) {
            groups.add(List.of());
        }
        return groups.stream().map(runs -> with(job, runs)).toList();
    }

    private static Stage with(JobEvidence job, List<RunEvidence> runs) {
        Instant until = runs.isEmpty() ? Instant.MAX : runs.get(runs.size() - 1).at();
        return new Stage(
                job.installation(),
                runs,
                valid(job.still().track(), StaticEvidence.Track::from, until),
                valid(job.still().pitch(), p -> p.readings().at(), until),
                valid(job.still().runOut(), r -> r.reading().at(), until),
                DiscFit.of(runs, job.installation().sensor().place()),
                job.tie());
    }

    /** The last one taken until then; where all came later, the first. */
    private static <T> Optional<T> valid(List<T> taken, Function<T, Instant> at, Instant until) {
        Optional<T> last =
                taken.stream().filter(t -> !at.apply(t).isAfter(until)).reduce((first, second) -> second);
        return last.or(() -> taken.stream().findFirst());
    }

    /** The lines seen in its runs. */
    OrderObservations sightings() {
        return OrderObservations.of(runs);
    }

    /** Its runs by name, for a sentence. */
    Listed names() {
        return Listed.quoted(runs.stream().map(run -> run.ref().name()).toList());
    }

    /** Where it is seen what no single dwell shows: its last run. */
    EvidenceRef ref() {
        return runs.isEmpty()
                ? EvidenceRef.Whole.ALL_RUNS
                : runs.get(runs.size() - 1).ref(EvidenceRef.Side.ORDERS);
    }
}
