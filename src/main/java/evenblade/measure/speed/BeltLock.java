package evenblade.measure.speed;

import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.Shaft;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Propeller and crank of a machine with a belt, each followed by its own lines: a belt creeps, so the ratio wanders, and a
 * track that serves both shafts keeps step with neither.
 *
 * @param propeller the propeller's angle
 * @param crank the crank's over the ratio entered
 */
record BeltLock(PhaseLock.Locked propeller, PhaseLock.Locked crank) {
    /** Share by which either shaft may run off the speed found for both; a belt creeps by less. */
    private static final double REACH = 0.01;

    /**
     * What lines are followed in.
     *
     * @param recording at the rate of the frames
     * @param channels listened to
     * @param frames short spectra
     * @param path speed in every frame
     * @param start the track through that path
     * @param prior where to look
     */
    record Scene(
            Recording recording,
            List<Channel> channels,
            WhitenedSpectrogram frames,
            PathSearch.Path path,
            SpeedTrack start,
            SpeedPrior prior) {
        DemodulatedOrders slices(List<DemodulatedOrders.Tone> tones, DwellFinder.Stretch stretch) {
            return DemodulatedOrders.of(recording, channels, tones, start, stretch);
        }
    }

    /**
     * Follows both through a stretch.
     *
     * @param part of the path, within the stretch
     * @param humHz lines to keep clear of
     * @return empty where lines of one shaft only can be followed
     */
    static Optional<BeltLock> of(
            Scene scene, Comb comb, DwellFinder.Stretch stretch, PathSearch.Path part, double[] humHz) {
        Optional<PhaseLock.Locked> propeller = locked(scene, comb, Shaft.PROPELLER, stretch, part, humHz);
        Optional<PhaseLock.Locked> crank = locked(scene, comb, Shaft.CRANK, stretch, part, humHz);
        return propeller.flatMap(one -> crank.map(other -> new BeltLock(one, other)));
    }

    /**
     * Each shaft with the track under which its lines stand stiller: its own, which may slip where few lines of it are clear, or
     * the one for both. Empty where one for both serves as well.
     *
     * @param slices of all lines that were locked on
     * @param together the one for both
     */
    Optional<BeltLock> stillest(PhaseLock.Locked together, DemodulatedOrders slices) {
        double own = propeller.standing(slices, Shaft.PROPELLER).likelihood();
        double both = together.standing(slices, Shaft.PROPELLER).likelihood();
        double ownCrank = crank.standing(slices, Shaft.CRANK).likelihood();
        double bothCrank = together.standing(slices, Shaft.CRANK).likelihood();
        boolean stiller =
                Math.max(own, both) + Math.max(ownCrank, bothCrank) > both + bothCrank + RatioDrift.LEAST_GAIN;
        return stiller
                ? Optional.of(new BeltLock(
                        own < both ? together : propeller, ownCrank < bothCrank ? together.ofCrank() : crank))
                : Optional.empty();
    }

    private static Optional<PhaseLock.Locked> locked(
            Scene scene, Comb comb, Shaft shaft, DwellFinder.Stretch stretch, PathSearch.Path part, double[] humHz) {
        WhitenedSpectrogram frames = scene.frames();
        Comb alone = comb.of(shaft, 2 * REACH);
        if (LockTones.along(frames, alone, part, humHz).isEmpty()) {
            return Optional.empty();
        }
        double least = Arrays.stream(part.hz()).min().orElseThrow();
        double most = Arrays.stream(part.hz()).max().orElseThrow();
        PathSearch.Path own = new PathSearch(frames, alone, scene.prior())
                .best(part.frame(), least * (1 - REACH), most * (1 + REACH));
        double[] hz = scene.path().hz().clone();
        System.arraycopy(own.hz(), 0, hz, own.frame()[0], own.hz().length);
        SpeedTrack start = SpeedFinder.trackThrough(frames, scene.recording(), hz);
        PhaseLock.Locked locked = PhaseLock.lock(
                DemodulatedOrders.of(
                        scene.recording(),
                        scene.channels(),
                        LockTones.along(frames, comb, own, humHz).stream()
                                .filter(tone -> tone.shaft() == shaft)
                                .toList(),
                        start,
                        stretch),
                start,
                stretch,
                frames::appearsAtHz,
                true);
        return Optional.of(locked)
                .filter(PhaseLock.Locked::sound)
                .filter(sound -> !SpeedFinder.strays(sound.track(), start, stretch));
    }
}
