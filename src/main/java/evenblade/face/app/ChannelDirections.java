package evenblade.face.app;

import evenblade.judge.findings.Direction;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Which way each channel of a recording feels: by what was noted about the direction, in the order of the file's
 * channels; else by the channel's name.
 */
final class ChannelDirections {
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
        String[] parts = noted.get().split("[,;/]");
        for (int i = 0; i < fileChannels.size(); i++) {
            if (parts.length == 1 || i < parts.length) {
                Optional<Direction> told = direction(parts[parts.length == 1 ? 0 : i]);
                String name = fileChannels.get(i);
                told.ifPresent(d -> directions.put(name, d));
            }
        }
        return directions;
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
