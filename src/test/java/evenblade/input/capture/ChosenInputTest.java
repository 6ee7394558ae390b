package evenblade.input.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.WarningCode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("The input that was chosen")
class ChosenInputTest {
    @TempDir
    Path folder;

    /** An input that goes on for ever and says where it comes from. */
    private static LiveSource moved(AtomicReference<String> from) {
        ScriptedInput sound = new ScriptedInput(ScriptedInput.mono16(), (read, most) -> {
            try {
                Thread.sleep(10);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            return Math.min(80, most);
        });
        return new LiveSource() {
            @Override
            public String name() {
                return sound.name();
            }

            @Override
            public InputFormat format() {
                return sound.format();
            }

            @Override
            public void start() {
                sound.start();
            }

            @Override
            public int read(byte[] into, int mostFrames) throws java.io.IOException {
                return sound.read(into, mostFrames);
            }

            @Override
            public Optional<String> comesFrom() {
                return Optional.of(from.getAndSet("built-in microphone"));
            }

            @Override
            public void close() {
                sound.close();
            }
        };
    }

    @Test
    @DisplayName("ends the take when the system hands over another one, and both are named")
    void aSilentSwitchEndsTheTake() {
        Recorder recorder = Recorder.prepare(
                moved(new AtomicReference<>("measuring microphone")),
                folder.resolve("a.wav"),
                () -> Long.MAX_VALUE,
                OptionalDouble.of(60),
                1);

        Take take = recorder.record((block, frames) -> {});

        assertThat(take.ending()).isEqualTo(Ending.INPUT_CHANGED);
        assertThat(take.ending().unwanted()).isTrue();
        assertThat(take.detail())
                .isEqualTo(Fact.of(
                        CaptureFact.GAVE_WAY, new Quoted("measuring microphone"), new Quoted("built-in microphone")));
        assertThat(take.warnings()).extracting(w -> w.code()).contains(WarningCode.INPUT_CHANGED);
        assertThat(take.durationS()).isLessThan(30);
    }

    private static void feed(NoiseFloor floor, Random random, double gain, int blocks) {
        float[] block = new float[400];
        for (int b = 0; b < blocks; b++) {
            for (int i = 0; i < block.length; i++) {
                block[i] = (float) (gain * (0.1 * Math.sin(0.3 * i) + 0.02 * random.nextGaussian()));
            }
            floor.take(block, 1, block.length);
        }
    }

    @Test
    @DisplayName("is another one where level and noise step together behind a gap, and the same one where they don't")
    void levelAndFloorTellAGapFromASwitch() {
        Random random = new Random(5);
        NoiseFloor floor = new NoiseFloor(8000);
        feed(floor, random, 1, 200);
        feed(floor, random, 0.25, 100);
        Fact step = floor.stepAt(200 * 400L).orElseThrow();
        assertThat(step.code()).isEqualTo(CaptureFact.NOISE_STEPPED);
        // A quarter of the gain is 20·lg(1/4) = −12.04 dB; 200 blocks leave the noise some tenths of that.
        assertThat(step.values()).hasSize(2).allSatisfy(db -> assertThat(((Amount) db).value())
                .isCloseTo(-12.04, within(0.5)));
        assertThat(floor.stepAt(260 * 400L)).isEmpty();

        NoiseFloor steady = new NoiseFloor(8000);
        feed(steady, random, 1, 300);
        assertThat(steady.stepAt(200 * 400L)).isEmpty();
    }

    @Test
    @DisplayName("gives exact zeros at once as something that no real input does")
    void exactZerosAreCounted() {
        LevelMeter meter = new LevelMeter(8000, List.of("mono"), Optional.empty());
        meter.accept(new float[8000], 8000);
        assertThat(meter.zeroS()).isEqualTo(1);
        float[] oneBit = new float[400];
        oneBit[7] = 1f / (1 << 23);
        meter.accept(oneBit, 400);
        assertThat(meter.zeroS()).isZero();
    }
}
