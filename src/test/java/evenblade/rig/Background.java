package evenblade.rig;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jflac.FLACDecoder;
import org.jflac.PCMProcessor;
import org.jflac.metadata.StreamInfo;
import org.jflac.util.ByteData;

/** A recorded sound (mono FLAC) that nobody here invented; the run is made at its rate. Values −1 to 1. */
public final class Background {
    private static final double CROSSFADE_S = 0.25;

    private final String name;
    private final double rateHz;
    private final double[] samples;

    Background(String name, double rateHz, double[] samples) {
        this.name = name;
        this.rateHz = rateHz;
        this.samples = samples.clone();
    }

    public static Background read(Path flac) throws IOException {
        Collect all = new Collect();
        try (InputStream in = new BufferedInputStream(Files.newInputStream(flac))) {
            FLACDecoder decoder = new FLACDecoder(in);
            decoder.addPCMProcessor(all);
            decoder.decode();
        }
        return new Background(flac.getFileName().toString(), all.rateHz, Arrays.copyOf(all.samples, all.count));
    }

    public String name() {
        return name;
    }

    public double rateHz() {
        return rateHz;
    }

    public double seconds() {
        return samples.length / rateHz;
    }

    /**
     * As many samples as asked for. Where the recording is longer: a piece of it from a random start. Where it is
     * shorter: pieces of 60–100 % of it from random starts, one after the other, blended over 0.25 s with equal power,
     * so that no period of repetition arises.
     */
    double[] piece(int count, Dice dice) {
        if (count <= samples.length) {
            int from = dice.between(0, samples.length - count);
            return Arrays.copyOfRange(samples, from, from + count);
        }
        int fade = (int) (CROSSFADE_S * rateHz);
        double[] out = new double[count];
        int at = 0;
        while (at < count) {
            int length = (int) (samples.length * dice.uniform(0.6, 1));
            int from = dice.between(0, samples.length - length);
            double sign = dice.chance(0.5) ? 1 : -1;
            for (int i = 0; i < length && at + i < count; i++) {
                double in = at == 0 ? 1 : Math.min(1, (double) i / fade);
                double end = Math.min(1, (double) (length - i) / fade);
                out[at + i] += sign * samples[from + i] * Math.sin(Math.PI / 2 * in) * Math.sin(Math.PI / 2 * end);
            }
            at += length - fade;
        }
        return out;
    }

    /**
     * This sound behind the machine. The machine stays as it is; the sound is scaled so that the machine's power below
     * 400 Hz over the sound's power below 400 Hz is {@code levelDb}. Behind a standing machine: as recorded.
     */
    public Disturbance behind(double levelDb) {
        return new Behind(this, levelDb);
    }

    private record Behind(Background sound, double levelDb) implements Disturbance {
        static final double UP_TO_HZ = 400; // the level is defined below this

        @Override
        public Place place() {
            return Place.OUTSIDE;
        }

        @Override
        public void apply(Scene scene, int channel, double[] x, Dice dice) {
            if (Math.abs(scene.rateHz() - sound.rateHz) > 1e-6) {
                throw new IllegalArgumentException("run at " + scene.rateHz() + " Hz, sound at " + sound.rateHz
                        + " Hz: make the run with Sampling.even(" + sound.rateHz + ")");
            }
            double[] piece = sound.piece(x.length, dice);
            double machine = Spectra.powerBelow(x, scene.rateHz(), UP_TO_HZ);
            double other = Spectra.powerBelow(piece, scene.rateHz(), UP_TO_HZ);
            double factor = machine > 0 && other > 0 ? Math.sqrt(machine / other) * Math.pow(10, -levelDb / 20) : 1;
            for (int i = 0; i < x.length; i++) {
                x[i] += factor * piece[i];
            }
        }

        @Override
        public Map<String, Object> truth() {
            Map<String, Object> map = new LinkedHashMap<>();
            map.put("kind", "background");
            map.put("file", sound.name);
            map.put("machineOverSoundDb", levelDb);
            return map;
        }
    }

    private static final class Collect implements PCMProcessor {
        private double rateHz;
        private int bytesPerSample = 2;
        private int channels = 1;
        private double[] samples = new double[1 << 17];
        private int count;

        @Override
        public void processStreamInfo(StreamInfo info) {
            rateHz = info.getSampleRate();
            bytesPerSample = info.getBitsPerSample() / 8;
            channels = info.getChannels();
        }

        @Override
        public void processPCM(ByteData data) {
            byte[] bytes = data.getData();
            int frame = bytesPerSample * channels;
            for (int at = 0; at + frame <= data.getLen(); at += frame) {
                int value = 0;
                for (int b = 0; b < bytesPerSample; b++) {
                    value |= (bytes[at + b] & 0xFF) << (32 - 8 * bytesPerSample + 8 * b);
                }
                if (count == samples.length) {
                    samples = Arrays.copyOf(samples, 2 * count);
                }
                samples[count++] = value / 2147483648.0;
            }
        }
    }
}
