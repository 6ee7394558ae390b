/**
 * Weighs numbers for and against each cause and names the next measurement.
 *
 * <p>{@link evenblade.judge.findings.JobEvidence} goes in: measured runs and static readings, loaded by others. Each {@link
 * evenblade.judge.findings.Rule} knows one cause and says what speaks for and against it in a stage of the job; {@link
 * evenblade.judge.findings.Rules} is the one list where a rule is added; {@link evenblade.judge.findings.Findings} turns what they
 * say into an ordered answer. Points are doublings of the odds: see {@link evenblade.judge.findings.Confidence}.
 */
package evenblade.judge.findings;
