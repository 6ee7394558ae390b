package evenblade.face.desktop;

import evenblade.base.units.LengthUnit;
import evenblade.face.app.SketchStatic;
import evenblade.face.app.SketchStatic.Sketch;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.machine.installation.Installation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** Readings taken with the engine off, as they were written down, and what they come to. */
final class StaticView extends JPanel {
    StaticView(Navigator bench, OpenJob job, Event event, Action track) {
        super(new MigLayout("insets 8 18 10 18, wrap 1, hidemode 3, gapy 4", "[grow,fill]", ""));
        setName("static");
        add(new EntryHeading(bench, job, event));
        LengthUnit unit = bench.settings().lengthUnit();
        Sketch sketch = sketch(job.record().installation(), event, unit);
        List<String> lines = readings(event);
        sketch.sentences().forEach(fact -> lines.add(Words.fact(fact, unit)));
        lines.forEach(line -> add(new WrappedLabel(line), "wmin 50"));
        if (event.detail() instanceof Detail.Tracking) {
            JButton together = new JButton(track);
            together.setName("together");
            together.setText("What all tip marks say together");
            add(together, "grow 0");
        }
        if (sketch.picture().isPresent()) {
            PicturePane picture = new PicturePane(bench);
            picture.show(sketch.picture(), "");
            add(picture, "push, grow, wmin 270, hmin 200");
        }
    }

    private static Sketch sketch(Installation installation, Event event, LengthUnit unit) {
        if (event.detail() instanceof Detail.Tracking marks) {
            return SketchStatic.marks(installation, marks.session(event.at().toInstant()), "entry " + event.id(), unit);
        }
        if (event.detail() instanceof Detail.Pitch pitch) {
            return SketchStatic.pitch(installation, pitch);
        }
        if (event.detail() instanceof Detail.RunOut runOut) {
            return SketchStatic.runOut(installation, runOut);
        }
        return new Sketch(Optional.empty(), List.of());
    }

    private static List<String> readings(Event event) {
        List<String> lines = new ArrayList<>();
        if (!event.text().isBlank()) {
            lines.add(event.text());
        }
        if (event.detail() instanceof Detail.Tracking marks) {
            lines.add("Blades " + marks.layout().text() + ". Marks by position: " + marks.readings() + ".");
            marks.sigma().ifPresent(sigma -> lines.add("One reading is good to " + sigma + "."));
        } else if (event.detail() instanceof Detail.Pitch pitch) {
            lines.add("Blades " + pitch.layout().text() + ". Angles by position: " + pitch.readings() + ".");
            lines.add("Protractor on the " + pitch.reference().word() + ": "
                    + pitch.zero().orElse("0 deg")
                    + pitch.station().map(s -> ". Station " + s).orElse("") + ".");
        } else if (event.detail() instanceof Detail.RunOut runOut) {
            lines.add(runOut.total() + " in all, dial " + runOut.dialRadius() + " from the centre"
                    + runOut.high()
                            .map(high -> ", highest at " + high + " from position 1")
                            .orElse("")
                    + ".");
        }
        return lines;
    }
}
