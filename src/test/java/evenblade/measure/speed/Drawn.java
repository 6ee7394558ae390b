package evenblade.measure.speed;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Source;
import evenblade.input.recording.TimeBase;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/** Short recordings drawn from formulas of time. */
final class Drawn {
    private Drawn() {}

    /** One channel for each value of time, from 0 s on. */
    static Recording recording(double rateHz, double seconds, DoubleUnaryOperator... values) {
        return recording(new TimeBase.Even(0, rateHz, (int) Math.round(seconds * rateHz)), rateHz, values);
    }

    static Recording recording(TimeBase time, double sourceRateHz, DoubleUnaryOperator... values) {
        List<Channel> channels = new ArrayList<>();
        for (DoubleUnaryOperator value : values) {
            double[] x = IntStream.range(0, time.size())
                    .mapToDouble(i -> value.applyAsDouble(time.at(i)))
                    .toArray();
            channels.add(new Channel("c" + channels.size(), SignalUnit.METRE_PER_SECOND_SQUARED, Series.of(x)));
        }
        return new Recording(
                new Source(
                        Path.of("x.wav"),
                        "0",
                        "wav",
                        false,
                        sourceRateHz,
                        time.durationS(),
                        channels.stream().map(Channel::name).toList()),
                time,
                channels,
                List.of(),
                Optional.empty(),
                List.of());
    }

    /** A line of an order of some angle. */
    static double line(double amplitude, double order, double turns) {
        return amplitude * Math.cos(2 * Math.PI * order * turns + 0.3 * order);
    }
}
