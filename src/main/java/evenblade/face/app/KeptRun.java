package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.base.json.RecordCodec;
import evenblade.base.json.RecordCodec.Adapter;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.Series;
import evenblade.input.recording.Source;
import evenblade.input.recording.StampQuality;
import evenblade.machine.installation.Installation;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.speed.SpeedResult;
import evenblade.measure.speed.SpeedTrack;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Optional;

/**
 * An analysed run as a job's cache keeps it: its whole answer, and of its curves as much as pictures need, in single
 * precision. Nothing of how the run is called or of its conditions, for these don't depend on the recording.
 */
record KeptRun(
        Source source,
        SpeedResult speed,
        List<ChannelOrders> channels,
        List<ChannelQuality> quality,
        Optional<StampQuality> stamps,
        List<Warning> warnings,
        List<ChannelView> views,
        boolean turning) {
    /** To be raised when what is measured changes; what is kept of it is told by {@link #SHAPE}. */
    private static final int MEASURED = 10;

    private static final RecordCodec<KeptRun> CODEC = new RecordCodec<>(
            KeptRun.class,
            List.of(
                    new Adapter<>(Path.class, String.class, Path::toString, Path::of),
                    new Adapter<>(FileHash.class, String.class, FileHash::hex, FileHash::of),
                    new Adapter<>(Instant.class, String.class, Instant::toString, Instant::parse),
                    new Adapter<>(SpeedTrack.class, EvenTrack.class, EvenTrack::of, EvenTrack::track),
                    new Adapter<>(Spectrum.class, EvenSpectrum.class, EvenSpectrum::of, EvenSpectrum::spectrum),
                    new Adapter<>(Series.class, String.class, KeptRun::text, KeptRun::series)));

    /** On what form and what measuring a kept run depends. */
    static final String SHAPE = MEASURED + "\n" + CODEC.shape();

    /**
     * The frequencies of an averaged spectrum are whole multiples of its step.
     *
     * @param values amplitudes
     * @param binHz step from one to the next
     */
    private record EvenSpectrum(Series values, double binHz, double noiseBandwidthHz, int segments) {
        static EvenSpectrum of(Spectrum spectrum) {
            return new EvenSpectrum(
                    spectrum.values(), spectrum.binHz(), spectrum.noiseBandwidthHz(), spectrum.segments());
        }

        Spectrum spectrum() {
            double[] hz = new double[values.size()];
            for (int i = 0; i < hz.length; i++) {
                hz[i] = i * binHz;
            }
            return new Spectrum(Series.of(hz), values, Spectrum.Scaling.AMPLITUDE, binHz, noiseBandwidthHz, segments);
        }
    }

    /**
     * A speed at even steps.
     *
     * @param propellerHz from the first time to the last
     */
    private record EvenTrack(double fromS, double toS, Series propellerHz) {
        static EvenTrack of(SpeedTrack track) {
            SampledTrack sampled = SampledTrack.of(track);
            return new EvenTrack(sampled.fromS(), sampled.toS(), sampled.propellerHz());
        }

        SampledTrack track() {
            return new SampledTrack(fromS, toS, propellerHz);
        }
    }

    static byte[] written(AnalysedRun run) {
        RunOrders orders = run.orders();
        return CODEC.written(new KeptRun(
                orders.source(),
                orders.speed(),
                orders.channels(),
                orders.quality(),
                orders.stamps(),
                orders.warnings(),
                run.views(),
                run.turning()));
    }

    /**
     * The run again; empty where the bytes don't hold one.
     *
     * @param file where its recording lies now
     */
    static Optional<AnalysedRun> read(byte[] bytes, Path file, Installation installation) {
        return CODEC.read(bytes).map(kept -> new AnalysedRun(
                        new RunOrders(
                                kept.source,
                                installation,
                                kept.speed,
                                kept.channels,
                                kept.quality,
                                kept.stamps,
                                kept.warnings),
                        kept.views,
                        kept.turning)
                .at(file));
    }

    private static String text(Series series) {
        ByteBuffer buffer = ByteBuffer.allocate(series.size() * Float.BYTES);
        for (int i = 0; i < series.size(); i++) {
            buffer.putFloat((float) series.at(i));
        }
        return Base64.getEncoder().encodeToString(buffer.array());
    }

    private static Series series(String text) {
        ByteBuffer buffer = ByteBuffer.wrap(Base64.getDecoder().decode(text));
        float[] values = new float[buffer.remaining() / Float.BYTES];
        buffer.asFloatBuffer().get(values);
        return Series.ofFloats(values, values.length);
    }

    /**
     * A speed that was read at even steps and kept so, straight between them: for pictures of the speed.
     *
     * @param fromS first time
     * @param toS last time
     * @param propellerHz speed at even steps from the first time to the last, at least 2
     */
    record SampledTrack(double fromS, double toS, Series propellerHz) implements SpeedTrack {
        private static final int POINTS = 2000; // more than a picture has pixels across

        SampledTrack {
            if (propellerHz.size() < 2 || !(toS >= fromS)) {
                throw new IllegalArgumentException(
                        "a track of " + propellerHz.size() + " speeds from " + fromS + " to " + toS + " s");
            }
        }

        static SampledTrack of(SpeedTrack track) {
            if (track instanceof SampledTrack sampled) {
                return sampled;
            }
            double[] hz = new double[POINTS];
            for (int i = 0; i < POINTS; i++) {
                hz[i] = track.propellerHzAt(track.fromS() + i * (track.toS() - track.fromS()) / (POINTS - 1));
            }
            return new SampledTrack(track.fromS(), track.toS(), Series.of(hz));
        }

        /** Step by step, as the speed runs straight between its points. */
        @Override
        public double revolutionsAt(double timeS) {
            double stepS = (toS - fromS) / (propellerHz.size() - 1);
            double turned = 0;
            double at = fromS;
            while (at + stepS < timeS && at + stepS < toS) {
                turned += stepS * (propellerHzAt(at) + propellerHzAt(at + stepS)) / 2;
                at += stepS;
            }
            return turned + (timeS - at) * (propellerHzAt(at) + propellerHzAt(timeS)) / 2;
        }

        @Override
        public double propellerHzAt(double timeS) {
            double share = toS > fromS ? (timeS - fromS) / (toS - fromS) : 0;
            double place = Math.max(0, Math.min(1, share)) * (propellerHz.size() - 1);
            int left = (int) Math.min(propellerHz.size() - 2.0, Math.floor(place));
            return propellerHz.at(left) + (place - left) * (propellerHz.at(left + 1) - propellerHz.at(left));
        }
    }
}
