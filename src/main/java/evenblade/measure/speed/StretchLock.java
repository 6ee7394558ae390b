package evenblade.measure.speed;

import evenblade.machine.installation.OrderTable.Exactness;
import evenblade.machine.installation.Shaft;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a stretch is locked on.
 *
 * @param judged what its speed rests on
 * @param tones lines that stand out
 * @param together the track for both shafts
 * @param belt one for each, where a belt between them creeps
 */
record StretchLock(
        DwellFinder.Stretch stretch,
        StretchJudge.Judged judged,
        List<DemodulatedOrders.Tone> tones,
        PhaseLock.Locked together,
        Optional<BeltLock> belt) {
    /** Under a track that slips all the way a tenth at most stands still; where another machine draws it at times, more. Ours, from a trial. */
    private static final double LEAST_STILL = 0.12;

    /** Locks on. */
    static StretchLock of(
            BeltLock.Scene scene,
            Comb comb,
            Exactness exactness,
            DwellFinder.Stretch stretch,
            PathSearch.Path part,
            StretchJudge.Judged judged) {
        List<DemodulatedOrders.Tone> tones = LockTones.along(scene.frames(), comb, part, judged.humSeries());
        PhaseLock.Locked together = PhaseLock.lock(
                scene.recording(),
                scene.channels(),
                tones,
                scene.start(),
                stretch,
                scene.frames()::appearsAtHz,
                exactness == Exactness.EXACT);
        Optional<BeltLock> belt = exactness == Exactness.CREEPS
                ? BeltLock.of(scene, comb, stretch, part, judged.humSeries())
                        .flatMap(lock -> lock.stillerThan(together, scene.slices(tones, stretch)))
                : Optional.empty();
        return new StretchLock(stretch, judged, tones, together, belt);
    }

    /** Whether lines of the propeller itself stand still under the track that is taken for its. */
    boolean followsPropeller(BeltLock.Scene scene) {
        return propeller()
                        .standing(scene.slices(tones, stretch), Shaft.PROPELLER)
                        .ofSignal()
                > LEAST_STILL;
    }

    PhaseLock.Locked propeller() {
        return belt.map(BeltLock::propeller).orElse(together);
    }

    /** Share by which the ratio is larger than entered, as the longest stretch that tells it does; 0 where none does. */
    static double ratioError(List<StretchLock> locks) {
        return locks.stream()
                .filter(lock -> lock.together().ratioCorrection() != 0)
                .max(Comparator.comparingDouble(lock -> lock.stretch().lengthS()))
                .map(lock -> lock.together().ratioCorrection())
                .orElse(0.0);
    }

    /**
     * At the ratio that other stretches tell, where this one tells none: teeth don't change. As it was where its lines stand
     * clearly stiller so.
     */
    StretchLock at(double ratioError, BeltLock.Scene scene) {
        if (ratioError == 0 || together.ratioCorrection() != 0 || !together.sound()) {
            return this;
        }
        DemodulatedOrders slices = scene.slices(tones, stretch);
        PhaseLock.Locked corrected =
                PhaseLock.ofCrank(together, ratioError, slices, scene.start(), stretch, scene.frames()::appearsAtHz);
        boolean worse = corrected.standing(slices, Shaft.values()).likelihood()
                < together.standing(slices, Shaft.values()).likelihood() - RatioDrift.LEAST_GAIN;
        return worse ? this : new StretchLock(stretch, judged, tones, corrected, belt);
    }
}
