/**
 * Weighs numbers for and against each cause and names the next measurement.
 *
 * <p>{@link evenblade.findings.JobEvidence} goes in: measured runs and static readings, loaded by others. Each {@link
 * evenblade.findings.Rule} knows one cause and says what speaks for and against it in a stage of the job; {@link
 * evenblade.findings.Rules} is the one list where a rule is added; {@link evenblade.findings.Findings} turns what they
 * say into an ordered answer. Points are doublings of the odds: see {@link evenblade.findings.Sureness}.
 */
package evenblade.findings;
