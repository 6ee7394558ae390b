package evenblade.judge.balance;

/**
 * How much the 1× line moves from run to run with nothing changed, as a share of its length, the same along and across.
 *
 * <p>It is what runs show beyond the errors of their lines and weights: repeats, and every run more than the unknowns.
 * Where they leave open, a prior fills up to {@value #PRIOR_FREEDOM} degrees of freedom; from there on the runs alone
 * say it.
 *
 * @param share standard deviation over length
 * @param freedom degrees of freedom that it is known with
 * @param measuredFreedom degrees of freedom that the runs themselves gave
 */
record TrialScatter(double share, double freedom, int measuredFreedom) {
    /** Ground runs scatter 3 to 8 %; set by this project, common practice, no source. */
    static final double PRIOR_SHARE = 0.05;
    /** With this many, Student's t on the prior holds 96 % of truths scattered evenly from 3 to 8 % (computed). */
    static final int PRIOR_FREEDOM = 6;

    static final TrialScatter PRIOR = new TrialScatter(PRIOR_SHARE, PRIOR_FREEDOM, 0);

    /** From a measured share, filled up by the prior. */
    static TrialScatter measured(double share, int freedom) {
        double prior = Math.max(0, PRIOR_FREEDOM - freedom);
        double square = (freedom * share * share + prior * PRIOR_SHARE * PRIOR_SHARE) / (freedom + prior);
        return new TrialScatter(Math.sqrt(square), freedom + prior, freedom);
    }
}
