package evenblade.judge.findings;

import evenblade.base.fact.Code;

/**
 * How sure a finding is: every cause starts at odds of 1 to 8, every point doubles them (or halves them, where it
 * speaks against). So 3 points make even odds, 5 make 4 to 1. The result is a measure to order findings by, kept below
 * {@value #MOST}; it is not counted from real jobs.
 *
 * @param share 0 to 1
 */
public record Confidence(double share) {
    private static final int START = -3; // odds of one in eight before any evidence; ours
    private static final double MOST = 0.97; // never certain: one in thirty may be something nobody thought of; ours
    /** From here on a finding counts as confident. */
    public static final double CONFIDENT = 0.8;
    /** From here on more numbers of the same kind would hardly make it surer. */
    private static final double AS_SURE_AS_NUMBERS = 0.95;
    /** From here on it counts as leaning that way. */
    public static final double LEANING = 0.5;
    /** Below this a finding isn't worth telling. */
    public static final double WORTH_TELLING = 0.25;
    /** Where one half of the evidence is missing that the cause needs, a reading is within its limit, or others leave numbers as like. */
    static final double MOST_ONE_SIDED = 0.75;
    /**
     * Where a number is of the size that sound machines show too, two causes leave the same numbers, or a resonance lifts 1× beside a
     * reading within its limit.
     */
    static final double MOST_IN_DOUBT = 0.5;
    /**
     * Where mass, track, pitch and flange would all have left the same numbers: even odds at best would be one in four,
     * and mass is the most common of them (by judgement, no source).
     */
    static final double MOST_OF_FOUR = 0.4;

    static Confidence of(int points) {
        double odds = Math.pow(2, START + points);
        return new Confidence(Math.min(MOST, odds / (1 + odds)));
    }

    Confidence oneSided() {
        return atMost(MOST_ONE_SIDED);
    }

    Confidence atMost(double most) {
        return new Confidence(Math.min(most, share));
    }

    Confidence atLeast(double least) {
        return new Confidence(Math.max(least, share));
    }

    /** Whether it is confident. */
    public boolean confident() {
        return share >= CONFIDENT;
    }

    /** How it is said. */
    public ConfidenceWord word() {
        if (share >= AS_SURE_AS_NUMBERS) {
            return ConfidenceWord.AS_SURE_AS_NUMBERS;
        }
        if (confident()) {
            return ConfidenceWord.FAIRLY_SURE;
        }
        return share >= LEANING ? ConfidenceWord.LEANS : ConfidenceWord.HINT;
    }

    /** How sure a finding is, in steps. */
    public enum ConfidenceWord implements Code {
        AS_SURE_AS_NUMBERS,
        FAIRLY_SURE,
        LEANS,
        HINT
    }
}
