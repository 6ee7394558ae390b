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
 * @param measuredFreedom how many of them the runs themselves gave
 */
record TrialScatter(double share, double freedom, double measuredFreedom) {
    /** Ground runs scatter 3 to 8 %; set by this project, common practice, no source. */
    static final double PRIOR_SHARE = 0.05;
    /** The upper end of that. */
    static final double LARGEST_USUAL_SHARE = 0.08;
    /**
     * With this many, Student's t on the prior alone holds 94.3 % of truths scattered evenly from 3 to 8 % (computed); what
     * comes on top for stilled lines makes it 95 to 97 % in simulated jobs.
     */
    static final int PRIOR_FREEDOM = 10;

    static final TrialScatter PRIOR = new TrialScatter(PRIOR_SHARE, PRIOR_FREEDOM, 0);

    /**
     * From a measured share, filled up by the prior. Residuals with ν degrees of freedom say how large scatter and other
     * errors are together; where the scatter is a part p of that variance, it is known by itself with ν·p² only.
     *
     * @param residualFreedom ν
     * @param part p
     */
    static TrialScatter measured(double share, int residualFreedom, double part) {
        double seen = residualFreedom * part * part;
        double prior = Math.max(0, PRIOR_FREEDOM - seen);
        double square = (seen * share * share + prior * PRIOR_SHARE * PRIOR_SHARE) / (seen + prior);
        return new TrialScatter(Math.sqrt(square), seen + prior, seen);
    }

    /** Whether the runs alone say it, with nothing from the prior. */
    boolean seen() {
        return measuredFreedom >= PRIOR_FREEDOM;
    }
}
