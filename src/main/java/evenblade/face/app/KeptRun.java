package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Series;
import evenblade.input.recording.Source;
import evenblade.input.recording.StampQuality;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.AngleAverage;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders.Unevenness;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.orders.UnexplainedLine;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.speed.DoubtfulDwell;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedDoubt;
import evenblade.measure.speed.SpeedResult;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The form in which a job's cache keeps an analysed run: its whole answer, and of its curves as much as
 * pictures need, in single precision. Nothing of how the run is called or of its conditions, for these
 * don't depend on the recording.
 */
final class KeptRun {
    /** To be raised with every change of this form or of what is measured. */
    static final int FORMAT = 6;

    private KeptRun() {}

    static byte[] written(AnalysedRun run) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            RunOrders orders = run.orders();
            source(out, orders.source());
            speed(out, orders.speed());
            KeptFields.list(out, orders.channels(), KeptRun::channel);
            KeptFields.list(out, orders.quality(), KeptRun::quality);
            KeptFields.optional(out, orders.stamps(), KeptRun::stamps);
            KeptFields.list(out, orders.warnings(), KeptRun::warning);
            KeptFields.list(out, run.views(), KeptRun::view);
            out.writeBoolean(run.turning());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /**
     * The run again; empty where the bytes aren't in this form.
     *
     * @param file where its recording lies now
     */
    static Optional<AnalysedRun> read(byte[] bytes, Path file, Installation installation) {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            RunOrders orders = new RunOrders(
                    source(in, file),
                    installation,
                    speed(in),
                    KeptFields.list(in, KeptRun::channel),
                    KeptFields.list(in, KeptRun::quality),
                    KeptFields.optional(in, KeptRun::stamps),
                    KeptFields.list(in, KeptRun::warning));
            return Optional.of(new AnalysedRun(orders, KeptFields.list(in, KeptRun::view), in.readBoolean()));
        } catch (IOException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static void source(DataOutputStream out, Source source) throws IOException {
        KeptFields.text(out, source.sha256());
        KeptFields.text(out, source.kind());
        out.writeBoolean(source.lossy());
        out.writeDouble(source.sampleRateHz());
        out.writeDouble(source.durationS());
        KeptFields.list(out, source.channels(), KeptFields::text);
    }

    private static Source source(DataInputStream in, Path file) throws IOException {
        return new Source(
                file,
                KeptFields.text(in),
                KeptFields.text(in),
                in.readBoolean(),
                in.readDouble(),
                in.readDouble(),
                KeptFields.list(in, KeptFields::text));
    }

    private static void speed(DataOutputStream out, SpeedResult speed) throws IOException {
        KeptFields.text(out, speed.origin().name());
        out.writeBoolean(speed.confirmed());
        KeptFields.optional(out, speed.doubt(), KeptFields::text);
        track(out, SampledTrack.of(speed.track()));
        KeptFields.optional(out, speed.main(), KeptRun::dwell);
        KeptFields.list(out, speed.dwells(), KeptRun::dwell);
        KeptFields.list(out, speed.doubtful(), KeptRun::doubtful);
        KeptFields.optional(out, speed.otherMachine(), DataOutputStream::writeBoolean);
        out.writeDouble(speed.ratioCorrection());
        KeptFields.list(out, speed.warnings(), KeptRun::warning);
    }

    private static SpeedResult speed(DataInputStream in) throws IOException {
        return new SpeedResult(
                SpeedResult.Origin.valueOf(KeptFields.text(in)),
                in.readBoolean(),
                KeptFields.optional(in, KeptFields::text),
                track(in),
                KeptFields.optional(in, KeptRun::dwell),
                KeptFields.list(in, KeptRun::dwell),
                KeptFields.list(in, KeptRun::doubtful),
                KeptFields.optional(in, DataInputStream::readBoolean),
                in.readDouble(),
                KeptFields.list(in, KeptRun::warning));
    }

    private static void track(DataOutputStream out, SampledTrack track) throws IOException {
        out.writeDouble(track.fromS());
        out.writeDouble(track.toS());
        KeptFields.curve(out, track.propellerHz());
    }

    private static SampledTrack track(DataInputStream in) throws IOException {
        return new SampledTrack(in.readDouble(), in.readDouble(), KeptFields.curve(in));
    }

    private static void dwell(DataOutputStream out, Dwell dwell) throws IOException {
        out.writeDouble(dwell.fromS());
        out.writeDouble(dwell.toS());
        out.writeDouble(dwell.propellerHz());
        out.writeDouble(dwell.standardErrorHz());
        out.writeDouble(dwell.minHz());
        out.writeDouble(dwell.maxHz());
        KeptFields.list(out, dwell.confirmedBy(), KeptRun::line);
    }

    private static Dwell dwell(DataInputStream in) throws IOException {
        return new Dwell(
                in.readDouble(),
                in.readDouble(),
                in.readDouble(),
                in.readDouble(),
                in.readDouble(),
                in.readDouble(),
                KeptFields.list(in, KeptRun::line));
    }

    private static void doubtful(DataOutputStream out, DoubtfulDwell dwell) throws IOException {
        out.writeDouble(dwell.fromS());
        out.writeDouble(dwell.toS());
        out.writeDouble(dwell.propellerHz());
        KeptFields.text(out, dwell.doubt().name());
    }

    private static DoubtfulDwell doubtful(DataInputStream in) throws IOException {
        return new DoubtfulDwell(
                in.readDouble(), in.readDouble(), in.readDouble(), SpeedDoubt.valueOf(KeptFields.text(in)));
    }

    private static void line(DataOutputStream out, OrderLine line) throws IOException {
        KeptFields.text(out, line.of().name());
        out.writeDouble(line.order());
        out.writeDouble(line.propellerOrder());
        KeptFields.text(out, line.name());
        KeptFields.text(out, line.role().name());
    }

    private static OrderLine line(DataInputStream in) throws IOException {
        return new OrderLine(
                Shaft.valueOf(KeptFields.text(in)),
                in.readDouble(),
                in.readDouble(),
                KeptFields.text(in),
                OrderLine.Role.valueOf(KeptFields.text(in)));
    }

    private static void channel(DataOutputStream out, ChannelOrders channel) throws IOException {
        KeptFields.text(out, channel.channel());
        KeptFields.text(out, channel.unit().name());
        KeptFields.list(out, channel.dwells(), KeptRun::dwellOrders);
    }

    private static ChannelOrders channel(DataInputStream in) throws IOException {
        return new ChannelOrders(
                KeptFields.text(in),
                SignalUnit.valueOf(KeptFields.text(in)),
                KeptFields.list(in, KeptRun::dwellOrders));
    }

    private static void dwellOrders(DataOutputStream out, DwellOrders measured) throws IOException {
        dwell(out, measured.dwell());
        KeptFields.list(out, measured.readings(), KeptRun::reading);
        KeptFields.list(out, measured.unexplained(), KeptRun::unexplained);
        KeptFields.optional(out, measured.unevenness(), KeptRun::unevenness);
    }

    private static DwellOrders dwellOrders(DataInputStream in) throws IOException {
        return new DwellOrders(
                dwell(in),
                KeptFields.list(in, KeptRun::reading),
                KeptFields.list(in, KeptRun::unexplained),
                KeptFields.optional(in, KeptRun::unevenness));
    }

    private static void reading(DataOutputStream out, OrderReading reading) throws IOException {
        line(out, reading.line());
        out.writeDouble(reading.frequencyHz());
        out.writeBoolean(reading.level() instanceof Level.Measured);
        if (reading.level() instanceof Level.Measured level) {
            out.writeDouble(level.amplitude());
            out.writeDouble(level.standardError());
            out.writeDouble(level.ciLow());
            out.writeDouble(level.ciHigh());
            KeptFields.number(out, level.phaseDeg());
            out.writeBoolean(level.detected());
            KeptFields.text(out, level.estimator().name());
        } else {
            out.writeDouble(((Level.BeyondRange) reading.level()).foldsToHz());
        }
        KeptFields.list(out, reading.inseparableFrom(), KeptFields::text);
    }

    private static OrderReading reading(DataInputStream in) throws IOException {
        OrderLine line = line(in);
        double frequencyHz = in.readDouble();
        Level level = in.readBoolean()
                ? new Level.Measured(
                        in.readDouble(),
                        in.readDouble(),
                        in.readDouble(),
                        in.readDouble(),
                        KeptFields.number(in),
                        in.readBoolean(),
                        Level.Estimator.valueOf(KeptFields.text(in)))
                : new Level.BeyondRange(in.readDouble());
        return new OrderReading(line, frequencyHz, level, KeptFields.list(in, KeptFields::text));
    }

    private static void unexplained(DataOutputStream out, UnexplainedLine line) throws IOException {
        out.writeDouble(line.frequencyHz());
        out.writeDouble(line.amplitude());
        out.writeDouble(line.propellerOrder());
        out.writeDouble(line.crankOrder());
        out.writeBoolean(line.followsSpeed());
    }

    private static UnexplainedLine unexplained(DataInputStream in) throws IOException {
        return new UnexplainedLine(
                in.readDouble(), in.readDouble(), in.readDouble(), in.readDouble(), in.readBoolean());
    }

    private static void unevenness(DataOutputStream out, Unevenness unevenness) throws IOException {
        out.writeDouble(unevenness.value());
        out.writeDouble(unevenness.ciLow());
        out.writeDouble(unevenness.ciHigh());
    }

    private static Unevenness unevenness(DataInputStream in) throws IOException {
        return new Unevenness(in.readDouble(), in.readDouble(), in.readDouble());
    }

    private static void quality(DataOutputStream out, ChannelQuality quality) throws IOException {
        KeptFields.text(out, quality.channel());
        out.writeDouble(quality.clippedShare());
        out.writeInt(quality.longestStuckRun());
        out.writeDouble(quality.peak());
        out.writeDouble(quality.mean());
        out.writeDouble(quality.rms());
    }

    private static ChannelQuality quality(DataInputStream in) throws IOException {
        return new ChannelQuality(
                KeptFields.text(in), in.readDouble(), in.readInt(), in.readDouble(), in.readDouble(), in.readDouble());
    }

    private static void stamps(DataOutputStream out, StampQuality stamps) throws IOException {
        out.writeDouble(stamps.medianStepS());
        out.writeDouble(stamps.jitterShare());
        out.writeInt(stamps.gaps());
        out.writeDouble(stamps.lostS());
        out.writeInt(stamps.unsorted());
        out.writeInt(stamps.doubled());
    }

    private static StampQuality stamps(DataInputStream in) throws IOException {
        return new StampQuality(
                in.readDouble(), in.readDouble(), in.readInt(), in.readDouble(), in.readInt(), in.readInt());
    }

    private static void warning(DataOutputStream out, Warning warning) throws IOException {
        KeptFacts.warning(out, warning);
    }

    private static Warning warning(DataInputStream in) throws IOException {
        return KeptFacts.warning(in);
    }

    private static void view(DataOutputStream out, ChannelView view) throws IOException {
        KeptFields.text(out, view.channel());
        KeptFields.text(out, view.unit().name());
        KeptFields.optional(out, view.dwell(), KeptRun::dwell);
        Spectrum spectrum = view.spectrum();
        KeptFields.curve(out, spectrum.values());
        out.writeDouble(spectrum.binHz());
        out.writeDouble(spectrum.noiseBandwidthHz());
        out.writeInt(spectrum.segments());
        out.writeDouble(view.usableUpToHz());
        KeptFields.optional(out, view.turn(), KeptRun::turn);
    }

    private static ChannelView view(DataInputStream in) throws IOException {
        return new ChannelView(
                KeptFields.text(in),
                SignalUnit.valueOf(KeptFields.text(in)),
                KeptFields.optional(in, KeptRun::dwell),
                spectrum(in),
                in.readDouble(),
                KeptFields.optional(in, KeptRun::turn));
    }

    /** The frequencies of an averaged spectrum are whole multiples of its step. */
    private static Spectrum spectrum(DataInputStream in) throws IOException {
        Series values = KeptFields.curve(in);
        double binHz = in.readDouble();
        double[] hz = new double[values.size()];
        for (int i = 0; i < hz.length; i++) {
            hz[i] = i * binHz;
        }
        return new Spectrum(Series.of(hz), values, Spectrum.Scaling.AMPLITUDE, binHz, in.readDouble(), in.readInt());
    }

    private static void turn(DataOutputStream out, AngleAverage turn) throws IOException {
        KeptFields.curve(out, turn.mean());
        KeptFields.curve(out, turn.standardError());
        out.writeInt(turn.turns());
    }

    private static AngleAverage turn(DataInputStream in) throws IOException {
        return new AngleAverage(KeptFields.curve(in), KeptFields.curve(in), in.readInt());
    }
}
