package evenblade.measure.speed;

import evenblade.machine.installation.OrderTable.Exactness;
import evenblade.machine.installation.Shaft;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a stretch is locked on.
 *
 * @param stretch in which nobody moved the throttle
 * @param judged what its speed rests on
 * @param slices of the lines that stand out
 * @param together the track for both shafts
 * @param belt one for each, where a belt between them creeps
 */
record StretchLock(
        DwellFinder.Stretch stretch,
        StretchJudge.Judged judged,
        DemodulatedOrders slices,
        PhaseLock.Locked together,
        Optional<BeltLock> belt) {
    /** Of the signal of a shaft's lines: under a track that slips all the way a tenth at most stands still. Ours, from a trial. */
    private static final double LEAST_FOLLOWED = 0.12;

    /** Locks on. */
    static StretchLock of(
            BeltLock.Scene scene,
            Comb comb,
            Exactness exactness,
            DwellFinder.Stretch stretch,
            PathSearch.Path part,
            StretchJudge.Judged judged) {
        DemodulatedOrders slices =
                scene.slices(LockTones.along(scene.frames(), comb, part, judged.humSeries()), stretch);
        PhaseLock.Locked together = PhaseLock.lock(
                slices, scene.start(), stretch, scene.frames()::appearsAtHz, exactness == Exactness.EXACT);
        Optional<BeltLock> belt = exactness == Exactness.CREEPS
                ? BeltLock.of(scene, comb, stretch, part, judged.humSeries())
                        .flatMap(lock -> lock.stillest(together, slices))
                : Optional.empty();
        return new StretchLock(stretch, judged, slices, together, belt);
    }

    /**
     * The shaft whose lines can't be followed by any track, where a belt is between both: what the other tells of its speed goes no
     * further than the belt creeps. The engine only where it has a line there.
     */
    Optional<Shaft> hidden(BeltLock.Scene scene) {
        if (!follows(propeller(), Shaft.PROPELLER, scene)) {
            return Optional.of(Shaft.PROPELLER);
        }
        boolean heard = judged.judgement().by().stream().anyMatch(line -> line.of() == Shaft.CRANK);
        PhaseLock.Locked crank = belt.map(BeltLock::crank).orElse(together);
        return heard && !follows(crank, Shaft.CRANK, scene) ? Optional.of(Shaft.CRANK) : Optional.empty();
    }

    /** Of a track that isn't kept nothing is asked here; and lines that are never clear of the other shaft's serve both. */
    private boolean follows(PhaseLock.Locked track, Shaft shaft, BeltLock.Scene scene) {
        boolean stands = slices.tones().stream().anyMatch(tone -> tone.shaft() == shaft);
        return stands && (!kept(track, scene) || track.followed(slices, shaft).orElse(1) > LEAST_FOLLOWED);
    }

    /** Whether a track carries phase and hasn't lost the path. */
    private boolean kept(PhaseLock.Locked track, BeltLock.Scene scene) {
        return track.sound() && !SpeedFinder.strays(track.track(), scene.start(), stretch);
    }

    PhaseLock.Locked propeller() {
        return belt.map(BeltLock::propeller).orElse(together);
    }

    /** Share by which the ratio is larger than entered, as the longest stretch that tells it does; 0 where none does. */
    static double ratioError(List<StretchLock> locks, BeltLock.Scene scene) {
        return locks.stream()
                .filter(lock -> lock.together().ratioCorrection() != 0 && lock.kept(lock.together(), scene))
                .max(Comparator.comparingDouble(lock -> lock.stretch().lengthS()))
                .map(lock -> lock.together().ratioCorrection())
                .orElse(0.0);
    }

    /**
     * At the ratio that other stretches tell, where this one tells none and follows the crank: teeth don't change. As it was where
     * its lines stand clearly stiller so.
     */
    StretchLock at(double ratioError, BeltLock.Scene scene) {
        boolean cranks = slices.tones().stream().anyMatch(tone -> tone.clear() && tone.shaft() == Shaft.CRANK);
        if (ratioError == 0 || together.ratioCorrection() != 0 || !together.sound() || !cranks) {
            return this;
        }
        PhaseLock.Locked corrected =
                PhaseLock.atRatio(together, ratioError, slices, scene.start(), stretch, scene.frames()::appearsAtHz);
        boolean worse = corrected.standing(slices, Shaft.values()).likelihood()
                < together.standing(slices, Shaft.values()).likelihood() - RatioDrift.LEAST_GAIN;
        return worse || !kept(corrected, scene) ? this : new StretchLock(stretch, judged, slices, corrected, belt);
    }
}
