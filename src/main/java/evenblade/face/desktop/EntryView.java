package evenblade.face.desktop;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.tell.chart.PhotoScaler;
import java.nio.file.Path;
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
        bench.work()
                .begin(
                        "Opening " + file.getFileName(),
                        progress -> PhotoScaler.upright(file, PHOTO_PX),
                        view::show,
                        view::wrong);
        return view;
    }
}
