package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.input.recording.ChannelChoice;
import evenblade.input.recording.ChannelLabel;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Which channels are analysed, and which of them is shown first.
 *
 * @param signals indices of the channels to analyse, in the order named
 * @param mark index of the channel with the mark; never among the signals
 */
record ChosenChannels(List<Integer> signals, Optional<Integer> mark) {
    /**
     * Those named; all but the mark where none is named.
     *
     * @param labels of the file's channels
     * @throws BadInput naming the channels there are, where one isn't known; where the mark is all there is
     */
    static ChosenChannels of(List<ChannelLabel> labels, AnalysisRequest request) {
        BadInput.Place place = BadInput.in(request.file());
        Optional<Integer> mark = request.markChannel().map(word -> ChannelChoice.among(labels, word, place));
        List<Integer> signals = new ArrayList<>();
        for (String word : request.channels()) {
            int index = ChannelChoice.among(labels, word, place);
            if (mark.isPresent() && mark.get() == index) {
                throw place.found(
                        "channel '" + labels.get(index).name() + "' named for the mark and to be analysed",
                        "two different channels");
            }
            if (!signals.contains(index)) {
                signals.add(index);
            }
        }
        if (request.channels().isEmpty()) {
            IntStream.range(0, labels.size())
                    .filter(index -> mark.isEmpty() || mark.get() != index)
                    .forEach(signals::add);
        }
        if (signals.isEmpty()) {
            throw place.found(
                    "no channel beside '" + labels.get(mark.orElseThrow()).name() + "', the one with the mark",
                    "a channel with the shaking, too");
        }
        return new ChosenChannels(signals, mark);
    }

    /** Signals, then the mark. */
    List<Integer> all() {
        List<Integer> all = new ArrayList<>(signals);
        mark.ifPresent(all::add);
        return all;
    }

    /**
     * The recording with the chosen channels only. Where none was named, channels that stand still and
     * lengths of several axes together are left out as long as another is left.
     *
     * @param indices of channels of the recording
     * @throws BadInput where a named channel stands still
     */
    static Recording among(Recording recording, List<Integer> indices, AnalysisRequest request) {
        List<Integer> moving = indices.stream()
                .filter(i -> recording.quality().get(i).rms() > 0)
                .toList();
        if (moving.isEmpty() || !request.channels().isEmpty() && moving.size() < indices.size()) {
            int still = indices.stream()
                    .filter(i -> !moving.contains(i))
                    .findFirst()
                    .orElseThrow();
            throw BadInput.in(request.file())
                    .found(
                            "no change in channel '"
                                    + recording.channels().get(still).name() + "'",
                            "a channel with a signal");
        }
        List<Integer> axes =
                moving.stream().filter(i -> recording.channels().get(i).axis()).toList();
        return only(recording, request.channels().isEmpty() && !axes.isEmpty() ? axes : moving);
    }

    /** The recording with these channels, in this order. */
    static Recording only(Recording recording, List<Integer> indices) {
        return new Recording(
                recording.source(),
                recording.time(),
                indices.stream().map(i -> recording.channels().get(i)).toList(),
                indices.stream().map(i -> recording.quality().get(i)).toList(),
                recording.stamps(),
                recording.warnings(),
                recording.stretches());
    }

    /**
     * The order in which channels are shown: as named; else the one with the strongest propeller 1× in
     * the longest dwell first. Only amplitudes of the same quantity are compared.
     *
     * @return indices of {@code channels}
     */
    static List<Integer> shownOrder(List<ChannelOrders> channels, AnalysisRequest request) {
        List<Integer> indices = IntStream.range(0, channels.size()).boxed().toList();
        if (!request.channels().isEmpty()) {
            return indices;
        }
        Comparator<Integer> byQuantity =
                Comparator.comparing(i -> channels.get(i).unit().quantity());
        Comparator<Integer> byDetection = Comparator.comparing(i ->
                onceOfPropeller(channels.get(i)).map(Level.Measured::detected).orElse(false));
        Comparator<Integer> byAmplitude = Comparator.comparing(i -> onceOfPropeller(channels.get(i))
                .map(level -> level.amplitude() * channels.get(i).unit().siFactor())
                .orElse(0.0));
        return indices.stream()
                .sorted(byQuantity.thenComparing(
                        byDetection.thenComparing(byAmplitude).reversed()))
                .toList();
    }

    private static Optional<Level.Measured> onceOfPropeller(ChannelOrders channel) {
        Optional<DwellOrders> longest = channel.dwells().stream()
                .max(Comparator.comparingDouble(dwell -> dwell.dwell().durationS()));
        return longest.flatMap(dwell -> dwell.readings().stream().findFirst())
                .map(OrderReading::level)
                .filter(Level.Measured.class::isInstance)
                .map(Level.Measured.class::cast);
    }

    /** The highest line of an installation's table, as a multiple of propeller speed. */
    static double highestOrder(Installation installation) {
        return installation.orders().lines().stream()
                .mapToDouble(OrderLine::propellerOrder)
                .max()
                .orElseThrow();
    }

    /** The highest order but for the drive's teeth. */
    static double highestShaftOrder(Installation installation) {
        return installation.orders().lines().stream()
                .filter(line -> line.role() != OrderLine.Role.MESH)
                .mapToDouble(OrderLine::propellerOrder)
                .max()
                .orElseThrow();
    }
}
