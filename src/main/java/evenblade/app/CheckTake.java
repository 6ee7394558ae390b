package evenblade.app;

import evenblade.installation.Installation;
import evenblade.intake.Intake;
import evenblade.intake.IntakeOptions;
import evenblade.intake.RecordingReader;
import evenblade.problem.Warning;
import evenblade.recording.ChannelChoice;
import evenblade.recording.Recording;
import evenblade.recording.SampleStream;
import evenblade.recording.StreamHeader;
import evenblade.signal.Decimator;
import evenblade.soundcheck.SoundCheck;
import evenblade.speed.SpeedFinder;
import evenblade.speed.SpeedResult;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Answers whether a recording can be trusted: level, hum, automatic gain, low cut, channels, mark. */
public final class CheckTake {
    private static final double KEPT_HZ = 1000;

    private CheckTake() {}

    /**
     * Checks a recording.
     *
     * @param file the recording
     * @param quiet a recording by the same input with the engine standing
     * @param installation what ran, to see whether the level follows the speed
     * @param mark name or number of the channel with the once-per-revolution mark
     * @throws evenblade.problem.BadInput where a file can't be read
     */
    public static List<Warning> answer(
            Path file, Optional<Path> quiet, Optional<Installation> installation, Optional<String> mark) {
        Recording take = reduced(file);
        List<String> names = take.source().channels();
        Optional<String> markName =
                mark.map(word -> names.get(ChannelChoice.indexOf(names, word, evenblade.problem.BadInput.in(file))));
        Optional<SpeedResult> speed = installation.flatMap(runs -> speed(take, runs, markName));
        return SoundCheck.of(take, quiet.map(CheckTake::reduced), speed, markName);
    }

    private static Optional<SpeedResult> speed(Recording take, Installation runs, Optional<String> mark) {
        List<Integer> signals = IntStream.range(0, take.channels().size())
                .filter(c -> take.quality().get(c).rms() > 0)
                .filter(c -> mark.isEmpty()
                        || !mark.get().equals(take.channels().get(c).name()))
                .boxed()
                .toList();
        if (signals.isEmpty()) {
            return Optional.empty();
        }
        Recording heard = ChosenChannels.only(take, signals);
        return Optional.of(SpeedFinder.find(
                heard,
                heard.channels(),
                runs.orders(),
                SpeedRange.of(AnalysisRequest.of(take.source().file(), runs)).expectation()));
    }

    private static Recording reduced(Path file) {
        Intake intake = RecordingReader.open(file, IntakeOptions.NONE);
        if (intake instanceof Intake.Whole whole) {
            return whole.recording();
        }
        SampleStream sound = ((Intake.Streamed) intake).sound();
        StreamHeader header = sound.header();
        int count = header.channels().size();
        Decimator decimator = Decimator.plan(
                header.sampleRateHz(),
                Math.min(KEPT_HZ, Recording.USABLE_SHARE_OF_RATE * header.sampleRateHz()),
                count,
                IntStream.range(0, count).toArray());
        return decimator.recording(header, sound.deliverTo(decimator));
    }
}
