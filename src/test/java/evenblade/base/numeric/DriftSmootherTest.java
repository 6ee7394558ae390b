package evenblade.base.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class DriftSmootherTest {
    @Test
    void aSteadyRateIsTheWeightedStraightLine() {
        int n = 200;
        double[] time = new double[n];
        double[] reading = new double[n];
        double[] variance = new double[n];
        Random random = new Random(3);
        double w = 0;
        double t = 0;
        double y = 0;
        for (int i = 0; i < n; i++) {
            time[i] = 0.5 * i + 0.2 * random.nextDouble();
            variance[i] = 1e-4 * (1 + random.nextDouble());
            reading[i] = 30 * time[i] + Math.sqrt(variance[i]) * random.nextGaussian();
            w += 1 / variance[i];
            t += time[i] / variance[i];
            y += reading[i] / variance[i];
        }
        double above = 0;
        double below = 0;
        for (int i = 0; i < n; i++) {
            above += (time[i] - t / w) * (reading[i] - y / w) / variance[i];
            below += (time[i] - t / w) * (time[i] - t / w) / variance[i];
        }

        DriftSmoother.Smoothed smooth =
                DriftSmoother.smooth(time, reading, variance, time[0] - 0.25, time[n - 1] + 0.25);

        assertThat(smooth.drifts()).isFalse();
        assertThat(smooth.meanRate()).isCloseTo(above / below, within(1e-9));
        // The scale of the variances is estimated too, to some √(1/2n).
        assertThat(smooth.meanRateStandardError()).isCloseTo(Math.sqrt(1 / below), within(0.2 * Math.sqrt(1 / below)));
    }

    @Test
    void aDriftingRateIsFollowed() {
        int n = 300;
        double[] time = new double[n];
        double[] reading = new double[n];
        double[] variance = new double[n];
        Random random = new Random(3);
        for (int i = 0; i < n; i++) {
            time[i] = 0.25 * i;
            variance[i] = 1e-6;
            reading[i] = truth(time[i]) + 1e-3 * random.nextGaussian();
        }

        DriftSmoother.Smoothed smooth = DriftSmoother.smooth(time, reading, variance, time[0], time[n - 1]);

        assertThat(smooth.drifts()).isTrue();
        for (int i = 5; i < n - 5; i++) {
            assertThat(smooth.level().get(i)).isCloseTo(truth(time[i]), within(5e-3));
            assertThat(smooth.rate().get(i))
                    .isCloseTo((truth(time[i] + 0.01) - truth(time[i] - 0.01)) / 0.02, within(0.02));
        }
        double mean = (truth(time[n - 1]) - truth(time[0])) / (time[n - 1] - time[0]);
        assertThat(smooth.meanRate()).isCloseTo(mean, within(4 * smooth.meanRateStandardError()));
    }

    @Test
    void readingsMuchBetterThanTheirSpreadStayInTheNumbers() {
        int n = 120;
        double[] time = new double[n];
        double[] reading = new double[n];
        double[] variance = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = 0.5 * i;
            variance[i] = 1e-14;
            reading[i] = (i < 60 ? 27.0 : 33.0) * (time[i] - 30);
        }

        DriftSmoother.Smoothed smooth = DriftSmoother.smooth(time, reading, variance, 0, time[n - 1]);

        assertThat(smooth.rate()).allSatisfy(rate -> assertThat(rate).isBetween(20.0, 40.0));
        assertThat(smooth.meanRate()).isCloseTo((reading[n - 1] - reading[0]) / time[n - 1], within(1e-3));
    }

    private static double truth(double time) {
        return 30 * time + 0.3 * Math.sin(2 * Math.PI * time / 12);
    }
}
