package evenblade.measure.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Reduction;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.speed.SpeedPrior;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class LiveChainTest {
    private static final int RATE_HZ = 8000;
    private static final double PROPELLER_HZ = 32.9;

    private static WindowReader reader(Optional<String> mark) {
        Installation invented = new Installation(
                Optional.of("invented"),
                new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.of(1600), OptionalDouble.of(5600)),
                new Reduction(Reduction.Kind.UNSTATED, 2.43, Optional.empty()),
                new Installation.Propeller(3, Optional.empty(), Optional.empty()),
                List.of());
        return new WindowReader(invented, SpeedPrior.between(11, 39), mark);
    }

    private static float[] run(double seconds) {
        SyntheticRun run = SyntheticRun.at(SpeedProfile.steady(PROPELLER_HZ, seconds))
                .withLine(1, 0.05, 20)
                .withLine(3, 0.2, 100)
                .withLine(6, 0.08, 40)
                .withLine(4.86, 0.1, 200)
                .withNoise(new Noise(0.01, 0))
                .withSeed(5);
        double[] samples = run.samples(run.evenClock(RATE_HZ));
        float[] sound = new float[samples.length];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) samples[i];
        }
        return sound;
    }

    /** Sends sound in blocks of a twentieth of a second. */
    private static void send(LiveChain chain, float[] sound, long pauseMs) throws InterruptedException {
        int block = RATE_HZ / 20;
        for (int from = 0; from + block <= sound.length; from += block) {
            chain.accept(Arrays.copyOfRange(sound, from, from + block), block);
            Thread.sleep(pauseMs);
        }
    }

    private static Level.Measured level(LiveReading reading, OrderLine.Role role) {
        OrderReading first = reading.channels().get(0).dwells().get(0).readings().stream()
                .filter(r -> r.line().role() == role)
                .findFirst()
                .orElseThrow();
        return (Level.Measured) first.level();
    }

    @Test
    void speedAndOrdersOfTheLatestWindowAreThoseOfTheRun() throws InterruptedException {
        List<LiveReading> readings = new CopyOnWriteArrayList<>();
        try (LiveChain chain = new LiveChain(RATE_HZ, List.of("mono"), 1000, reader(Optional.empty()), readings::add)) {
            // 190 blocks: fewer than wait at most, so none is left out on a busy machine either.
            send(chain, run(9.5), 5);
        }

        LiveReading last = readings.get(readings.size() - 1);
        assertThat(last.toS() - last.fromS()).isCloseTo(LiveChain.WINDOW_S, within(0.05));
        assertThat(last.propellerRpm().orElseThrow()).isCloseTo(60 * PROPELLER_HZ, within(0.6));
        Level.Measured once = level(last, OrderLine.Role.UNEVEN_PROPELLER);
        Level.Measured bladePass = level(last, OrderLine.Role.BLADE_PASS);
        assertThat(once.amplitude()).isCloseTo(0.05, within(4 * once.standardError()));
        assertThat(bladePass.amplitude()).isCloseTo(0.2, within(4 * bladePass.standardError()));
        assertThat(last.skippedS()).isZero();
    }

    /**
     * The view stands still until every block is handed over. Were a block to wait for the view, both would stand until
     * the view's patience ends, and that is what is looked at: no time is measured.
     */
    @Test
    void aSlowViewNeverHoldsUpWhoeverRecordsAndSaysWhatItSkipped() throws InterruptedException {
        CountDownLatch stuck = new CountDownLatch(1);
        AtomicBoolean handedOverInVain = new AtomicBoolean();
        List<LiveReading> readings = new CopyOnWriteArrayList<>();
        float[] sound = run(20);
        LiveChain chain = new LiveChain(RATE_HZ, List.of("mono"), 1000, reader(Optional.empty()), reading -> {
            readings.add(reading);
            handedOverInVain.compareAndSet(false, !await(stuck));
        });
        send(chain, Arrays.copyOf(sound, 2 * RATE_HZ), 5);
        awaitReadings(readings, 1);
        send(chain, sound, 0);
        stuck.countDown();
        awaitReadings(readings, 2);
        send(chain, Arrays.copyOf(sound, 2 * RATE_HZ), 0);
        chain.close();

        assertThat(handedOverInVain).as("the view lost its patience first").isFalse();
        LiveReading last = readings.get(readings.size() - 1);
        // 400 blocks came while the view stood; 200 wait at most, of which up to 20 are left from before.
        assertThat(last.skippedS()).isBetween(10.0, 11.0);
        assertThat(last.fromS()).as("the window begins anew behind the break").isGreaterThan(12);
    }

    private static void awaitReadings(List<LiveReading> readings, int count) throws InterruptedException {
        while (readings.size() < count) {
            Thread.sleep(10);
        }
    }

    /**
     * A run that begins out of silence at a known sample, sent as an input would: the first reading that shows anything
     * holds that sample. It is begun at different places between two readings.
     */
    @Test
    @Tag("long")
    void fromASampleToTheFirstReadingThatHoldsItTakesAtMostOneAndAHalfHops() throws Exception {
        List<Double> latencies = new ArrayList<>();
        // The first is not judged: the program is still being compiled.
        for (int i = 0; i < 9; i++) {
            double latencyS = latency(5.05 + 0.125 * i);
            if (i > 0) {
                latencies.add(latencyS);
            }
        }

        Files.writeString(Path.of("target", "live-latency.txt"), latencies + " s\n");
        assertThat(latencies).allSatisfy(s -> assertThat(s).isBetween(0.0, 1.5 * LiveChain.HOP_S));
    }

    private static double latency(double silentS) throws InterruptedException {
        int silent = (int) Math.round(silentS * RATE_HZ);
        float[] run = run(3);
        float[] sound = new float[silent + run.length];
        System.arraycopy(run, 0, sound, silent, run.length);
        AtomicReference<Double> shownS = new AtomicReference<>();
        long began = System.nanoTime();
        try (LiveChain chain = new LiveChain(RATE_HZ, List.of("mono"), 1000, reader(Optional.empty()), reading -> {
            if (reading.spectrum().isPresent()) {
                shownS.compareAndSet(null, (System.nanoTime() - began) / 1e9);
            }
        })) {
            int block = RATE_HZ / 20;
            for (int from = 0; from + block <= sound.length && shownS.get() == null; from += block) {
                // A block is handed over once its last sample has been heard.
                while ((System.nanoTime() - began) / 1e9 < (double) (from + block) / RATE_HZ) {
                    Thread.sleep(1);
                }
                chain.accept(Arrays.copyOfRange(sound, from, from + block), block);
            }
        }
        return shownS.get() - silentS;
    }

    @Test
    @Tag("long")
    void aFullWindowIsReadSoonEnoughThatNoSampleWaitsLongerThanOneAndAHalfHops() throws InterruptedException {
        float[] sound = run(25);
        List<Double> ages = new CopyOnWriteArrayList<>();
        long began = System.nanoTime();
        try (LiveChain chain = new LiveChain(RATE_HZ, List.of("mono"), 1000, reader(Optional.empty()), reading -> {
            double nowS = (System.nanoTime() - began) / 1e9;
            ages.add(nowS - reading.toS());
        })) {
            int block = RATE_HZ / 20;
            for (int from = 0; from + block <= sound.length; from += block) {
                while ((System.nanoTime() - began) / 1e9 < (double) (from + block) / RATE_HZ) {
                    Thread.sleep(1);
                }
                chain.accept(Arrays.copyOfRange(sound, from, from + block), block);
            }
        }

        // A sample that just missed a window waits one hop more than the newest one in it. The first windows
        // are read while the program is still being compiled.
        List<Double> settled = ages.subList(8, ages.size() - 1);
        double worst = settled.stream().mapToDouble(a -> a).max().orElseThrow() + LiveChain.HOP_S;
        assertThat(worst).isLessThan(1.5 * LiveChain.HOP_S);
    }

    /** Whether the latch opened before patience ended; far beyond what a busy machine needs. */
    private static boolean await(CountDownLatch latch) {
        try {
            return latch.await(120, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    @Test
    void silenceHasNoSpeed() throws InterruptedException {
        List<LiveReading> readings = new CopyOnWriteArrayList<>();
        try (LiveChain chain = new LiveChain(RATE_HZ, List.of("mono"), 1000, reader(Optional.empty()), readings::add)) {
            send(chain, new float[5 * RATE_HZ], 1);
        }

        assertThat(readings).isNotEmpty().allSatisfy(r -> assertThat(r.speed()).isEmpty());
    }
}
