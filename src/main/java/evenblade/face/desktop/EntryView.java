package evenblade.face.desktop;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.tell.chart.Ink;
import evenblade.tell.chart.PhotoScaler;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** An entry that is more words than figures: a change, a note, a photo. */
final class EntryView extends JPanel {
    /** As much as a large screen shows. */
    private static final int PHOTO_PX = 2400;

    EntryView(Navigator bench, OpenJob job, Event event) {
        super(new MigLayout("insets 18, wrap 1", "[grow,fill]", "[][][grow,fill]"));
        setName("entry");
        add(new EntryHeading(bench, job, event));
        WrappedLabel text = new WrappedLabel(event.text());
        text.setName("entry text");
        add(text, "wmin 50, gaptop 10");
        if (event.detail() instanceof Detail.Attachment attachment) {
            add(photo(bench, job.folder().resolve(attachment.file().path())), "wmin 50, hmin 50");
        } else if (event.detail() instanceof Detail.StruckOut struck) {
            add(new WrappedLabel("Takes back entry " + struck.event() + ". Both stay in the record."), "wmin 50, top");
        }
    }

    private static PhotoView photo(Navigator bench, Path file) {
        PhotoView view = new PhotoView(file.getFileName().toString());
        bench.begin(
                "Opening " + file.getFileName(),
                progress -> PhotoScaler.upright(file, PHOTO_PX),
                view::show,
                view::wrong);
        return view;
    }

    /** A photo as large as there is room for. */
    static final class PhotoView extends JPanel {
        private final String name;
        private transient Optional<BufferedImage> photo = Optional.empty();
        private String words = "opening…";

        PhotoView(String name) {
            this.name = name;
            setPreferredSize(new Dimension(400, 300));
        }

        void show(Optional<BufferedImage> image) {
            photo = image;
            words = name + " is not a picture that can be shown here; it is kept in the job's folder.";
            repaint();
        }

        void wrong(String why) {
            words = why;
            repaint();
        }

        @Override
        protected void paintComponent(Graphics graphics) {
            Graphics2D g = (Graphics2D) graphics.create();
            if (photo.isEmpty()) {
                g.setColor(Look.ink(Ink.QUIET_TEXT));
                g.drawString(words, 0, 2 * Look.em());
            } else {
                BufferedImage image = photo.get();
                double fit = Math.min((double) getWidth() / image.getWidth(), (double) getHeight() / image.getHeight());
                g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
                g.drawImage(image, 0, 0, (int) (fit * image.getWidth()), (int) (fit * image.getHeight()), null);
            }
            g.dispose();
        }
    }
}
