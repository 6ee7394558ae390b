package evenblade.keep.job;

import java.time.Instant;

/**
 * What tells a file's content apart from any other.
 *
 * @param sha256 of its bytes, lower-case hexadecimal
 * @param bytes its size
 * @param modified when it was last written to, to the millisecond
 */
public record FileStamp(String sha256, long bytes, Instant modified) {}
