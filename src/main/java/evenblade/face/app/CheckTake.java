package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.ChannelChoice;
import evenblade.input.recording.Recording;
import evenblade.input.recording.SampleStream;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.TableReading;
import evenblade.machine.installation.Installation;
import evenblade.measure.signal.Decimator;
import evenblade.measure.soundcheck.QuietCheck;
import evenblade.measure.soundcheck.SoundCheck;
import evenblade.measure.speed.SpeedFinder;
import evenblade.measure.speed.SpeedResult;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Answers whether a recording can be trusted: level, hum, automatic gain, low cut, channels, mark. */
public final class CheckTake {
    private static final double KEPT_HZ = 1000; // the orders of interest lie below about 1 kHz

    private CheckTake() {}

    /**
     * Checks a recording.
     *
     * @param take at a rate of 2 kHz or so, see {@link #reduced}
     * @param quiet the same of the same input with the engine standing
     * @param installation what ran, to see whether the level follows the speed
     * @param mark name or number of the channel with the once-per-revolution mark
     * @param place what to complain about
     * @throws BadInput where there is no such channel
     */
    static List<Warning> check(
            Recording take,
            Optional<Recording> quiet,
            Optional<Installation> installation,
            Optional<String> mark,
            BadInput.Place place) {
        List<String> names = take.source().channels();
        Optional<String> markName = mark.map(word -> names.get(ChannelChoice.indexOf(names, word, place)));
        Optional<SpeedResult> speed =
                installation.filter(runs -> SoundCheck.sound(take)).flatMap(runs -> speed(take, runs, markName));
        return SoundCheck.of(take, quiet, speed, markName);
    }

    /**
     * What forbids to take a recording for quiet: it is silent, loud, or something turns in it.
     *
     * @param mark name or number of a channel that carries no sound
     * @throws BadInput where it can't be read
     */
    public static List<Warning> quiet(Path file, Installation installation, Optional<String> mark) {
        Recording take = reduced(file);
        List<String> names = take.source().channels();
        Optional<String> markName =
                mark.map(word -> names.get(ChannelChoice.indexOf(names, word, BadInput.in("mark channel"))));
        if (take.quality().stream().allMatch(each -> each.rms() == 0)) {
            return List.of(RecordRun.silent());
        }
        return QuietCheck.of(take, speed(take, installation, markName), markName);
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

    /**
     * A recording at a rate of 2 kHz or so, or as it is where it is stamped.
     *
     * @throws BadInput where the file can't be read
     */
    static Recording reduced(Path file) {
        return reduced(file, TableReading.UNSAID);
    }

    /** A recording at a rate of 2 kHz or so; a table is read as it is said. */
    static Recording reduced(Path file, TableReading table) {
        Intake intake = RecordingReader.open(file, new IntakeOptions(Optional.empty(), table));
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
