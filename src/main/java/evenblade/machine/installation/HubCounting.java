package evenblade.machine.installation;

import java.util.Arrays;
import java.util.List;

/** In which sense the hub positions are numbered, 1 to 2 and on. A blade ahead of another passes a fixed place first. */
public enum HubCounting {
    WITH_ROTATION("with-rotation"),
    AGAINST_ROTATION("against-rotation");

    /** Taken where nothing is given. */
    public static final HubCounting USUAL = WITH_ROTATION;

    private final String word;

    HubCounting(String word) {
        this.word = word;
    }

    /** As written in installation files. */
    public String word() {
        return word;
    }

    /** All words. */
    public static List<String> words() {
        return Arrays.stream(values()).map(HubCounting::word).toList();
    }

    /** The sense that a word names. */
    public static HubCounting named(String word) {
        return Arrays.stream(values())
                .filter(c -> c.word.equals(word))
                .findFirst()
                .orElseThrow();
    }
}
