package evenblade.judge.tracking;

/**
 * A blade or hub position that stands out from the others.
 *
 * @param name the blade, or the position's number
 * @param blade whether it is a blade
 * @param offset how far its tip lies off the level of those that don't stand out; where all differ, off their mean
 */
public record StandOut(String name, boolean blade, Estimate offset) {}
