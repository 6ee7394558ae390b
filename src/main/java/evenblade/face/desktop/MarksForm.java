package evenblade.face.desktop;

import evenblade.face.app.SketchStatic;
import evenblade.face.app.SketchStatic.Mark;
import evenblade.face.app.SketchStatic.Sketch;
import evenblade.judge.tracking.Layout;
import evenblade.keep.job.Detail;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/** Tip marks against a block that doesn't move; the picture of the tips grows as they are typed. */
final class MarksForm extends StaticForm {
    private static final String BESIDE = "span 2, split 2, growx";
    private static final String ALONE = "span 2, growx";
    private static final String PICTURE = "growx, growy, wmin 270, hmin 330";
    /** In less than this the picture stands under the fields, in text heights. */
    private static final int WIDE_EM = 48;

    private final HubFields hub;
    private final PicturePane picture;
    private final JTextField sigma;

    MarksForm(Navigator bench, OpenJob job) {
        super(bench, job, "marks", "Tip marks", MarksForm::new);
        told("Ignition off, plug leads off or grounded. A block that doesn't move, the same point of "
                + "each tip, the blade pushed the same way. All marks from one zero, in one unit; a bare "
                + "number counts as " + lengthWord()
                + ". A second round goes behind a semicolon: 0; 0.3. "
                + HubFields.drawn(job.record().installation()));
        hub = new HubFields(
                job.record().installation(), bench.settings().inches() ? "3/16" : "4.8", this::keep, this::typed);
        picture = new PicturePane(bench);
        picture.show(Optional.empty(), "The tips are drawn here from the second mark on.");
        body.add(hub, BESIDE);
        body.add(picture, PICTURE);
        sigma = listened(
                field("sigma", "One reading is good to", "left empty: 0.5 mm, a pencil line read with a rule"));
        finish();
    }

    @Override
    public void doLayout() {
        boolean beside = getWidth() > WIDE_EM * Look.em();
        MigLayout layout = (MigLayout) body.getLayout();
        layout.setComponentConstraints(hub, beside ? BESIDE : ALONE);
        layout.setComponentConstraints(picture, beside ? PICTURE : "span 2, " + PICTURE);
        super.doLayout();
    }

    /** Opens the form with the blades where they should be tried next. */
    MarksForm on(Layout layout) {
        for (int p = 1; p <= Math.min(layout.positions(), hub.positions()); p++) {
            hub.put(p, layout.at(p));
        }
        return this;
    }

    @Override
    Detail readings() {
        return new Detail.Tracking(
                Layout.parse(hub.layoutText()),
                Rounds.text(hub, typed -> withUnit(typed, lengthUnit())),
                typed(sigma).map(typed -> withUnit(typed, lengthUnit())));
    }

    @Override
    Sketch sketch() {
        List<Mark> marks = new ArrayList<>();
        for (int p = 1; p <= hub.positions(); p++) {
            String first = hub.reading(p).split(";", -1)[0].strip();
            marks.add(new Mark(p, hub.blade(p), withUnit(first, lengthUnit())));
        }
        return SketchStatic.marks(
                job.record().installation(),
                marks,
                "as typed, not written down yet",
                bench.settings().lengthUnit());
    }

    @Override
    void draw(Sketch sketch) {
        picture.show(sketch.picture(), "The tips are drawn here from the second mark on.");
    }
}
