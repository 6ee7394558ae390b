package evenblade.tell.report;

/**
 * One thing and what is known of it.
 *
 * @param name the thing
 * @param value what is known of it
 */
public record KnownThing(String name, String value) {}
