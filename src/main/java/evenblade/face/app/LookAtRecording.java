package evenblade.face.app;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.BlockSink;
import evenblade.input.recording.Channel;
import evenblade.input.recording.ChannelChoice;
import evenblade.input.recording.Recording;
import evenblade.input.recording.SampleStream;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import evenblade.input.recording.Stretch;
import evenblade.machine.installation.Installation;
import evenblade.measure.lines.ChannelSpectrum;
import evenblade.measure.lines.LineSpectrum;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.signal.Decimator;
import evenblade.measure.speed.Dwell;
import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Answers which steady lines a recording shows: no installation, no speed and no job are needed for that. */
public final class LookAtRecording {
    /** Of the memory there is, the most that kept sound may take. */
    private static final double SHARE_OF_MEMORY = 0.3;
    /** Below this too few bins are left to tell a line from the noise beside it. */
    private static final double LEAST_UP_TO_HZ = 20;

    private static final double SHARE_READ = 0.6; // of the bar: reading takes longest; ours
    private static final double SHARE_SPECTRUM = 0.7; // of the bar; ours

    private final SpectrumRequest request;
    private final List<Warning> warnings = new ArrayList<>();

    private LookAtRecording(SpectrumRequest request) {
        this.request = request;
    }

    /**
     * What was read of the stretch.
     *
     * @param recording its samples; sound starts at 0
     * @param upToHz highest frequency that is kept true and was asked for
     */
    private record Reading(Recording recording, StretchWanted stretch, double upToHz) {}

    /**
     * Looks at a recording.
     *
     * @throws BadInput where the file, the channel, the stretch or the band can't be used
     */
    public static LookedAt look(SpectrumRequest request, Progress progress) {
        LookAtRecording look = new LookAtRecording(request);
        progress.at(0, "reading");
        Reading reading = look.read();
        progress.at(SHARE_READ, "averaging the spectrum");
        ChannelSpectrum spectrum = look.spectrum(reading);
        progress.at(SHARE_SPECTRUM, "finding the speed");
        Optional<RunOrders> run = request.installation().map(installation -> look.orders(installation, spectrum));
        progress.at(1, "done");
        return new LookedAt(spectrum, run, run.flatMap(each -> dwell(each, spectrum)));
    }

    private ChannelSpectrum spectrum(Reading reading) {
        Recording recording = reading.recording();
        Channel channel = recording.channels().get(chosen(recording));
        warnings.addAll(0, recording.warnings());
        return new ChannelSpectrum(
                recording.source(),
                channel.name(),
                channel.unit(),
                recording.source().channels().stream()
                        .filter(name -> !name.equals(channel.name()))
                        .toList(),
                reading.stretch().fromS(),
                reading.stretch().toS(),
                LineSpectrum.of(recording.time(), channel.values(), reading.upToHz()),
                warnings.stream().distinct().toList());
    }

    /** The first channel that moves, of one direction where there is such a one. */
    private int chosen(Recording recording) {
        List<Integer> moving = IntStream.range(0, recording.channels().size())
                .filter(i -> recording.quality().get(i).rms() > 0)
                .boxed()
                .toList();
        return moving.stream()
                .filter(i -> recording.channels().get(i).axis())
                .findFirst()
                .or(() -> moving.stream().findFirst())
                .orElseThrow(() -> BadInput.in(request.file())
                        .found(
                                "no change in channel '"
                                        + recording.channels().get(0).name() + "'",
                                "a channel with a signal"));
    }

    private Reading read() {
        Intake intake = RecordingReader.open(request.file(), new IntakeOptions(request.fullScale(), request.table()));
        if (intake instanceof Intake.Streamed streamed) {
            return reduced(streamed.sound());
        }
        Recording whole = AnalyseRecording.oneClock(((Intake.Whole) intake).recording());
        double endS = whole.time().at(0) + whole.time().durationS();
        StretchWanted stretch = StretchWanted.of(request, whole.time().at(0), endS);
        Recording part = whole.within(new Stretch(stretch.fromS(), stretch.toS()));
        return new Reading(ChosenChannels.only(part, wanted(names(part))), stretch, upToHz(part.usableUpToHz()));
    }

    private static List<String> names(Recording recording) {
        return recording.channels().stream().map(Channel::name).toList();
    }

    /** Indices of the channels to keep: the one named, else all. */
    private List<Integer> wanted(List<String> names) {
        return request.channel()
                .map(word -> List.of(ChannelChoice.indexOf(names, word, BadInput.in(request.file()))))
                .orElseGet(() -> IntStream.range(0, names.size()).boxed().toList());
    }

    private Reading reduced(SampleStream sound) {
        StreamHeader header = sound.header();
        double rateHz = header.sampleRateHz();
        List<Integer> wanted = wanted(header.channels());
        double endS = header.frames().isPresent() ? header.frames().getAsLong() / rateHz : Double.POSITIVE_INFINITY;
        StretchWanted planned = StretchWanted.of(request, 0, endS);
        double upToHz = inMemory(upToHz(Recording.USABLE_SHARE_OF_RATE * rateHz), planned, wanted.size());
        Decimator decimator = Decimator.plan(
                rateHz,
                upToHz,
                header.channels().size(),
                wanted.stream().mapToInt(Integer::intValue).toArray());
        StreamSummary summary =
                sound.deliverTo(planned.cut(decimator, rateHz, header.channels().size()));
        // A header may promise more than the file holds.
        StretchWanted stretch = StretchWanted.of(request, 0, summary.frames() / rateHz);
        return new Reading(decimator.recording(header, summary), stretch, upToHz);
    }

    private double upToHz(double usableHz) {
        if (request.upToHz().isEmpty()) {
            return usableHz;
        }
        double asked = request.upToHz().getAsDouble();
        if (!(asked >= LEAST_UP_TO_HZ && Double.isFinite(asked))) {
            throw BadInput.in("highest frequency")
                    .found(asked + " Hz", "a frequency of " + FigureFormat.fixed(LEAST_UP_TO_HZ, 0) + " Hz or more");
        }
        return Math.min(asked, usableHz);
    }

    /** Of hours of sound only the lower frequencies are kept, as far as the memory reaches. */
    private double inMemory(double upToHz, StretchWanted stretch, int channels) {
        double seconds = stretch.toS() - stretch.fromS();
        if (!Double.isFinite(seconds)) {
            return upToHz;
        }
        double bytesPerHz = seconds * channels * Float.BYTES / Recording.USABLE_SHARE_OF_RATE;
        double most = SHARE_OF_MEMORY * Runtime.getRuntime().maxMemory() / bytesPerHz;
        if (most >= upToHz) {
            return upToHz;
        }
        warnings.add(Warning.of(WarningCode.BAND_CUT_FOR_MEMORY, Subject.Whole.RECORDING, Measure.FREQUENCY.of(most)));
        return Math.max(LEAST_UP_TO_HZ, most);
    }

    private RunOrders orders(Installation installation, ChannelSpectrum spectrum) {
        AnalysisRequest plain = AnalysisRequest.of(request.file(), installation);
        return AnalyseRecording.analyse(new AnalysisRequest(
                        plain.file(),
                        installation,
                        plain.engineRpm(),
                        plain.propellerRpm(),
                        plain.tolerancePercent(),
                        List.of(spectrum.channel()),
                        plain.markChannel(),
                        request.fullScale(),
                        request.table(),
                        Optional.empty(),
                        List.of()))
                .orders();
    }

    /** The dwell that fills most of the stretch, where its speed is confirmed. */
    private static Optional<DwellOrders> dwell(RunOrders run, ChannelSpectrum spectrum) {
        return run.speed().confirmed()
                ? run.channels().get(0).dwells().stream()
                        .filter(each -> overlapS(each.dwell(), spectrum) > 0)
                        .max(Comparator.comparingDouble(each -> overlapS(each.dwell(), spectrum)))
                : Optional.empty();
    }

    private static double overlapS(Dwell dwell, ChannelSpectrum spectrum) {
        return Math.min(dwell.toS(), spectrum.toS()) - Math.max(dwell.fromS(), spectrum.fromS());
    }

    /**
     * The part of a recording that was asked for.
     *
     * @param fromS seconds from the recording's start
     * @param toS its end, at least {@link LineSpectrum#LEAST_S} later
     */
    record StretchWanted(double fromS, double toS) {
        /** A recording's length is shown to a tenth of a second: half of that beyond its end is still its end. */
        private static final double ROUNDING_S = 0.05;

        /**
         * Where the request's stretch lies in a recording.
         *
         * @param startS of the recording's first sample
         * @param endS of its end
         * @throws BadInput where it reaches beyond the recording, runs backwards or is too short
         */
        static StretchWanted of(SpectrumRequest request, double startS, double endS) {
            double from = request.fromS().orElse(startS);
            double to = request.toS().orElse(endS);
            String found = "a stretch from " + number(from) + " s to " + number(to) + " s";
            if (!(from >= startS - ROUNDING_S && to <= endS + ROUNDING_S)) {
                throw BadInput.in(request.file())
                        .found(
                                found,
                                "one within the recording, which goes from " + FigureFormat.fixed(startS, 1) + " s to "
                                        + FigureFormat.fixed(endS, 1) + " s");
            }
            double inside = Math.min(endS, to) - Math.max(startS, from);
            // A hair is left for numbers such as 0.1 that no double holds.
            if (!(inside >= LineSpectrum.LEAST_S * (1 - 1e-9))) {
                throw BadInput.in(request.file())
                        .found(
                                found,
                                "an end at least " + FigureFormat.fixed(LineSpectrum.LEAST_S, 0)
                                        + " s after the start");
            }
            return new StretchWanted(Math.max(startS, from), Math.min(endS, to));
        }

        private static String number(double seconds) {
            return FigureFormat.fixed(seconds, seconds == Math.rint(seconds) ? 0 : 2);
        }

        /** Hands on only the frames of this stretch. */
        BlockSink cut(BlockSink sink, double rateHz, int channels) {
            long first = Math.round(fromS * rateHz);
            long end = Math.round(toS * rateHz);
            long[] done = {0};
            return (interleaved, frames) -> {
                long skipped = Math.max(0, Math.min(frames, first - done[0]));
                long kept = Math.max(0, Math.min(frames, end - done[0]));
                done[0] += frames;
                if (skipped == 0 && kept == frames) {
                    sink.accept(interleaved, frames);
                } else if (kept > skipped) {
                    sink.accept(Arrays.copyOfRange(interleaved, (int) skipped * channels, (int) kept * channels), (int)
                            (kept - skipped));
                }
            };
        }
    }

    /**
     * One recording, looked at.
     *
     * @param spectrum the answer
     * @param run speed and orders of the whole recording; empty where no installation was given
     * @param dwell the dwell of that run whose orders the lines are compared with; empty where no confirmed dwell overlaps
     *     the stretch
     */
    public record LookedAt(ChannelSpectrum spectrum, Optional<RunOrders> run, Optional<DwellOrders> dwell) {}
}
