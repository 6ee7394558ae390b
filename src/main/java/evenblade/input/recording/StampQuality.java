package evenblade.input.recording;

/**
 * What was measured about the time stamps of a recording that has them.
 *
 * @param medianStepS median of the steps between stamps, seconds
 * @param jitterShare standard deviation of the step over the median step, gaps left out
 * @param gaps number of steps longer than three median steps
 * @param lostS time inside those gaps, seconds
 * @param unsorted number of stamps that had to be moved into order
 * @param doubled number of rows that repeat a stamp and were left out
 */
public record StampQuality(double medianStepS, double jitterShare, int gaps, double lostS, int unsorted, int doubled) {}
