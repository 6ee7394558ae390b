package evenblade.face.app;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.capture.ChannelLevel;
import evenblade.input.capture.Ending;
import evenblade.input.capture.FormatWish;
import evenblade.input.capture.InputFormat;
import evenblade.input.capture.LevelMeter;
import evenblade.input.capture.Listening;
import evenblade.input.capture.LiveSource;
import evenblade.input.capture.SoundDevices;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import evenblade.measure.live.LatestStretch;
import evenblade.measure.live.LiveChain;
import evenblade.measure.soundcheck.LevelAim;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Listens to an input without recording, so that level and channels can be set right, and judges what it heard. */
public final class ListenToInput {
    /**
     * What to listen to.
     *
     * @param device name of the input; the machine's own choice where empty
     * @param wish rate, channels and size of a sample, as far as they matter
     * @param seconds how long; until stopped, where empty
     * @param markChannel name or number of the channel with the once-per-revolution mark
     * @param installation file of what runs, so that speed and orders are shown
     * @param quiet a recording by the same input with the engine standing, to compare with
     */
    public record Request(
            Optional<String> device,
            FormatWish wish,
            OptionalDouble seconds,
            Optional<String> markChannel,
            Optional<Path> installation,
            Optional<Path> quiet) {}

    /**
     * What was heard.
     *
     * @param ending why it ended
     * @param durationS how long it was
     * @param warnings what is to be set right, judged by the last stretch; none where all is well
     */
    public record Heard(Ending ending, double durationS, List<Warning> warnings) {
        public Heard {
            warnings = List.copyOf(warnings);
        }
    }

    private static final double JUDGED_UP_TO_HZ = 1000; // the orders of interest lie below about 1 kHz
    private static final double JUDGED_S = 60; // a minute shows speed changes enough for automatic gain to be seen
    /** Less than this says nothing about hum or a low cut. */
    private static final double LEAST_S = 3;

    private final Listening listening;
    private final Optional<Installation> installation;
    private final Optional<Recording> quiet;
    private final Optional<String> mark;
    private final LevelMeter meter;
    private final LatestStretch latest;
    private final RunSoFar soFar;

    private ListenToInput(
            Listening listening,
            Optional<Installation> installation,
            Optional<Recording> quiet,
            Optional<String> mark) {
        InputFormat format = listening.format();
        this.listening = listening;
        this.installation = installation;
        this.quiet = quiet;
        this.mark = mark;
        this.soFar = RunSoFar.begin(Optional.empty(), installation);
        this.meter = new LevelMeter(format.rateHz(), format.channelNames(), mark);
        double quantum = Math.scalb(1.0, 1 - format.coding().bits());
        this.latest = new LatestStretch(format.rateHz(), format.channelNames(), quantum, JUDGED_UP_TO_HZ, JUDGED_S);
    }

    /**
     * Opens the input; nothing is heard yet.
     *
     * @throws BadInput where device, format, length, mark, installation or quiet take can't be used
     */
    public static ListenToInput prepare(Request request) {
        request.seconds().ifPresent(TakeSetting::requireLength);
        Optional<Installation> installation = request.installation().map(InstallationFile::read);
        Optional<Recording> quiet = request.quiet().map(CheckTake::reduced);
        LiveSource input = SoundDevices.open(request.device(), request.wish());
        try {
            Optional<String> mark = request.markChannel().map(word -> LiveSetup.channel(input.format(), word));
            return new ListenToInput(new Listening(input, request.seconds()), installation, quiet, mark);
        } catch (BadInput e) {
            input.close();
            throw e;
        }
    }

    /** What listens, for people. */
    public String device() {
        return listening.device() + ", " + listening.format().text();
    }

    /** How it stands; may be asked from any thread. */
    public LiveRecording.View view() {
        return soFar.view(listening.heardS(), meter.levels());
    }

    /** What to do about the level: of the loudest channel, the mark left out. From any thread. */
    public LevelAim aim() {
        return aim(meter.levels(), mark);
    }

    /** Too much gain is told first: while samples are cut off at full scale, nobody sees what lies before it. */
    static LevelAim aim(List<ChannelLevel> levels, Optional<String> mark) {
        List<ChannelLevel> heard = levels.stream()
                .filter(level -> mark.filter(level.channel()::equals).isEmpty())
                .toList();
        double loudest =
                heard.stream().mapToDouble(ChannelLevel::heldPeakDb).max().orElse(ChannelLevel.SILENCE_DB);
        boolean cutOff = heard.stream().anyMatch(level -> level.clip() == ChannelLevel.Clip.FULL_SCALE);
        boolean flat = heard.stream().anyMatch(level -> level.clip() == ChannelLevel.Clip.BELOW_FULL_SCALE);
        return LevelAim.of(loudest, flat && !cutOff);
    }

    /** What has to be known at once; from any thread. */
    public List<Warning> urgent() {
        return RecordRun.allZero(meter);
    }

    /** Ends soon; from any thread. */
    public void stop() {
        listening.stop();
    }

    /** Listens until the length is reached, somebody stops it or the input gives out. May be called once. */
    public Heard listen() {
        Ending ending;
        if (installation.isPresent()) {
            try (LiveChain chain = LiveSetup.chain(listening.format(), installation.get(), mark, soFar)) {
                ending = listening.listen((block, frames) -> {
                    hear(block, frames);
                    chain.accept(block, frames);
                });
            }
        } else {
            ending = listening.listen(this::hear);
        }
        return new Heard(ending, listening.heardS(), judged());
    }

    private void hear(float[] block, int frames) {
        meter.accept(block, frames);
        latest.accept(block, frames);
    }

    private List<Warning> judged() {
        if (meter.silent()) {
            return List.of(RecordRun.silent());
        }
        if (listening.heardS() < LEAST_S) {
            return List.of(Warning.of(WarningCode.TOO_SHORT_TO_JUDGE, Subject.Whole.INPUT));
        }
        return latest.recording()
                .map(sound -> CheckTake.check(sound, quiet, installation, mark, BadInput.in("mark channel")))
                .orElse(List.of());
    }
}
