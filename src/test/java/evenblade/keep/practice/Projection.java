package evenblade.keep.practice;

import evenblade.base.numeric.Phasor;
import evenblade.input.recording.TimeBase;

/**
 * Reads one line out of samples by multiplying with its cosine and sine and averaging: written apart from
 * what makes the samples, with the angle found by adding up the speed in small steps.
 */
final class Projection {
    private Projection() {}

    static Phasor of(double[] samples, TimeBase time, SpeedProfile speed, double order, double fromS, double toS) {
        double re = 0;
        double im = 0;
        double total = 0;
        double turns = 0;
        double last = 0;
        for (int i = 0; i < samples.length; i++) {
            double timeS = time.at(i);
            turns += midpointRule(speed, last, timeS);
            last = timeS;
            if (timeS < fromS || timeS > toS) {
                continue;
            }
            double place = (timeS - fromS) / (toS - fromS);
            double weight = 1 - Math.cos(2 * Math.PI * place);
            re += weight * samples[i] * Math.cos(2 * Math.PI * order * turns);
            im -= weight * samples[i] * Math.sin(2 * Math.PI * order * turns);
            total += weight;
        }
        return new Phasor(2 * re / total, 2 * im / total);
    }

    private static double midpointRule(SpeedProfile speed, double fromS, double toS) {
        int steps = Math.max(1, (int) Math.ceil((toS - fromS) * 4000));
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            sum += speed.propellerHzAt(fromS + (toS - fromS) * (i + 0.5) / steps);
        }
        return sum * (toS - fromS) / steps;
    }
}
