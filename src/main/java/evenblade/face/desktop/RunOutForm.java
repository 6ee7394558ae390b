package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.SketchStatic;
import evenblade.face.app.SketchStatic.Sketch;
import evenblade.keep.job.Detail;
import java.util.Optional;
import javax.swing.JTextField;

/** The face of the propeller flange under a dial gauge. */
final class RunOutForm extends StaticForm {
    private final JTextField total;
    private final JTextField radius;
    private final JTextField high;

    RunOutForm(Navigator bench, OpenJob job) {
        super(bench, job, "run-out", "Face run-out of the flange", RunOutForm::new);
        told("Ignition off, plug leads off or grounded. Shaft pushed the same way all round. A small "
                + "reading at the dial is a large one at the tip.");
        total = listened(field("total", "Largest less smallest", "over one turn, like 0.05 mm"));
        radius = listened(field("dial radius", "Dial's distance from the centre", "like 50 mm"));
        high = listened(field("high", "Highest at", "degrees from position 1 towards position 2; may be left empty"));
        finish();
    }

    @Override
    Detail.RunOut readings() {
        return new Detail.RunOut(
                length(total, "largest less smallest"),
                length(radius, "dial's distance"),
                typed(high).map(typed -> withUnit(typed, "deg")));
    }

    private String length(JTextField field, String what) {
        Optional<String> typed = typed(field);
        return withUnit(
                typed.orElseThrow(() -> BadInput.in(what).found("nothing", "a length like 0.05 mm")), lengthUnit());
    }

    @Override
    Sketch sketch() {
        return SketchStatic.runOut(job.record().installation(), readings());
    }
}
