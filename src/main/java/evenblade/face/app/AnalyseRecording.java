package evenblade.face.app;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.intake.Intake;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.BlockSink;
import evenblade.input.recording.Channel;
import evenblade.input.recording.ChannelLabel;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Recording;
import evenblade.input.recording.SampleStream;
import evenblade.input.recording.Source;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import evenblade.input.recording.Stretch;
import evenblade.keep.job.Detail;
import evenblade.keep.job.JobFolder;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.RatioCheck;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.orders.SpeedAndOrders;
import evenblade.measure.signal.Decimator;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.MarkSpeed;
import evenblade.measure.speed.SpeedFinder;
import evenblade.measure.speed.SpeedResult;
import evenblade.tell.document.FigureFormat;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Answers what shook in one recording: its speed, its dwells, and the amplitude of every order. */
public final class AnalyseRecording {
    /** Kept at least, so that lines which no order explains are seen too. */
    private static final double LEAST_KEPT_HZ = 1000;
    /** Room above the highest line at the fastest speed looked at. */
    private static final double KEPT_MARGIN = 1.03;

    /** Of the memory there is, the most that kept sound may take. */
    private static final double SHARE_OF_MEMORY = 0.3;
    /** Beyond this share even without the drive's teeth, there is no room left to work in. */
    private static final double MOST_SHARE_OF_MEMORY = 0.4;

    /** A stretch beside the measured one is looked at from this length on, seconds. */
    private static final double LEAST_STRETCH_S = 5;

    private static final int MOST_OTHER_STRETCHES = 3; // each costs as long as the measured one; ours
    /** Two stretches within this share show one speed; ours. */
    private static final double SAME_SPEED = 0.02;

    private static final double SHARE_READ = 0.7; // of the bar: a large file takes longest to read; ours
    private static final double SHARE_SPEED = 0.9; // of the bar: the orders take less time than the speed; ours

    private final AnalysisRequest request;
    private final Progress progress;
    private final SpeedRange range;
    private boolean meshLeftOut;
    private final List<Recording> otherStretches = new ArrayList<>();

    private AnalyseRecording(AnalysisRequest request, Progress progress) {
        this.request = request;
        this.progress = progress;
        this.range = SpeedRange.of(request);
    }

    /**
     * What was read.
     *
     * @param recording with only the channels to analyse
     * @param mark the channel with the mark, at the same times
     * @param quality of all channels of the file
     */
    private record Reading(Recording recording, Optional<Channel> mark, List<ChannelQuality> quality) {
        /** With channels called by the directions that were noted, where the file has no names of its own. */
        Reading called(List<String> felt) {
            Source source = recording.source();
            List<String> names = FeltChannels.of(source.channels(), felt);
            UnaryOperator<String> name = old -> {
                int index = source.channels().indexOf(old);
                return index < 0 ? old : names.get(index);
            };
            Recording named = new Recording(
                    new Source(
                            source.file(),
                            source.sha256(),
                            source.kind(),
                            source.lossy(),
                            source.sampleRateHz(),
                            source.durationS(),
                            names),
                    recording.time(),
                    recording.channels().stream()
                            .map(each -> new Channel(name.apply(each.name()), each.unit(), each.values(), each.axis()))
                            .toList(),
                    recording.quality().stream()
                            .map(each -> each.called(name.apply(each.channel())))
                            .toList(),
                    recording.stamps(),
                    recording.warnings(),
                    recording.stretches());
            return new Reading(
                    named,
                    mark,
                    quality.stream()
                            .map(each -> each.called(name.apply(each.channel())))
                            .toList());
        }
    }

    /**
     * Analyses a recording.
     *
     * @throws BadInput where the file, a channel or the entered speed can't be used
     */
    public static AnalysedRecording analyse(AnalysisRequest request) {
        return analyse(request, Progress.SILENT);
    }

    /** Analyses it and tells how far it has come. */
    public static AnalysedRecording analyse(AnalysisRequest request, Progress progress) {
        return new AnalyseRecording(request, progress).analyse();
    }

    private AnalysedRecording analyse() {
        Reading reading = read().called(request.felt());
        Recording recording = reading.recording();
        OrderTable table = request.installation().orders();
        progress.at(SHARE_READ, "finding the speed");
        SpeedResult found = speed(reading, table);
        progress.at(SHARE_SPEED, "measuring the orders");
        SpeedAndOrders both =
                SpeedAndOrders.measure(recording, recording.channels(), table, found, range.expectation());
        SpeedResult speed = both.speed();
        List<ChannelOrders> measured = both.channels();
        List<Integer> shown = ChosenChannels.shownOrder(measured, request);
        List<ChannelOrders> channels = shown.stream().map(measured::get).toList();
        RunOrders orders = new RunOrders(
                recording.source(),
                request.installation(),
                speed,
                channels,
                reading.quality(),
                recording.stamps(),
                warnings(reading, speed, channels));
        progress.at(1, "done");
        return new AnalysedRecording(orders, ChosenChannels.only(recording, shown));
    }

    private SpeedResult speed(Reading reading, OrderTable table) {
        Recording recording = reading.recording();
        if (reading.mark().isPresent()) {
            return MarkSpeed.find(recording, reading.mark().get(), recording.channels(), table, range.expectation());
        }
        return SpeedFinder.find(recording, recording.channels(), table, range.expectation());
    }

    private Reading read() {
        Intake intake = RecordingReader.open(request.file(), request.reading());
        if (intake instanceof Intake.Streamed streamed) {
            return reduced(streamed.sound());
        }
        Intake.Whole table = (Intake.Whole) intake;
        Recording whole = oneClock(table.recording());
        ChosenChannels chosen = ChosenChannels.of(table.labels(), request);
        table.recording().stretches().stream()
                .filter(stretch -> stretch.toS() - stretch.fromS() >= LEAST_STRETCH_S
                        && !stretch.equals(table.recording().longestStretch()))
                .limit(MOST_OTHER_STRETCHES)
                .map(stretch -> ChosenChannels.among(table.recording().within(stretch), chosen.signals(), request))
                .forEach(otherStretches::add);
        return reading(whole, chosen.signals(), chosen.mark(), whole.quality());
    }

    /** The longest stretch with one clock, for no phase goes across a break. */
    static Recording oneClock(Recording all) {
        if (all.stretches().size() == 1) {
            return all;
        }
        Stretch longest = all.longestStretch();
        Recording part = all.within(longest);
        List<Warning> warnings = new ArrayList<>(all.warnings());
        warnings.add(Warning.of(
                WarningCode.LONGEST_STRETCH_USED,
                Subject.Whole.RECORDING,
                new Count(all.stretches().size()),
                Measure.TIME.of(longest.fromS()),
                Measure.TIME.of(longest.toS())));
        return new Recording(
                part.source(), part.time(), part.channels(), part.quality(), part.stamps(), warnings, part.stretches());
    }

    /** Stretches with a clock of their own that show another speed than the one measured. */
    private List<Warning> disagreeing(SpeedResult speed, OrderTable table) {
        double measured = speed.main().map(Dwell::propellerHz).orElse(0.0);
        List<Warning> warnings = new ArrayList<>();
        for (Recording other : speed.confirmed() ? otherStretches : List.<Recording>of()) {
            SpeedResult there = SpeedFinder.find(other, other.channels(), table, range.expectation());
            there.main()
                    .filter(dwell -> there.confirmed() && Math.abs(dwell.propellerHz() / measured - 1) > SAME_SPEED)
                    .ifPresent(dwell -> warnings.add(Warning.of(
                            WarningCode.STRETCHES_DISAGREE,
                            Subject.Whole.RECORDING,
                            Measure.TIME.of(there.track().fromS()),
                            Measure.TIME.of(there.track().toS()),
                            Measure.ENGINE_RPM.of(dwell.propellerRpm() * table.ratio()),
                            Measure.ENGINE_RPM.of(60 * measured * table.ratio()))));
        }
        return warnings;
    }

    private Reading reduced(SampleStream sound) {
        StreamHeader header = sound.header();
        ChosenChannels chosen = ChosenChannels.of(ChannelLabel.counted(header.channels()), request);
        List<Integer> wanted = chosen.all();
        double keptHz = keptHz(header, wanted.size());
        requireRoom(header, wanted.size(), keptHz);
        Decimator decimator = Decimator.plan(
                header.sampleRateHz(),
                keptHz,
                header.channels().size(),
                wanted.stream().mapToInt(Integer::intValue).toArray());
        StreamSummary summary = sound.deliverTo(counted(decimator, header));
        Recording recording = decimator.recording(header, summary);
        return reading(
                recording,
                chosen.signals().stream().map(wanted::indexOf).toList(),
                chosen.mark().map(wanted::indexOf),
                summary.quality());
    }

    private Reading reading(
            Recording recording, List<Integer> signals, Optional<Integer> mark, List<ChannelQuality> quality) {
        return new Reading(
                ChosenChannels.among(recording, signals, request),
                mark.map(index -> recording.channels().get(index)),
                quality);
    }

    /** Up to where the sound is kept: every line, or all but the drive's teeth where the memory is too small. */
    private double keptHz(StreamHeader header, int channels) {
        double fastest = range.expectation().toHz() * KEPT_MARGIN;
        double all = Math.max(LEAST_KEPT_HZ, ChosenChannels.highestOrder(request.installation()) * fastest);
        double shafts = Math.max(LEAST_KEPT_HZ, ChosenChannels.highestShaftOrder(request.installation()) * fastest);
        double seconds = header.frames().orElse(0) / header.sampleRateHz();
        double bytes = seconds * channels * Float.BYTES * all / Recording.USABLE_SHARE_OF_RATE;
        meshLeftOut =
                all > shafts && bytes > SHARE_OF_MEMORY * Runtime.getRuntime().maxMemory();
        return Math.min(meshLeftOut ? shafts : all, Recording.USABLE_SHARE_OF_RATE * header.sampleRateHz());
    }

    /** Refuses sound that won't fit before hours of it are read. */
    private static void requireRoom(StreamHeader header, int channels, double keptHz) {
        double seconds = header.frames().orElse(0) / header.sampleRateHz();
        double bytesPerSecond = channels * Float.BYTES * keptHz / Recording.USABLE_SHARE_OF_RATE;
        double mostSeconds = MOST_SHARE_OF_MEMORY * Runtime.getRuntime().maxMemory() / bytesPerSecond;
        if (seconds > mostSeconds) {
            throw BadInput.in(header.file())
                    .found(
                            FigureFormat.fixed(seconds / 3600, 1) + " h of sound in "
                                    + FigureFormat.count(channels, "channel"),
                            "at most " + FigureFormat.fixed(mostSeconds / 3600, 1)
                                    + " h with the memory this program may use; cut it into shorter runs, name one"
                                    + " channel, or allow more memory (-Xmx)");
        }
    }

    private BlockSink counted(BlockSink sink, StreamHeader header) {
        if (progress == Progress.SILENT || header.frames().isEmpty()) {
            return sink;
        }
        double all = Math.max(1, header.frames().getAsLong());
        long[] done = {0};
        return (interleaved, frames) -> {
            sink.accept(interleaved, frames);
            done[0] += frames;
            progress.at(SHARE_READ * Math.min(1, done[0] / all), "reading");
        };
    }

    private List<Warning> warnings(Reading reading, SpeedResult speed, List<ChannelOrders> channels) {
        Recording recording = reading.recording();
        List<Warning> all = new ArrayList<>(recording.warnings());
        request.installation().reduction().doubt().ifPresent(all::add);
        range.assumed().ifPresent(all::add);
        all.addAll(speed.warnings());
        all.addAll(disagreeing(speed, request.installation().orders()));
        if (meshLeftOut) {
            all.add(Warning.of(WarningCode.MESH_LEFT_OUT, Subject.Whole.RECORDING));
        }
        RatioCheck.of(channels, request.installation().orders(), speed).ifPresent(doubt -> all.add(doubt.warning()));
        all.addAll(AnalysisWarnings.of(recording, channels));
        all.addAll(AnalysisWarnings.spikes(reading.quality(), speed, channels));
        return all.stream().distinct().toList();
    }

    /**
     * Analyses the recording of a run.
     *
     * @param run id or label
     * @param progress is told how far it has come; what it throws ends the work
     * @throws evenblade.base.problem.BadInput where the job, the run or its recording can't be used
     */
    public static AnalysedRecording ofRun(Path job, String run, Progress progress) {
        JobRuns runs = new JobRuns(JobFolder.open(job));
        return analyse(runs.request((Detail.Run) runs.record().run(run).detail()), progress);
    }
}
