package evenblade.face.desktop;

import evenblade.face.app.LookCloser;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.Spot;
import evenblade.tell.chart.WaterfallPicture;
import java.awt.BorderLayout;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JSplitPane;

/** A waterfall; a click at a moment shows the spectrum of that moment beside it. */
final class WaterfallPane extends JPanel {
    private static final double SHARE = 0.55; // a little more than half for the picture

    private final transient Navigator bench;
    private final PicturePane fall;
    private final PicturePane moment;
    private final ListenButton listen;
    private transient Optional<LookCloser> closer = Optional.empty();

    WaterfallPane(Navigator bench) {
        super(new BorderLayout());
        this.bench = bench;
        fall = new PicturePane(bench);
        fall.setName("waterfall");
        moment = new PicturePane(bench);
        moment.setName("moment");
        listen = new ListenButton(bench, fall, true);
        fall.view().onHold(this::showMoment);
        add(fall);
    }

    PicturePane fall() {
        return fall;
    }

    void show(Optional<Picture> picture, String otherwise, Optional<LookCloser> look) {
        closer = look;
        listen.of(look);
        fall.view()
                .finer(shown -> shown instanceof WaterfallPicture waterfall && look.isPresent()
                        ? look.get().finer(waterfall)
                        : shown);
        removeAll();
        add(fall);
        revalidate();
        fall.show(picture, otherwise);
    }

    private void showMoment() {
        Optional<Double> timeS = fall.view().cursors().stream()
                .reduce((one, later) -> later)
                .flatMap(spot -> spot.reading(Spot.What.TIME))
                .map(Spot.Reading::value);
        timeS.ifPresent(at -> closer.ifPresent(look -> bench.begin(
                "Drawing the spectrum of that moment",
                progress -> look.spectrumAt(at),
                picture -> {
                    beside();
                    moment.show(Optional.of(picture), "");
                },
                bench::say)));
    }

    private void beside() {
        if (moment.getParent() != null && moment.isShowing()) {
            return;
        }
        removeAll();
        JSplitPane split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, fall, moment);
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setResizeWeight(SHARE);
        split.setDividerLocation((int) (SHARE * getWidth()));
        add(split);
        revalidate();
        repaint();
    }
}
