package evenblade.practice;

import evenblade.recording.TimeBase;

/** The propeller's angle at every sample, and its speed where a line depends on it. */
final class Turning {
    private final TimeBase time;
    private final double[] revolutions;
    private final double[] propellerHz;

    Turning(SpeedProfile speed, TimeBase time, boolean needsSpeed) {
        this.time = time;
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
            line.addTo(samples, revolutions, propellerHz);
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
