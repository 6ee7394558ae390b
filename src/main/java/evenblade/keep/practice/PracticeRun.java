package evenblade.keep.practice;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.Installation;
import java.util.ArrayList;
import java.util.List;

/**
 * An invented ground run of a machine, described in a sentence:
 * {@code PracticeRun.of(installation).withFault(Fault.MASS_IMBALANCE).at(4800).forSeconds(30).wandering(0.01)}.
 *
 * @param machine the truth
 * @param faults what was put wrong
 * @param speed of the propeller over the run
 * @param wanderShare largest wander as a share of the speed
 * @param noise on an accelerometer, m/s²
 * @param humAcceleration mains hum at 50 Hz, m/s² peak
 * @param seed of small differences, wander and noise
 */
public record PracticeRun(
        Machine machine,
        List<Fault> faults,
        SpeedProfile speed,
        double wanderShare,
        Noise noise,
        double humAcceleration,
        long seed) {
    private static final double MAINS_HZ = 50; // much of the world's mains
    private static final double DEFAULT_RPM = 4800; // invented
    private static final double DEFAULT_S = 30; // invented
    private static final Noise DEFAULT_NOISE = new Noise(0.15, 0.05);
    private static final int WANDER_PART = 100; // beyond the sensors' numbers, so that no two draw the same chance

    public PracticeRun {
        faults = List.copyOf(faults);
    }

    /** A healthy machine at 4800 engine rpm for 30 s, steady. */
    public static PracticeRun of(Installation installation) {
        return of(Machine.healthy(installation, 1));
    }

    /** A given machine at 4800 engine rpm for 30 s, steady. */
    public static PracticeRun of(Machine machine) {
        double hz = DEFAULT_RPM / 60 / machine.installation().reduction().ratio();
        return new PracticeRun(machine, List.of(), SpeedProfile.steady(hz, DEFAULT_S), 0, DEFAULT_NOISE, 0, 1);
    }

    /** With something put wrong. */
    public PracticeRun withFault(Fault fault) {
        List<Fault> all = new ArrayList<>(faults);
        all.add(fault);
        return new PracticeRun(fault.in(machine), all, speed, wanderShare, noise, humAcceleration, seed);
    }

    /** For a machine that was given with these faults in it. */
    PracticeRun knownToHave(List<Fault> wrong) {
        return new PracticeRun(machine, wrong, speed, wanderShare, noise, humAcceleration, seed);
    }

    /** At one engine speed. */
    public PracticeRun at(double engineRpm) {
        return following(SpeedProfile.steady(
                engineRpm / 60 / machine.installation().reduction().ratio(), speed.durationS()));
    }

    /** The first dwell for so long, and nothing after it. */
    public PracticeRun forSeconds(double seconds) {
        return following(SpeedProfile.steady(speed.stretches().get(0).fromHz(), seconds));
    }

    /** Over dwells and ramps. */
    public PracticeRun following(SpeedProfile other) {
        return new PracticeRun(machine, faults, other, wanderShare, noise, humAcceleration, seed);
    }

    /** With irregular wander, 0.01 for ± 1 %. */
    public PracticeRun wandering(double share) {
        return new PracticeRun(machine, faults, speed, share, noise, humAcceleration, seed);
    }

    public PracticeRun withNoise(Noise other) {
        return new PracticeRun(machine, faults, speed, wanderShare, other, humAcceleration, seed);
    }

    /** With mains hum, m/s² peak. */
    public PracticeRun withHum(double acceleration) {
        return new PracticeRun(machine, faults, speed, wanderShare, noise, acceleration, seed);
    }

    /** With other wander and noise. */
    public PracticeRun seeded(long other) {
        return new PracticeRun(machine, faults, speed, wanderShare, noise, humAcceleration, other);
    }

    /** The speed with its wander: what truly happened. */
    public SpeedProfile trueSpeed() {
        return wanderShare == 0 ? speed : speed.wandering(wanderShare, Seeds.part(seed, WANDER_PART));
    }

    /** What an ideal accelerometer feels in one direction, m/s². */
    public SyntheticRun felt(SensorAxis axis) {
        SyntheticRun run = SyntheticRun.at(trueSpeed())
                .withLines(Shaking.of(machine, axis))
                .withNoise(noise)
                .withSeed(Seeds.part(seed, axis.ordinal()));
        return humAcceleration == 0 ? run : run.withTone(MAINS_HZ, humAcceleration);
    }

    /** All three directions at an even clock, in memory. */
    public Recording recording(double rateHz) {
        TimeBase time = felt(SensorAxis.ALONG).evenClock(rateHz);
        List<Channel> channels = new ArrayList<>();
        for (SensorAxis axis : SensorAxis.values()) {
            channels.add(felt(axis).channel(axis.word(), SignalUnit.METRE_PER_SECOND_SQUARED, time));
        }
        return SyntheticRun.recordingOf(time, channels);
    }
}
