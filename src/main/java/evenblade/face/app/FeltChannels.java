package evenblade.face.app;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What the channels of a run are called: by their noted directions, where the file only numbers them. */
final class FeltChannels {
    /** As the readers of sound call channels, see {@code SoundReader}. */
    private static final Pattern NUMBERED = Pattern.compile("channel \\d+|left|right");

    private FeltChannels() {}

    /** What was noted as direction, taken apart: one for all, or one per channel. */
    static List<String> parts(String noted) {
        return Stream.of(noted.split("[,;/]")).map(String::strip).toList();
    }

    /**
     * The names.
     *
     * @param fileChannels as the file has them, in its order
     * @param felt noted directions in the same order, as far as there are any
     * @return a direction for a channel that is only numbered, where no other channel is called so; else its name
     */
    static List<String> of(List<String> fileChannels, List<String> felt) {
        List<String> names = new ArrayList<>(fileChannels);
        for (int i = 0; i < names.size() && i < felt.size() && felt.size() > 1; i++) {
            String name = felt.get(i);
            boolean free = !fileChannels.contains(name)
                    && felt.stream().filter(name::equals).count() == 1;
            if (free
                    && EvidenceOfJob.direction(name).isPresent()
                    && NUMBERED.matcher(names.get(i)).matches()) {
                names.set(i, name);
            }
        }
        return names;
    }
}
