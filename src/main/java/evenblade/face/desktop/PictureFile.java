package evenblade.face.desktop;

import evenblade.keep.job.PlainName;
import evenblade.tell.chart.Picture;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a saved picture is called: by the job, by what it shows, and by the run and the speed that its caption names, so
 * that two pictures don't get one name.
 *
 * @param stem name without its ending: letters, digits and hyphens
 */
record PictureFile(String stem) {
    /** Longer names are cut: most disks take 255 bytes. */
    private static final int MOST_LETTERS = 110;

    /** The name of a picture of a job. */
    static PictureFile of(Optional<String> job, Picture picture) {
        List<String> parts = new ArrayList<>();
        job.ifPresent(parts::add);
        parts.add(picture.title());
        parts.addAll(picture.caption().parts());
        return new PictureFile(
                PlainName.of(String.join(" ", parts), MOST_LETTERS).toLowerCase(Locale.ROOT));
    }

    /** A PNG of that name in a folder, numbered where there is one already. */
    Path freeIn(Path folder) {
        Path file = folder.resolve(stem + ".png");
        for (int number = 2; Files.exists(file); number++) {
            file = folder.resolve(stem + "-" + number + ".png");
        }
        return file;
    }

    /** As it is where it ends as PNG or SVG do, else as PNG. */
    static Path withEnding(Path file) {
        return isSvg(file) || lower(file).endsWith(".png") ? file : file.resolveSibling(file.getFileName() + ".png");
    }

    static boolean isSvg(Path file) {
        return lower(file).endsWith(".svg");
    }

    private static String lower(Path file) {
        return file.getFileName().toString().toLowerCase(Locale.ROOT);
    }
}
