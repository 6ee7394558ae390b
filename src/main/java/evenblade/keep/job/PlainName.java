package evenblade.keep.job;

import java.text.Normalizer;

/** Names for files, such as every file system takes and every terminal can type: letters and digits without accents, hyphens. */
public final class PlainName {
    private static final int MOST_LETTERS = 40; // as part of a name; ours

    private PlainName() {}

    /** What a text becomes as part of a name; empty where nothing of it is left. */
    public static String of(String text) {
        return of(text, MOST_LETTERS);
    }

    /**
     * What a text becomes where a name may be of another length.
     *
     * @param most letters, the rest is cut
     */
    public static String of(String text, int most) {
        String plain = hyphened(text);
        return plain.length() > most ? hyphened(plain.substring(0, most)) : plain;
    }

    private static String hyphened(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .replaceAll("[^A-Za-z0-9_]+", "-")
                .replaceAll("^-+|-+$", "");
    }
}
