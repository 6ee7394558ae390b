package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import java.util.List;
import javax.swing.JTextArea;

/** Writes down what was changed, or a remark. */
final class RemarkForm extends EntryForm {
    private final boolean correction;
    private final JTextArea text;

    private RemarkForm(Navigator bench, OpenJob job, boolean correction) {
        super(
                bench,
                job,
                correction ? "correction" : "note",
                correction ? "What was changed" : "A note",
                correction ? "Write it down" : "Write note",
                correction ? RemarkForm::correction : RemarkForm::note);
        this.correction = correction;
        text = area("text", correction ? "One thing that was changed" : "Remark", 5);
        whenField();
    }

    static RemarkForm correction(Navigator bench, OpenJob job) {
        return new RemarkForm(bench, job, true);
    }

    static RemarkForm note(Navigator bench, OpenJob job) {
        return new RemarkForm(bench, job, false);
    }

    @Override
    Work.Labour<List<Event>> entry() {
        String said = typed(text).orElseThrow(() -> BadInput.in("text").found("nothing", "a few words"));
        return written(said, correction ? new Detail.Correction() : new Detail.Note());
    }
}
