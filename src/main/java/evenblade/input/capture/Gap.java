package evenblade.input.capture;

/**
 * A place where the clock says that samples are missing.
 *
 * @param frame the frame, counted from 0, near which they are missing
 * @param lostS how long the missing stretch is, seconds
 */
public record Gap(long frame, double lostS) {}
