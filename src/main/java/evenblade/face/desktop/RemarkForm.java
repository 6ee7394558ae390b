package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import javax.swing.JTextArea;
import javax.swing.JTextField;

/** Writes down what was changed, or a remark. */
final class RemarkForm extends EntryForm {
    private final boolean correction;
    private final JTextArea text;
    private final JTextField when;

    private RemarkForm(Navigator bench, OpenJob job, boolean correction) {
        super(
                bench,
                job,
                correction ? "correction" : "note",
                correction ? "What was changed" : "A note",
                correction ? "Write it down" : "Write note");
        this.correction = correction;
        text = area("text", correction ? "One thing that was changed" : "Remark", 5);
        when = whenField();
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
        Detail detail = correction ? new Detail.Correction() : new Detail.Note();
        Optional<OffsetDateTime> at = when(when);
        Path folder = job.folder();
        return progress -> List.of(WriteEntry.append(folder, new Entry(at, Optional.empty(), said, detail)));
    }

    @Override
    void again() {
        bench.show(new RemarkForm(bench, job, correction));
    }
}
