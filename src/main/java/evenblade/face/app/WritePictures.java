package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.face.app.LookAtRecording.LookedAt;
import evenblade.measure.lines.ChannelSpectrum;
import evenblade.measure.lines.LineOrders;
import evenblade.measure.lines.SteadyLine;
import evenblade.tell.chart.Picture;
import evenblade.tell.export.LinesTable;
import evenblade.tell.export.SpectrumTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Writes pictures into a folder, each as PNG and SVG, and tables beside them. */
public final class WritePictures {
    private static final int WIDTH_PX = 1600; // sharp across a page in print
    private static final int HEIGHT_PX = 933; // 12 to 7, as on the screen

    private WritePictures() {}

    /**
     * Refuses what can't become a folder, before any work is done.
     *
     * @throws BadInput where the path is a file, or a folder above it is
     */
    public static void requireFolder(Path folder) {
        for (Path each = folder.toAbsolutePath().normalize(); each != null; each = each.getParent()) {
            if (Files.exists(each) && !Files.isDirectory(each)) {
                throw BadInput.in(folder).found("a file at " + each, "a folder for the pictures, there or to be made");
            }
        }
    }

    /**
     * Draws and writes; the names start with the recording's, so that runs may share a folder.
     *
     * @return what was written
     */
    public static List<Path> write(AnalysedRecording analysed, Path folder) {
        return write(
                DrawRecording.draw(analysed), stem(analysed.orders().source().file()), folder);
    }

    /**
     * Writes pictures into a folder, which is made where need be.
     *
     * @param pictures by name
     * @param stem begins the name of each file
     * @return what was written
     * @throws BadInput where the folder can't be written to
     */
    public static List<Path> write(Map<String, Picture> pictures, String stem, Path folder) {
        List<Path> written = new ArrayList<>();
        try {
            Files.createDirectories(folder);
            for (Map.Entry<String, Picture> picture : pictures.entrySet()) {
                Path png = folder.resolve(stem + "-" + picture.getKey() + ".png");
                picture.getValue().toPng(png, WIDTH_PX, HEIGHT_PX);
                Path svg = folder.resolve(stem + "-" + picture.getKey() + ".svg");
                picture.getValue().toSvg(svg);
                written.add(png);
                written.add(svg);
            }
        } catch (IOException e) {
            throw BadInput.in(folder)
                    .found("it can't be written (" + e.getMessage() + ")", "a folder that this user may write");
        }
        return written;
    }

    /** A file's name without its ending. */
    static String stem(Path file) {
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    /**
     * Writes pictures and tables of a spectrum into a folder, which is made where need be; the names start with the recording's.
     *
     * @return what was written
     * @throws BadInput where the folder can't be written to
     */
    public static List<Path> spectrum(LookedAt looked, Path folder) {
        ChannelSpectrum spectrum = looked.spectrum();
        String stem = stem(spectrum.source().file());
        List<Path> written = new ArrayList<>(write(DrawSpectrum.draw(looked), stem, folder));
        SpectrumTable.Column column = new SpectrumTable.Column(
                spectrum.channel(), spectrum.unit(), spectrum.measured().spectrum());
        written.add(table(folder.resolve(stem + "-spectrum.csv"), SpectrumTable.csv(List.of(column))));
        written.add(table(
                folder.resolve(stem + "-lines.csv"),
                LinesTable.csv(
                        spectrum.unit(),
                        spectrum.measured().lines().stream()
                                .map(line -> new LinesTable.Row(line, orders(looked, line)))
                                .toList())));
        return written;
    }

    private static List<String> orders(LookedAt looked, SteadyLine line) {
        return looked.dwell()
                .map(dwell -> LineOrders.names(
                        dwell, line, looked.spectrum().measured().resolutionHz()))
                .orElse(List.of());
    }

    private static Path table(Path file, String text) {
        try {
            return Files.writeString(file, text);
        } catch (IOException e) {
            throw BadInput.in(file)
                    .found("it can't be written (" + e.getMessage() + ")", "a file that this user may write");
        }
    }
}
