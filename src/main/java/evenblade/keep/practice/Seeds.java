package evenblade.keep.practice;

/** Draws independent seeds from one, so that each part of an invented run has its own. */
final class Seeds {
    private Seeds() {}

    /** The seed of one numbered part (splitmix64 finisher: Steele, Lea and Flood 2014). */
    static long part(long seed, long number) {
        long z = seed + 0x9E3779B97F4A7C15L * (number + 1);
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
