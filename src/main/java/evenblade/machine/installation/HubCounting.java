package evenblade.machine.installation;

import evenblade.base.fact.Worded;
import java.util.Arrays;
import java.util.List;

/** In which sense the hub positions are numbered, 1 to 2 and on. A blade ahead of another passes a fixed place first. */
public enum HubCounting implements Worded {
    WITH_ROTATION,
    AGAINST_ROTATION;

    /** Taken where nothing is given. */
    public static final HubCounting USUAL = WITH_ROTATION;

    /** All words. */
    public static List<String> words() {
        return Arrays.stream(values()).map(HubCounting::word).toList();
    }

    /** The sense that a word names. */
    public static HubCounting named(String word) {
        return Worded.named(HubCounting.class, word).orElseThrow();
    }
}
