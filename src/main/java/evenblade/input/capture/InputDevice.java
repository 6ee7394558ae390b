package evenblade.input.capture;

import java.util.List;

/**
 * A microphone or line input as the machine shows it.
 *
 * @param name what to call it by
 * @param description what the driver says of it
 * @param ratesHz offered, of the usual ones, lowest first
 * @param channelCounts offered, lowest first
 * @param sampleBits offered of 16, 24 and 32, lowest first
 */
public record InputDevice(
        String name, String description, List<Integer> ratesHz, List<Integer> channelCounts, List<Integer> sampleBits) {
    public InputDevice {
        ratesHz = List.copyOf(ratesHz);
        channelCounts = List.copyOf(channelCounts);
        sampleBits = List.copyOf(sampleBits);
    }
}
