package evenblade.face.desktop;

import evenblade.keep.job.SettingsFolder;
import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.SwingUtilities;

/** Opens the desktop. */
public final class Desktop {
    private Desktop() {}

    /**
     * Opens a window with the last job, or with a choice where there is none. It lives on in threads of
     * its own until the user closes it.
     *
     * @return whether there is a display to open it on
     */
    public static boolean open() {
        return open(Optional.empty());
    }

    /**
     * Opens a window and puts the recording into the form for a run, of the last job or of the one that is
     * opened next.
     *
     * @return whether there is a display to open it on
     */
    public static boolean open(Path recording) {
        return open(Optional.of(recording.toAbsolutePath()));
    }

    private static boolean open(Optional<Path> recording) {
        if (!displayThere()) {
            return false;
        }
        Settings settings = Settings.read(SettingsFolder.ofThisUser());
        SwingUtilities.invokeLater(() -> {
            MainWindow window = window(settings);
            window.setVisible(true);
            recording.ifPresent(window::hand);
            settings.lastJob().ifPresent(window::openJob);
        });
        return true;
    }

    /** A window on settings of its own, for whoever drives it. Called on the event thread. */
    static MainWindow window(Settings settings) {
        Look.apply(settings);
        return new MainWindow(settings);
    }

    private static boolean displayThere() {
        if (GraphicsEnvironment.isHeadless()) {
            return false;
        }
        try {
            return GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices().length > 0;
        } catch (AWTError | java.awt.HeadlessException e) {
            // A display was named but can't be reached: as good as none.
            return false;
        }
    }
}
