package evenblade.judge.findings;

import evenblade.base.fact.Value.Listed;
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
 * @param staleMarks whether tip marks were out before something was changed, and none were taken since: what they are now
 *     isn't known, and they aren't given as {@code track}
 * @param pitch blade angles
 * @param runOut of the flange
 * @param disc whether a pull in the disc or a couple explains propeller 1× better; empty where neither was measured
 * @param before the stretch before it
 * @param tie what all runs of the job say about vibration and track together
 */
record Stage(
        Installation installation,
        List<RunEvidence> runs,
        Optional<StaticEvidence.Track> track,
        boolean staleMarks,
        Optional<StaticEvidence.Pitch> pitch,
        Optional<StaticEvidence.RunOut> runOut,
        Optional<DiscFit> disc,
        Optional<Stage> before,
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
        List<Stage> stages = new ArrayList<>();
        for (List<RunEvidence> runs : groups) {
            Optional<Stage> before = stages.isEmpty() ? Optional.empty() : Optional.of(stages.get(stages.size() - 1));
            stages.add(with(job, runs, before));
        }
        return stages;
    }

    private static Stage with(JobEvidence job, List<RunEvidence> runs, Optional<Stage> before) {
        Instant until = runs.isEmpty() ? Instant.MAX : runs.get(runs.size() - 1).at();
        Optional<StaticEvidence.Track> track = valid(job.still().track(), StaticEvidence.Track::from, until);
        Optional<Instant> changed =
                runs.isEmpty() ? Optional.empty() : runs.get(0).lastChange();
        boolean stale = track.isPresent()
                && changed.filter(c -> track.get().lastAt().isBefore(c)).isPresent()
                && StaticFeatures.trackOut(track.get());
        return new Stage(
                job.installation(),
                runs,
                stale ? Optional.empty() : track,
                stale,
                valid(job.still().pitch(), p -> p.readings().at(), until),
                valid(job.still().runOut(), r -> r.reading().at(), until),
                DiscFit.of(runs, job.installation().sensor().place()),
                before,
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
