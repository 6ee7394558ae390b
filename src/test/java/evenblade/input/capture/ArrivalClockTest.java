package evenblade.input.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ArrivalClockTest {
    private static final double RATE_HZ = 48_000;

    /** An input read every 20 ms or so; {@code late} says how much later than due a read at a time comes. */
    private static List<Gap> watch(double seconds, double trueRateHz, double lostAtS, double lostS, Lateness late) {
        ArrivalClock clock = new ArrivalClock(RATE_HZ);
        for (double t = 0; t < seconds; t += 0.02) {
            double soundS = t > lostAtS ? t - lostS : t;
            clock.note(Math.round(soundS * trueRateHz), t + late.seconds(t));
        }
        return clock.gaps();
    }

    private interface Lateness {
        double seconds(double t);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.12, 1.0, 30})
    void aLostStretchIsFoundWithItsLengthAndPlace(double lostS) {
        List<Gap> gaps = watch(60, RATE_HZ, 20 + lostS, lostS, t -> 0);

        assertThat(gaps).hasSize(lostS < 30 ? 1 : gaps.size()).isNotEmpty();
        assertThat(gaps.stream().mapToDouble(Gap::lostS).sum()).isCloseTo(lostS, within(0.02));
        assertThat(gaps.get(0).frame() / RATE_HZ).isCloseTo(20, within(3.0));
    }

    @Test
    void aBusyMachineThatReadsLateLosesNothing() {
        Random random = new Random(7);
        List<Gap> gaps = watch(300, RATE_HZ, 1e9, 0, t -> {
            double stall = t % 60 > 56 ? 56 + 3.9 - t % 60 : 0;
            return Math.max(0, stall) + 0.2 * random.nextDouble();
        });

        assertThat(gaps).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {-200e-6, -50e-6, 50e-6, 300e-6})
    void anInputWhoseClockIsALittleOffLosesNothing(double off) {
        assertThat(watch(1800, RATE_HZ * (1 + off), 1e9, 0, t -> 0)).isEmpty();
    }

    @Test
    void soundThatComesInLumpsLosesNothing() {
        assertThat(watch(120, RATE_HZ, 1e9, 0, t -> t % 0.5)).isEmpty();
    }
}
