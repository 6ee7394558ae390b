package evenblade.measure.live;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Reduction;
import evenblade.measure.live.LiveListener.LiveNow;
import evenblade.measure.speed.SpeedPrior;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Half an hour of sound through the live chain, as fast as it can take it: holds and moves of the throttle. Nothing is
 * skipped, no figure shown is wrong, and no more memory is held at the end than after five minutes.
 */
@Tag("long")
class LiveSoakTest {
    private static final int RATE_HZ = 8000;
    private static final double RATIO = 2.43;
    private static final int BLOCK = RATE_HZ / 20;
    private static final int MINUTES = Integer.getInteger("soak.minutes", 30);

    private final AtomicReference<LiveNow> now = new AtomicReference<>();
    private final AtomicReference<LiveReading> window = new AtomicReference<>();
    private final AtomicInteger nows = new AtomicInteger();
    private final AtomicInteger windows = new AtomicInteger();
    private final AtomicInteger failures = new AtomicInteger();

    private LiveChain chain() {
        Installation invented = new Installation(
                Optional.of("invented"),
                new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.of(1600), OptionalDouble.of(5600)),
                new Reduction(Reduction.Kind.UNSTATED, RATIO, Optional.empty()),
                new Installation.Propeller(3, Optional.empty(), Optional.empty()),
                List.of());
        WindowReader reader = new WindowReader(invented, SpeedPrior.between(11, 39), Optional.empty());
        return new LiveChain(RATE_HZ, List.of("mono"), 1000, reader, new LiveListener() {
            @Override
            public void now(LiveNow latest) {
                now.set(latest);
                nows.incrementAndGet();
            }

            @Override
            public void window(LiveReading latest) {
                window.set(latest);
                windows.incrementAndGet();
            }

            @Override
            public void stopped() {
                failures.incrementAndGet();
            }
        });
    }

    /**
     * Five minutes: holds of 40 to 80 s between moves of 1 to 3 s. The sound begins anew where a move does: in a hold the
     * jump of its phase would be a fault of the invented engine.
     */
    private static SpeedProfile fiveMinutes() {
        return SpeedProfile.startingAt(3600 / RATIO / 60)
                .thenRampTo(3060 / RATIO / 60, 2)
                .thenDwell(118)
                .thenRampTo(4000 / RATIO / 60, 2)
                .thenDwell(77)
                .thenRampTo(4800 / RATIO / 60, 1)
                .thenDwell(40)
                .thenRampTo(3600 / RATIO / 60, 3)
                .thenDwell(57)
                .wandering(0.003, 4);
    }

    @Test
    void halfAnHourLeavesNothingBehind() throws Exception {
        SpeedProfile profile = fiveMinutes();
        SyntheticRun run = SyntheticRun.at(profile)
                .withLine(1, 0.05, 20)
                .withLine(3, 0.2, 100)
                .withLine(6, 0.08, 40)
                .withLine(RATIO, 0.03, 10)
                .withLine(2 * RATIO, 0.1, 200)
                .withLine(4 * RATIO, 0.05, 300)
                .withNoise(new Noise(0.05, 0))
                .withSeed(5);
        double[] once = run.samples(run.evenClock(RATE_HZ));
        int blocks = MINUTES * 60 * 20;
        long early = 0;
        int shown = 0;
        int wrong = 0;
        int amplitudes = 0;
        int outside = 0;
        double skippedS;
        try (LiveChain chain = chain()) {
            for (int i = 0; i < blocks; i++) {
                float[] block = new float[BLOCK];
                for (int k = 0; k < BLOCK; k++) {
                    block[k] = (float) once[(int) (((long) i * BLOCK + k) % once.length)];
                }
                chain.accept(block, BLOCK);
                while (!chain.upToDate((i + 1L) * BLOCK)) {
                    Thread.sleep(1);
                }
                if ((i + 1) % 5 == 0 && window.get() != null) {
                    LiveFigures figures = LiveFigures.of(RATIO, now.get(), Optional.of(window.get()));
                    double atS = (i + 1) / 20.0 % profile.durationS();
                    if (figures.engineRpm().isPresent()) {
                        shown++;
                        wrong += wrong(profile, atS, figures.engineRpm().get()) ? 1 : 0;
                    }
                    if (figures.bladePass().isPresent()) {
                        amplitudes++;
                        LiveFigures.Figure pass = figures.bladePass().get();
                        outside += Math.abs(pass.value() - 0.2) > 2 * pass.plusMinus() ? 1 : 0;
                    }
                }
                if (i == 5 * 60 * 20) {
                    early = held();
                }
            }
            skippedS = window.get().skippedS();
        }
        long late = held();
        Files.writeString(
                Path.of("target", "live-soak.txt"),
                String.format(
                        Locale.ROOT,
                        "%d min: %d quick speeds, %d windows, %.1f s skipped, %d failures; of %d rpm shown %d wrong,"
                                + " of %d amplitudes %d beyond twice their interval; held %.1f MB after 5 min, %.1f MB"
                                + " at the end%n",
                        MINUTES,
                        nows.get(),
                        windows.get(),
                        skippedS,
                        failures.get(),
                        shown,
                        wrong,
                        amplitudes,
                        outside,
                        early / 1e6,
                        late / 1e6));
        assertThat(failures).hasValue(0);
        assertThat(skippedS).isZero();
        assertThat(nows.get()).isEqualTo(blocks / 5);
        assertThat(shown).as("rpm shown in four fifths of the time").isGreaterThan(4 * blocks / 5 / 5);
        assertThat(wrong).isZero();
        assertThat(outside).isLessThanOrEqualTo(amplitudes / 100);
        // Tens of megabytes come and go with windows; half an hour of sound kept would be 58 MB.
        assertThat(late - early).isLessThan(20_000_000L);
    }

    private static boolean wrong(SpeedProfile profile, double atS, LiveFigures.Figure rpm) {
        for (double t = atS - 1; t <= atS; t += 0.01) {
            double truth = 60 * RATIO * profile.propellerHzAt((t + profile.durationS()) % profile.durationS());
            if (Math.abs(truth - rpm.value()) <= rpm.plusMinus()) {
                return false;
            }
        }
        return true;
    }

    private static long held() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}
