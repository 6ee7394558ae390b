package evenblade.keep.job;

/**
 * What the program told about a take when it was made, kept with the run.
 *
 * @param code of the warning, in kebab-case
 * @param text as it was told then
 */
public record Told(String code, String text) {}
