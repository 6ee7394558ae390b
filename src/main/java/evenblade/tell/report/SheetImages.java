package evenblade.tell.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** The sheets of a report as they will come out of the printer, to be looked at before they are written. */
public final class SheetImages implements AutoCloseable {
    /** Points to the inch, by the definition of PDF's unit (ISO 32000). */
    private static final float POINTS_PER_INCH = 72;

    private final PDDocument sheets;
    private final PDFRenderer renderer;

    private SheetImages(PDDocument sheets) {
        this.sheets = sheets;
        this.renderer = new PDFRenderer(sheets);
    }

    /** The sheets that {@link Report#writePdf} would write. */
    public static SheetImages of(Report report) throws IOException {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        report.writePdf(pdf);
        return new SheetImages(Loader.loadPDF(pdf.toByteArray()));
    }

    /** The sheets that {@link OneSheet#writePdf} would write. */
    public static SheetImages of(OneSheet sheet, PaperSize paper) throws IOException {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        sheet.writePdf(paper, pdf);
        return new SheetImages(Loader.loadPDF(pdf.toByteArray()));
    }

    /** Number of sheets. */
    public int count() {
        return sheets.getNumberOfPages();
    }

    /** Height of a sheet as a share of its width. */
    public double heightToWidth(int sheet) {
        return sheets.getPage(sheet).getCropBox().getHeight()
                / sheets.getPage(sheet).getCropBox().getWidth();
    }

    /**
     * One sheet as the bytes of a PNG file.
     *
     * @param sheet from 0
     * @param widthPx of the bitmap
     */
    public synchronized byte[] png(int sheet, int widthPx) throws IOException {
        float inches = sheets.getPage(sheet).getCropBox().getWidth() / POINTS_PER_INCH;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(renderer.renderImageWithDPI(sheet, widthPx / inches, ImageType.RGB), "png", bytes);
        return bytes.toByteArray();
    }

    @Override
    public synchronized void close() throws IOException {
        sheets.close();
    }
}
