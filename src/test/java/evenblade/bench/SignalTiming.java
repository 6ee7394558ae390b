package evenblade.bench;

import com.sun.management.OperatingSystemMXBean;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.Decimator;
import evenblade.measure.signal.RealFft;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.signal.Waterfall;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.ByteOrder;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;

/**
 * Times the signal room on a file of raw little-endian floats at 48 kHz; started by {@code
 * src/test/scripts/signal_timing.py}, which does the same with SciPy. Prints "name, first, best" in
 * milliseconds of processor time: that of the whole process, compiler and collector included, for the
 * first run, that of the working thread for the best of all.
 */
final class SignalTiming {
    private static final double RATE_HZ = 48_000;
    private static final double KEEP_HZ = 1000;
    private static final int BLOCK = 4096;
    private static final int RUNS = 7;

    private static final ThreadMXBean THREAD = ManagementFactory.getThreadMXBean();
    private static final OperatingSystemMXBean PROCESS =
            ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

    private SignalTiming() {}

    public static void main(String[] args) throws IOException {
        if (args[0].equals("hour")) {
            hourOfStereo();
            return;
        }
        float[] samples = read(Path.of(args[0]));
        Series kept = time("reduce to 2.4 kHz", () -> reduce(samples, 1, samples.length))
                .channels()
                .get(0)
                .values();
        AveragedSpectrum welch = AveragedSpectrum.hann(4, RATE_HZ / 20, Spectrum.Scaling.AMPLITUDE);
        time("averaged spectrum of what is kept (4 s, Hann)", () -> welch.of(kept, RATE_HZ / 20));
        time("waterfall of what is kept", () -> Waterfall.of(kept, RATE_HZ / 20, 1000, 400, 600));
        for (int length : new int[] {4096, 9600, 65_536, 1_048_576}) {
            double[] signal = new double[length];
            for (int i = 0; i < length; i++) {
                signal[i] = samples[i];
            }
            RealFft fft = new RealFft(length);
            int repeats = Math.max(1, (1 << 20) / length);
            time(repeats + " transforms of " + length, () -> {
                for (int i = 0; i < repeats; i++) {
                    fft.transform(signal);
                }
                return fft.power(1);
            });
        }
    }

    private static void hourOfStereo() {
        float[] second = new float[2 * (int) RATE_HZ];
        for (int i = 0; i < second.length; i++) {
            second[i] = (float) Math.sin(i * 0.01);
        }
        for (double keepHz : new double[] {1000, 2000}) {
            long start = THREAD.getCurrentThreadCpuTime();
            Decimator decimator = Decimator.plan(RATE_HZ, keepHz, 2, 0, 1);
            for (int s = 0; s < 3600; s++) {
                decimator.accept(second, (int) RATE_HZ);
            }
            Recording kept = finish(decimator, 2, 3600L * (int) RATE_HZ);
            System.out.printf(
                    Locale.ROOT,
                    "an hour of stereo to %.0f Hz in a heap of %d MiB: %.0f ms%n",
                    kept.time().rateHz(),
                    Runtime.getRuntime().maxMemory() >> 20,
                    (THREAD.getCurrentThreadCpuTime() - start) / 1e6);
        }
    }

    private static Recording reduce(float[] samples, int channels, int frames) {
        Decimator decimator = Decimator.plan(RATE_HZ, KEEP_HZ, channels, 0);
        float[] block = new float[BLOCK * channels];
        for (int from = 0; from < frames; from += BLOCK) {
            int part = Math.min(BLOCK, frames - from);
            System.arraycopy(samples, from * channels, block, 0, part * channels);
            decimator.accept(block, part);
        }
        return finish(decimator, channels, frames);
    }

    private static Recording finish(Decimator decimator, int channels, long frames) {
        List<String> names = new ArrayList<>();
        List<ChannelQuality> quality = new ArrayList<>();
        for (int c = 0; c < channels; c++) {
            names.add("channel " + (c + 1));
            quality.add(new ChannelQuality(names.get(c), 0, 0, 1, 0, 1));
        }
        return decimator.recording(
                new StreamHeader(
                        Path.of("invented"),
                        "wav",
                        false,
                        RATE_HZ,
                        32,
                        OptionalLong.empty(),
                        names,
                        SignalUnit.FULL_SCALE,
                        1),
                new StreamSummary(FileHash.of(""), frames, quality, List.of()));
    }

    private interface Work<T> {
        T run();
    }

    private static <T> T time(String name, Work<T> work) {
        long first = 0;
        long best = Long.MAX_VALUE;
        T result = null;
        for (int run = 0; run < RUNS; run++) {
            long all = PROCESS.getProcessCpuTime();
            long own = THREAD.getCurrentThreadCpuTime();
            result = work.run();
            first = run == 0 ? PROCESS.getProcessCpuTime() - all : first;
            best = Math.min(best, THREAD.getCurrentThreadCpuTime() - own);
        }
        System.out.printf(Locale.ROOT, "%s, %.0f, %.1f%n", name, first / 1e6, best / 1e6);
        return result;
    }

    private static float[] read(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file)) {
            MappedByteBuffer bytes = channel.map(FileChannel.MapMode.READ_ONLY, 0, channel.size());
            float[] samples = new float[(int) (channel.size() / 4)];
            bytes.order(ByteOrder.LITTLE_ENDIAN).asFloatBuffer().get(samples);
            return samples;
        }
    }
}
