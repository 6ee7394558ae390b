package evenblade.input.recording;

import java.util.List;
import java.util.stream.IntStream;

/**
 * What a channel answers to.
 *
 * @param name as results show it
 * @param heading of its column as the file has it, with its unit; the name where there is none
 * @param number counted from 1: that of its column in a table, that of the channel in sound
 */
public record ChannelLabel(String name, String heading, int number) {
    /** Those of sound, by their names in file order. */
    public static List<ChannelLabel> counted(List<String> names) {
        return IntStream.range(0, names.size())
                .mapToObj(i -> new ChannelLabel(names.get(i), names.get(i), i + 1))
                .toList();
    }
}
