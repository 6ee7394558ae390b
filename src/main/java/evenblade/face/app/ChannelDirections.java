package evenblade.face.app;

import evenblade.judge.findings.Direction;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Which way each channel of a recording feels: by what was noted about the direction, in the order of the file's
 * channels; else by the channel's name.
 */
final class ChannelDirections {
    /** As the readers of sound call channels, see {@code SoundReader}. */
    private static final Pattern NUMBERED = Pattern.compile("channel \\d+|left|right");

    private ChannelDirections() {}

    /**
     * Reads the directions.
     *
     * @param fileChannels names of all channels of the file, in its order
     * @param noted what was noted as direction: one for all, or one per channel parted by commas
     * @return those that could be told
     */
    static Map<String, Direction> of(List<String> fileChannels, Optional<String> noted) {
        Map<String, Direction> directions = new HashMap<>();
        fileChannels.forEach(name -> direction(name).ifPresent(d -> directions.put(name, d)));
        if (noted.isEmpty()) {
            return directions;
        }
        List<String> parts = parts(noted.get());
        for (int i = 0; i < fileChannels.size(); i++) {
            if (parts.size() == 1 || i < parts.size()) {
                Optional<Direction> told = direction(parts.get(parts.size() == 1 ? 0 : i));
                String name = fileChannels.get(i);
                told.ifPresent(d -> directions.put(name, d));
            }
        }
        return directions;
    }

    /** What was noted, taken apart: one for all, or one per channel. */
    static List<String> parts(String noted) {
        return Stream.of(noted.split("[,;/]")).map(String::strip).toList();
    }

    /**
     * What the channels of a file are called: a channel that the file only numbers is called by its direction, where that
     * was noted and no other channel is called so; every other keeps its name.
     */
    static List<String> names(List<String> fileChannels, List<String> felt) {
        List<String> names = new ArrayList<>(fileChannels);
        for (int i = 0; i < names.size() && i < felt.size() && felt.size() > 1; i++) {
            String name = felt.get(i);
            boolean free = !fileChannels.contains(name) && felt.stream().filter(name::equals).count() == 1;
            if (free && direction(name).isPresent() && NUMBERED.matcher(names.get(i)).matches()) {
                names.set(i, name);
            }
        }
        return names;
    }

    private static Optional<Direction> direction(String words) {
        String text = words.toLowerCase(Locale.ROOT);
        if (text.matches(".*\\b(along|axial|fore|fore-aft|shaft)\\b.*")) {
            return Optional.of(Direction.ALONG);
        }
        if (text.matches(".*\\b(up|upright|vertical|down)\\b.*")) {
            return Optional.of(Direction.UP);
        }
        return text.matches(".*\\b(across|level|lateral|sideways|horizontal|radial)\\b.*")
                ? Optional.of(Direction.ACROSS)
                : Optional.empty();
    }
}
