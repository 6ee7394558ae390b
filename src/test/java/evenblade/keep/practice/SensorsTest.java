package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.Installation;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SensorsTest {
    private static final Installation GEARED = Installations.gearedThreeBlade();
    private static final PracticeRun RUN = PracticeRun.of(GEARED)
            .withFault(Fault.MASS_IMBALANCE)
            .withFault(Fault.WEAK_CYLINDER)
            .at(4800)
            .forSeconds(20)
            .wandering(0.005)
            .seeded(3);

    @TempDir
    Path folder;

    @Test
    void theAccelerometersFileHoldsWhatItsTruthSays() throws Exception {
        Path file = TruthFile.record(RUN, AccelerometerWav.oneAxisWithMark(SensorAxis.ACROSS), folder, "run");
        double[] first = firstChannel(file, 50);

        assertTruthIsIn(first, new TimeBase.Even(0, 4000, first.length), channelOfFirstDwell("run", 0), 0.005);
    }

    @Test
    void thePhonesFileHoldsWhatItsTruthSays() throws Exception {
        Path file = TruthFile.record(RUN, PhoneLogger.usual(), folder, "run");
        List<double[]> rows = Files.readAllLines(file).stream()
                .skip(2)
                .map(line -> java.util.stream.Stream.of(line.split(","))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toList();
        double mean = rows.stream().mapToDouble(row -> row[3]).average().orElseThrow();
        TimeBase time = new TimeBase.Stamped(
                Series.of(rows.stream().mapToDouble(row -> row[0] / 1000).toArray()), 416);
        double[] up = rows.stream().mapToDouble(row -> row[3] - mean).toArray();

        assertThat(mean).isCloseTo(9.79, within(0.1));
        // Rows lost and doubled let a few parts in a thousand of the strongest line (3 m/s²) into the others.
        assertTruthIsIn(up, time, channelOfFirstDwell("run", 2), 0.02);
    }

    @Test
    void theMicrophonesFileHoldsWhatItsTruthSays() throws Exception {
        Path file = TruthFile.record(RUN.forSeconds(4), LaptopMicrophone.usual(), folder, "run");
        double[] sound = firstChannel(file, 1);
        JsonObject truth = channelOfFirstDwell("run", 0);

        assertThat(truth.text("unit")).isEqualTo("FS");
        assertTruthIsIn(sound, new TimeBase.Even(0, 44_100, sound.length), truth, 0.0005);
    }

    @Test
    void aPhoneThatIsShakenBeyondItsRangeSaysHowOften() throws IOException {
        PracticeRun rough = RUN.forSeconds(5).withNoise(Noise.white(20));
        TruthFile.record(rough, new PhoneLogger(416, 4, 0, 0, 0), folder, "rough");
        assertThat(channelOfFirstDwell("rough", 0).number("samplesBeyondRange", 0, 1e9))
                .isBetween(50.0, 200.0);
        assertThat(Files.readString(folder.resolve("rough.csv")))
                .contains("39.22540")
                .contains("-39.22660");
    }

    @Test
    void everyFileSaysThatItIsInvented() throws IOException {
        PracticeRun brief = RUN.forSeconds(2);
        for (Sensor sensor :
                List.of(AccelerometerWav.threeAxesWithMark(4000), PhoneLogger.usual(), LaptopMicrophone.usual())) {
            Path file = TruthFile.record(brief, sensor, folder, "brief");
            assertThat(Files.readString(file, StandardCharsets.ISO_8859_1)).contains("INVENTED for practice");
            assertThat(Files.readString(folder.resolve("brief.truth.json"))).contains("INVENTED for practice");
        }
    }

    /** Each strong line of the truth is found in the samples within 2 % and what noise adds. */
    private static void assertTruthIsIn(double[] samples, TimeBase time, JsonObject channel, double noise) {
        int checked = 0;
        for (JsonObject order : channel.objects("orders")) {
            double amplitude = order.number("amplitude", 0, 1e9);
            double frequencyHz = order.number("frequencyHz", 0, 1e9);
            boolean strong = amplitude > (channel.text("unit").equals("FS") ? 0.002 : 0.1);
            if (strong && frequencyHz < 0.42 * time.rateHz()) {
                double found = Projection.of(
                                samples,
                                time,
                                RUN.forSeconds(time.durationS()).trueSpeed(),
                                order.number("propellerOrder", 0, 1e9),
                                0,
                                time.durationS())
                        .magnitude();
                assertThat(found).as(order.text("name")).isCloseTo(amplitude, within(0.02 * amplitude + noise));
                checked++;
            }
        }
        assertThat(checked).isGreaterThanOrEqualTo(3);
    }

    private JsonObject channelOfFirstDwell(String name, int index) {
        return JsonDocument.read(folder.resolve(name + ".truth.json"))
                .objects("dwells")
                .get(0)
                .objects("channels")
                .get(index);
    }

    private static double[] firstChannel(Path file, double fullScale) throws Exception {
        try (AudioInputStream in = AudioSystem.getAudioInputStream(file.toFile())) {
            int frame = in.getFormat().getFrameSize();
            byte[] bytes = in.readAllBytes();
            double[] samples = new double[bytes.length / frame];
            for (int i = 0; i < samples.length; i++) {
                int step = (bytes[i * frame] & 0xff) | (bytes[i * frame + 1] << 8);
                samples[i] = step * fullScale / 32768;
            }
            return samples;
        }
    }
}
