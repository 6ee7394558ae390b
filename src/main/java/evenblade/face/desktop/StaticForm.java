package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.SketchStatic.Sketch;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import java.util.List;
import java.util.function.BiFunction;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.Timer;

/** Readings taken with the engine off, and what they come to while they are typed. */
abstract class StaticForm extends EntryForm {
    private static final int REST_MS = 150; // shorter than a pause between two fields

    private final WrappedLabel says = new WrappedLabel(" ");
    private final transient Timer rest = new Timer(REST_MS, e -> look());
    private JTextArea text;

    StaticForm(
            Navigator bench,
            OpenJob job,
            String form,
            String heading,
            BiFunction<Navigator, OpenJob, StaticForm> anew) {
        super(bench, job, form, heading, "Write the readings down", anew);
        rest.setRepeats(false);
        says.setName("says");
    }

    /** The rest of the form, below the readings. */
    final void finish() {
        text = area("text", "Remark", 2);
        whenField();
        body.add(says, "span 2, growx, wmin 50, gaptop 8");
        typed();
    }

    /** The readings as they stand. */
    abstract Detail readings();

    /** What the readings come to so far. */
    abstract Sketch sketch();

    /** Shows what was drawn. */
    void draw(Sketch sketch) {}

    final void typed() {
        rest.restart();
    }

    private void look() {
        try {
            Sketch sketch = sketch();
            says.setText(Words.facts(sketch.sentences(), bench.settings().lengthUnit()));
            draw(sketch);
        } catch (BadInput e) {
            says.setText(" "); // not typed to its end yet
        }
        revalidate();
    }

    @Override
    final Work.Labour<List<Event>> entry() {
        return written(text.getText().strip(), readings());
    }

    final JTextField listened(JTextField field) {
        field.getDocument().addDocumentListener(new Drafts.Typed(this::typed));
        return field;
    }

    /** A reading with the user's own unit behind a bare number. */
    final String withUnit(String typed, String unit) {
        boolean bare = !typed.isEmpty() && Character.isDigit(typed.charAt(typed.length() - 1));
        return bare ? typed + " " + unit : typed;
    }

    final String lengthUnit() {
        return bench.settings().lengthUnit().sign();
    }

    /** The unit in a word. */
    final String lengthWord() {
        return bench.settings().inches() ? "inches" : "millimetres";
    }
}
