package evenblade.face.desktop;

import evenblade.base.units.LengthUnit;
import evenblade.keep.job.JobFolder;
import java.awt.Rectangle;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What the desktop remembers of a user: looks, window, last jobs. */
final class Settings {
    static final int LEAST_TEXT_PX = 12; // smaller can't be read
    static final int MOST_TEXT_PX = 28; // larger, the forms don't fit a small laptop
    private static final int USUAL_TEXT_PX = 16; // read at arm's length
    private static final int RECENT = 8; // fills a menu without scrolling

    private final Path folder;
    private final TextFile file;

    private Settings(Path folder) {
        this.folder = folder;
        this.file = TextFile.read(folder.resolve("desktop.properties"));
    }

    static Settings read(Path folder) {
        return new Settings(folder);
    }

    /** What was typed and not yet entered. */
    Drafts drafts() {
        return new Drafts(TextFile.read(folder.resolve("typed.properties")));
    }

    boolean dark() {
        return file.get("dark", "no").equals("yes");
    }

    void dark(boolean dark) {
        file.put("dark", dark ? "yes" : "no");
    }

    boolean inches() {
        return file.get("inches", "no").equals("yes");
    }

    void inches(boolean inches) {
        file.put("inches", inches ? "yes" : "no");
    }

    /** The unit that short lengths are shown in first. */
    LengthUnit lengthUnit() {
        return inches() ? LengthUnit.INCH : LengthUnit.MILLIMETRE;
    }

    int textPx() {
        return Math.max(LEAST_TEXT_PX, Math.min(MOST_TEXT_PX, number("text", USUAL_TEXT_PX)));
    }

    void textPx(int px) {
        file.put("text", String.valueOf(px));
    }

    /** A number kept under a name. */
    int number(String key, int otherwise) {
        try {
            return Integer.parseInt(file.get(key, String.valueOf(otherwise)));
        } catch (NumberFormatException e) {
            return otherwise;
        }
    }

    void keep(String key, int value) {
        file.put(key, String.valueOf(value));
    }

    Optional<Rectangle> window() {
        int width = number("window.width", 0);
        return width == 0
                ? Optional.empty()
                : Optional.of(new Rectangle(
                        number("window.x", 0), number("window.y", 0), width, number("window.height", 700)));
    }

    void window(Rectangle bounds) {
        keep("window.x", bounds.x);
        keep("window.y", bounds.y);
        keep("window.width", bounds.width);
        keep("window.height", bounds.height);
    }

    /** Jobs opened last, the latest first; those that still are there. */
    List<Path> recentJobs() {
        List<Path> jobs = new ArrayList<>();
        for (String line : file.get("jobs", "").split("\n")) {
            try {
                if (!line.isBlank() && JobFolder.isJob(Path.of(line))) {
                    jobs.add(Path.of(line));
                }
            } catch (InvalidPathException e) {
                continue; // a path from another system
            }
        }
        return jobs;
    }

    Optional<Path> lastJob() {
        return file.get("open", "no").equals("yes") ? recentJobs().stream().findFirst() : Optional.empty();
    }

    void opened(Path job) {
        String path = job.toAbsolutePath().normalize().toString();
        List<String> jobs = new ArrayList<>(List.of(path));
        Arrays.stream(file.get("jobs", "").split("\n"))
                .filter(line -> !line.isBlank() && !line.equals(path))
                .forEach(jobs::add);
        file.put("jobs", String.join("\n", jobs.subList(0, Math.min(RECENT, jobs.size()))));
        file.put("open", "yes");
    }

    void closed() {
        file.put("open", "no");
    }

    /** Brings everything to the disk. */
    void write() {
        file.write();
    }
}
