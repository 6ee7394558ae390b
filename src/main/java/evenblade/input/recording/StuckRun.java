package evenblade.input.recording;

/**
 * Finds the longest run of equal samples without looking at every one: a run longer than the longest
 * so far can't slip between two looks that lie as far apart as that length. Runs shorter than
 * {@value #LEAST} are of no interest and count as 1.
 */
final class StuckRun {
    static final int LEAST = 8; // coarse sensors repeat a value a few times; ours

    private int longest;
    private int trailing;
    private float last;

    void add(float[] x, int lane, int lanes, int frames) {
        int i = 0;
        if (trailing > 0) {
            while (i < frames && x[lane + i * lanes] == last) {
                i++;
            }
            trailing += i;
            longest = Math.max(longest, trailing);
        }
        if (i == frames) {
            return;
        }
        int runStart = i;
        int looked = i;
        while (looked < frames) {
            float value = x[lane + looked * lanes];
            int start = looked;
            while (start > runStart && x[lane + (start - 1) * lanes] == value) {
                start--;
            }
            int end = looked + 1;
            while (end < frames && x[lane + end * lanes] == value) {
                end++;
            }
            longest = Math.max(longest, end - start);
            if (end == frames) {
                trailing = end - start;
                last = value;
                return;
            }
            runStart = end;
            looked = Math.min(end + Math.max(longest, LEAST - 1), frames - 1);
        }
    }

    int longest() {
        return longest >= LEAST ? longest : Math.min(longest, 1);
    }
}
