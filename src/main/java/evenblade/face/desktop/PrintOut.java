package evenblade.face.desktop;

import evenblade.tell.chart.ChartTheme;
import evenblade.tell.chart.Picture;
import java.awt.Graphics2D;
import java.awt.print.PageFormat;
import java.awt.print.Printable;
import java.awt.print.PrinterAbortException;
import java.awt.print.PrinterException;
import java.awt.print.PrinterJob;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;

/** Prints what is seen, after the system's own question for printer and paper. */
final class PrintOut {
    /** A picture is drawn so wide and so high, then brought to the paper's size: its text has 8 points on a page of 170 mm. */
    private static final int WIDTH = 1600;

    private static final int HEIGHT = 933; // 12 to 7, as on the screen

    private PrintOut() {}

    /** Asks and prints one picture across the page. */
    static void of(Picture picture, Work work, Consumer<String> said) {
        of(
                picture.title(),
                work,
                (graphics, page, index) -> {
                    if (index > 0) {
                        return Printable.NO_SUCH_PAGE;
                    }
                    Graphics2D g = (Graphics2D) graphics;
                    double scale = Math.min(page.getImageableWidth() / WIDTH, page.getImageableHeight() / HEIGHT);
                    g.translate(page.getImageableX(), page.getImageableY());
                    g.scale(scale, scale);
                    picture.paint(g, WIDTH, HEIGHT, ChartTheme.forPage(WIDTH, HEIGHT));
                    return Printable.PAGE_EXISTS;
                },
                said);
    }

    /** Asks, and prints while the window goes on. */
    static void of(String name, Work work, Printable pages, Consumer<String> said) {
        PrinterJob job = PrinterJob.getPrinterJob();
        job.setJobName("Evenblade: " + name);
        PageFormat page = job.defaultPage();
        job.setPrintable(pages, page);
        if (job.printDialog()) {
            work.aside(() -> {
                String outcome = printed(job, name);
                SwingUtilities.invokeLater(() -> said.accept(outcome));
            });
        }
    }

    private static String printed(PrinterJob job, String name) {
        try {
            job.print();
            return "Sent to the printer: " + name;
        } catch (PrinterAbortException e) {
            return "Printing was stopped.";
        } catch (PrinterException e) {
            return "The printer refused: " + e.getMessage();
        }
    }
}
