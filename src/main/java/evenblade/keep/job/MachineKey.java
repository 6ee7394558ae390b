package evenblade.keep.job;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * A secret of this user on this machine. What is sealed with it was written here; a job folder that came from somewhere
 * else can't bring results that look as if this program had computed them.
 *
 * <p>The key is made when it is first needed and kept in the user's settings. Where it can't be kept, it lasts only as long
 * as the job is open, and sealed results are computed anew next time.
 */
final class MachineKey {
    private static final String FILE = "results.key";
    private static final String ALGORITHM = "HmacSHA256";
    /** As long as the seal: a longer key adds nothing to HMAC (RFC 2104, section 3). */
    static final int BYTES = 32;

    private final SecretKeySpec key;

    private MachineKey(byte[] key) {
        this.key = new SecretKeySpec(key, ALGORITHM);
    }

    /** The key of the user who runs this process. */
    static MachineKey ofThisUser() {
        return in(SettingsFolder.ofThisUser());
    }

    /** The key kept in a folder; made there where there is none. */
    static MachineKey in(Path folder) {
        Path file = folder.resolve(FILE);
        byte[] made = new byte[BYTES];
        new SecureRandom().nextBytes(made);
        try {
            Files.createDirectories(folder);
            boolean posix = Files.getFileStore(folder).supportsFileAttributeView("posix");
            if (posix) {
                Files.createFile(
                        file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
            } else {
                Files.createFile(file);
            }
            Files.write(file, made);
            return new MachineKey(made);
        } catch (FileAlreadyExistsException e) {
            return new MachineKey(kept(file, made));
        } catch (IOException e) {
            return new MachineKey(made);
        }
    }

    /** What is in the file; where that is no key, the other one, for this process alone. */
    private static byte[] kept(Path file, byte[] otherwise) {
        try {
            boolean usable = Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && Files.size(file) == BYTES;
            return usable ? Files.readAllBytes(file) : otherwise;
        } catch (IOException e) {
            return otherwise;
        }
    }

    /** The seal of some bytes, {@value #BYTES} bytes long: HMAC with SHA-256 (RFC 2104). */
    byte[] seal(byte[] content) {
        try {
            Mac mac = Mac.getInstance(ALGORITHM);
            mac.init(key);
            return mac.doFinal(content);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java has " + ALGORITHM, e);
        }
    }
}
