package evenblade.face.desktop;

import evenblade.face.app.SketchStatic;
import evenblade.face.app.SketchStatic.Sketch;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.PitchReadings.Reference;
import evenblade.keep.job.Detail;
import javax.swing.JComboBox;
import javax.swing.JTextField;

/** Blade angles, all at one station. */
final class PitchForm extends StaticForm {
    private static final String DEGREES = "deg";

    private final HubFields hub;
    private final JTextField zero;
    private final JTextField station;
    private final JComboBox<String> reference = new JComboBox<>(new String[] {"the hub", "level"});

    PitchForm(Navigator bench, OpenJob job) {
        super(bench, job, "pitch", "Blade angles", PitchForm::new);
        told("Ignition off, plug leads off or grounded. All blades at the same station, each blade in "
                + "the same place when read. In degrees. "
                + HubFields.drawn(job.record().installation()));
        hub = new HubFields(job.record().installation(), "17.4", this::keep, this::typed);
        body.add(hub, "span 2, growx");
        labelled("reference", "Zero taken on", reference);
        reference.addActionListener(e -> typed());
        keep(reference);
        zero = listened(field("zero", "Protractor showed there", "left empty: 0"));
        station = listened(field("station", "Station", "distance from the shaft's centre, like 640 mm"));
        finish();
    }

    @Override
    Detail.Pitch readings() {
        return new Detail.Pitch(
                Layout.parse(hub.layoutText()),
                Rounds.text(hub, typed -> withUnit(typed, DEGREES)),
                typed(zero).map(typed -> withUnit(typed, DEGREES)),
                reference.getSelectedIndex() == 0 ? Reference.HUB : Reference.LEVEL,
                typed(station).map(typed -> withUnit(typed, lengthUnit())),
                java.util.Optional.empty());
    }

    @Override
    Sketch sketch() {
        return SketchStatic.pitch(job.record().installation(), readings());
    }
}
