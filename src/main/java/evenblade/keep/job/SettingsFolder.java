package evenblade.keep.job;

import java.nio.file.Path;
import java.util.Locale;

/** Where a user's programs keep what they remember, by the custom of the system. */
public final class SettingsFolder {
    private SettingsFolder() {}

    /** The folder; it need not exist yet. */
    public static Path ofThisUser() {
        Path home = Path.of(System.getProperty("user.home"));
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        if (system.startsWith("windows")) {
            String roaming = System.getenv("APPDATA");
            return (roaming == null ? home : Path.of(roaming)).resolve("Evenblade");
        }
        if (system.startsWith("mac")) {
            return home.resolve("Library").resolve("Application Support").resolve("Evenblade");
        }
        String config = System.getenv("XDG_CONFIG_HOME");
        return (config == null || config.isBlank() ? home.resolve(".config") : Path.of(config)).resolve("evenblade");
    }
}
