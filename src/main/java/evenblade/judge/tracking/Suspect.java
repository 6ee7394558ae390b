package evenblade.judge.tracking;

/**
 * The mark that fits worst with all others.
 *
 * @param session which session, counted from 1 in the order of time within those judged together
 * @param position hub position, from 1
 * @param offMm how far it lies off where the others would have it
 */
public record Suspect(int session, int position, double offMm) {}
