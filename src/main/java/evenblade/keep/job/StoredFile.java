package evenblade.keep.job;

/**
 * A file that was copied into the job folder.
 *
 * @param path below the job folder, parted by {@code /}
 * @param originalName its name where it came from
 * @param stamp its content when it was added
 */
public record StoredFile(String path, String originalName, FileStamp stamp) {}
