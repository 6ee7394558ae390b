package evenblade.keep.practice;

import evenblade.input.recording.TimeBase;

/** The propeller's angle at every sample, and its speed where a line depends on it. */
final class Turning {
    /**
     * Time over which a line's dependence on speed is taken as straight: on a ramp of 5 revolutions per second
     * in a second through a resonance 1.2 Hz wide that errs by one part in 100,000.
     */
    private static final double STRAIGHT_S = 2e-3;

    private final TimeBase time;
    private final int stride;
    private final double[] revolutions;
    private final double[] propellerHz;

    Turning(SpeedProfile speed, TimeBase time, boolean needsSpeed) {
        this.time = time;
        this.stride = Math.max(1, (int) (STRAIGHT_S * time.rateHz()));
        this.revolutions = new double[time.size()];
        for (int i = 0; i < revolutions.length; i++) {
            revolutions[i] = speed.revolutionsAt(time.at(i));
        }
        this.propellerHz = needsSpeed ? new double[time.size()] : new double[0];
        for (int i = 0; i < propellerHz.length; i++) {
            propellerHz[i] = speed.propellerHzAt(time.at(i));
        }
    }

    double[] samples(SyntheticRun run) {
        double[] samples = new double[time.size()];
        for (Line line : run.lines()) {
            line.addTo(samples, revolutions, propellerHz, stride);
        }
        for (Tone tone : run.tones()) {
            for (int i = 0; i < samples.length; i++) {
                samples[i] += tone.at(time.at(i));
            }
        }
        run.noise().addTo(samples, time.rateHz(), run.seed());
        return samples;
    }
}
