package evenblade.base.problem;

import java.util.Collection;
import java.util.Optional;

/** Finds the known word that somebody most likely meant, for a refusal that helps. */
public final class Nearest {
    private Nearest() {}

    /**
     * The candidate with the fewest changes to {@code word}; the first of several as near.
     *
     * @return empty only where there is no candidate
     */
    public static Optional<String> to(String word, Collection<String> candidates) {
        Optional<String> best = Optional.empty();
        int fewest = Integer.MAX_VALUE;
        for (String candidate : candidates) {
            int changes = changes(word, candidate);
            if (changes < fewest) {
                fewest = changes;
                best = Optional.of(candidate);
            }
        }
        return best;
    }

    /**
     * The nearest word, but only where the two words are alike: at most every third letter changed.
     */
    public static Optional<String> alike(String word, Collection<String> candidates) {
        return to(word, candidates)
                .filter(nearest ->
                        changes(word, nearest) <= Math.max(1, Math.max(word.length(), nearest.length()) / 3));
    }

    /**
     * Letters to insert, remove, replace or swap with their neighbour to make one word of the other
     * (optimal string alignment distance); capitals count as their small letters.
     */
    static int changes(String from, String to) {
        String a = from.toLowerCase(java.util.Locale.ROOT);
        String b = to.toLowerCase(java.util.Locale.ROOT);
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            d[i][0] = i;
        }
        for (int j = 0; j <= b.length(); j++) {
            d[0][j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int replaced = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                d[i][j] = Math.min(replaced, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
                boolean swapped =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (swapped) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
