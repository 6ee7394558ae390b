package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.measure.lines.ChannelSpectrum;
import evenblade.measure.lines.LineOrders;
import evenblade.measure.lines.SteadyLine;
import evenblade.tell.export.LinesTable;
import evenblade.tell.export.SpectrumTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Writes the pictures of a recording that was looked at, its spectrum and its lines as tables. */
public final class WriteSpectrum {
    private WriteSpectrum() {}

    /**
     * Writes into a folder, which is made where need be; the names start with the recording's.
     *
     * @return what was written
     * @throws BadInput where the folder can't be written to
     */
    public static List<Path> write(LookedAt looked, Path folder) {
        ChannelSpectrum spectrum = looked.spectrum();
        String stem = WritePictures.stem(spectrum.source().file());
        List<Path> written = new ArrayList<>(WritePictures.write(DrawSpectrum.draw(looked), stem, folder));
        SpectrumTable.Column column = new SpectrumTable.Column(
                spectrum.channel(), spectrum.unit(), spectrum.measured().spectrum());
        written.add(write(folder.resolve(stem + "-spectrum.csv"), SpectrumTable.csv(List.of(column))));
        written.add(write(
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

    private static Path write(Path file, String text) {
        try {
            return Files.writeString(file, text);
        } catch (IOException e) {
            throw BadInput.in(file)
                    .found("it can't be written (" + e.getMessage() + ")", "a file that this user may write");
        }
    }
}
