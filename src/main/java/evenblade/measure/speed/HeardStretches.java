package evenblade.measure.speed;

import evenblade.machine.installation.OrderTable.Exactness;
import evenblade.machine.installation.Shaft;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Stretches in which nobody moved the throttle, judged and locked on.
 *
 * @param locks of those whose lines are this machine's
 * @param doubtful the others
 * @param better entry that fits the lines of the longest stretch in which the one made doesn't
 */
record HeardStretches(List<StretchLock> locks, List<DoubtfulDwell> doubtful, Optional<BetterEntry> better) {
    HeardStretches {
        locks = List.copyOf(locks);
        doubtful = List.copyOf(doubtful);
    }

    static HeardStretches of(
            BeltLock.Scene scene,
            Comb comb,
            Exactness exactness,
            StretchJudge judge,
            List<DwellFinder.Stretch> stretches) {
        List<StretchLock> locks = new ArrayList<>();
        List<DoubtfulDwell> doubtful = new ArrayList<>();
        Optional<BetterEntry> better = Optional.empty();
        double betterS = 0;
        for (DwellFinder.Stretch stretch : stretches) {
            PathSearch.Path part = judge.part(stretch, scene.path());
            StretchJudge.Judged judged = judge.of(part);
            Confirmation.Judgement judgement = judged.judgement();
            if (judgement.better().isPresent() && stretch.lengthS() > betterS) {
                better = judgement.better();
                betterS = stretch.lengthS();
            }
            if (!judgement.confirmed()) {
                doubtful.add(judgement.doubted(stretch, judgement.doubts().get(0)));
                continue;
            }
            StretchLock lock = StretchLock.of(scene, comb, exactness, stretch, part, judged);
            Optional<Shaft> hidden = exactness == Exactness.CREEPS ? lock.hidden(scene) : Optional.empty();
            if (hidden.isPresent()) {
                doubtful.add(judgement.doubted(
                        stretch,
                        hidden.get() == Shaft.PROPELLER ? SpeedDoubt.PROPELLER_HIDDEN : SpeedDoubt.ENGINE_HIDDEN));
            } else {
                locks.add(lock);
            }
        }
        double ratioError = exactness == Exactness.ROUNDED ? StretchLock.ratioError(locks, scene) : 0;
        return new HeardStretches(
                locks.stream().map(lock -> lock.at(ratioError, scene)).toList(), doubtful, better);
    }
}
