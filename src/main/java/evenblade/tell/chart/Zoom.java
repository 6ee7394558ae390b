package evenblade.tell.chart;

import java.util.Optional;

/**
 * The part of a picture that is shown.
 *
 * @param across of the lying axis
 * @param upward of the upright axis, where that can be chosen too
 */
public record Zoom(Range across, Optional<Range> upward) {
    /** So many times larger than the whole is as near as one gets: a bin or two fill the picture then. */
    private static final double NEAREST = 4000;

    /** A stretch of an axis; {@code to} above {@code from}. */
    public record Range(double from, double to) {
        public Range {
            if (!(to > from)) {
                throw new IllegalArgumentException("no range from " + from + " to " + to);
            }
        }

        public double size() {
            return to - from;
        }

        /** So many times as long, with the value at that share of it kept in its place, within the whole. */
        Range scaled(double factor, double share, Range whole) {
            double size = Math.min(whole.size(), Math.max(whole.size() / NEAREST, factor * size()));
            return at(from + share * (size() - size), size, whole);
        }

        /** Moved on by that share of its length, within the whole. */
        Range moved(double share, Range whole) {
            return at(from + share * size(), size(), whole);
        }

        /** The part between two shares of it, in any order. */
        Range between(double one, double other, Range whole) {
            double low = Math.max(0, Math.min(one, other));
            double high = Math.min(1, Math.max(one, other));
            return at(from + low * size(), Math.max(whole.size() / NEAREST, (high - low) * size()), whole);
        }

        private static Range at(double from, double size, Range whole) {
            double start = Math.max(whole.from(), Math.min(whole.to() - size, from));
            return new Range(start, Math.min(whole.to(), start + size));
        }
    }

    public static Zoom across(double from, double to) {
        return new Zoom(new Range(from, to), Optional.empty());
    }

    /**
     * Nearer or farther, with what lies under the pointer kept under it.
     *
     * @param factor below 1 comes nearer
     * @param shareX where the pointer is, as a share of the plot's width
     * @param shareY as a share of its height, from the foot
     * @param other the axis that isn't the one of frequency, where there are two
     */
    public Zoom wheel(double factor, double shareX, double shareY, boolean other, Zoom whole) {
        return upward.isPresent() && !other
                ? new Zoom(
                        across,
                        Optional.of(upward.get()
                                .scaled(factor, shareY, whole.upward().orElseThrow())))
                : new Zoom(across.scaled(factor, shareX, whole.across()), upward);
    }

    /** Moved along the axis that {@link #wheel} works on. */
    public Zoom moved(double share, boolean other, Zoom whole) {
        return upward.isPresent() && !other
                ? new Zoom(
                        across,
                        Optional.of(upward.get().moved(share, whole.upward().orElseThrow())))
                : new Zoom(across.moved(share, whole.across()), upward);
    }

    /** What lies in a box drawn with the pointer, in shares of the plot. */
    public Zoom box(double fromX, double toX, double fromY, double toY, Zoom whole) {
        return new Zoom(
                across.between(fromX, toX, whole.across()),
                upward.map(shown -> shown.between(fromY, toY, whole.upward().orElseThrow())));
    }

    /** This part of another whole, as far as it has it; the whole where it hasn't. */
    public Zoom within(Zoom whole) {
        boolean apart = across.to() <= whole.across().from()
                || across.from() >= whole.across().to()
                || upward.isPresent() != whole.upward().isPresent();
        return apart
                ? whole
                : new Zoom(
                        across.scaled(1, 0, whole.across()),
                        upward.map(shown -> shown.scaled(1, 0, whole.upward().orElseThrow())));
    }
}
