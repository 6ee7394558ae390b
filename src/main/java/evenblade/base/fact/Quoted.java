package evenblade.base.fact;

/**
 * Text that a user or a file gave: a label, a channel, a blade's letter. It is shown as it is, never read for meaning.
 *
 * @param text as it came
 */
public record Quoted(String text) implements Value {}
