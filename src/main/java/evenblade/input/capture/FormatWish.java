package evenblade.input.capture;

import evenblade.base.problem.BadInput;
import evenblade.input.audio.SampleCoding;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;

/**
 * What is asked of an input; what is left open is chosen: 48 kHz, two channels, 24 bit, or what comes
 * nearest to it.
 */
public record FormatWish(OptionalInt rateHz, OptionalInt channels, OptionalInt bits) {
    /** Nothing asked. */
    public static final FormatWish ANY = new FormatWish(OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty());

    private static final int USUAL_RATE_HZ = 48_000; // common practice, no source
    private static final int USUAL_CHANNELS = 2; // a line input's two: sensor and mark

    /**
     * The formats to try on a device, best first; they differ only in the size of a sample.
     *
     * @throws BadInput where the device doesn't offer what is asked, naming the nearest that it does
     */
    List<InputFormat> on(InputDevice device) {
        int rate = chosen("rate", "Hz", rateHz, USUAL_RATE_HZ, device.ratesHz(), device);
        int lanes = chosen("channels", "channels", channels, USUAL_CHANNELS, device.channelCounts(), device);
        List<Integer> sizes = new ArrayList<>();
        if (bits.isPresent()) {
            sizes.add(chosen("bits", "bit", bits, bits.getAsInt(), device.sampleBits(), device));
        } else {
            for (int size : List.of(24, 16, 32)) {
                if (device.sampleBits().contains(size)) {
                    sizes.add(size);
                }
            }
        }
        return sizes.stream()
                .map(size -> new InputFormat(rate, lanes, SampleCoding.signed(size, ByteOrder.LITTLE_ENDIAN)))
                .toList();
    }

    private static int chosen(
            String what, String unit, OptionalInt asked, int usual, List<Integer> offered, InputDevice device) {
        int wanted = asked.orElse(usual);
        int nearest = offered.stream()
                .min(Comparator.comparingInt((Integer each) -> Math.abs(each - wanted))
                        .thenComparing(Comparator.reverseOrder()))
                .orElseThrow(() -> BadInput.in("device '" + device.name() + "'")
                        .found("it names no " + what, "an input for whole-number samples of 16, 24 or 32 bits"));
        if (asked.isPresent() && nearest != wanted) {
            throw BadInput.in("--" + what)
                    .found(
                            wanted + " " + unit + " is not offered by '" + device.name() + "'",
                            "one of " + listed(offered) + "; the nearest is " + nearest);
        }
        return nearest;
    }

    private static String listed(List<Integer> numbers) {
        return String.join(", ", numbers.stream().map(String::valueOf).toList());
    }
}
