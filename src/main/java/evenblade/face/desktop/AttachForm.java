package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Event;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import javax.swing.JFileChooser;
import javax.swing.JTextArea;

/** Takes photos and papers into the job. */
final class AttachForm extends EntryForm {
    private final FilesField files = new FilesField("files", JFileChooser.FILES_ONLY, true);
    private final JTextArea text;

    AttachForm(Navigator bench, OpenJob job) {
        super(bench, job, "attach", "Photos and papers", "Copy into the job", AttachForm::new);
        labelled("files box", "Files", files);
        keep(files.text());
        text = area("text", "Remark", 3);
        whenField();
        setTransferHandler(FilesField.dropping(this::put));
    }

    void put(List<Path> paths) {
        files.put(paths);
    }

    @Override
    Work.Labour<List<Event>> entry() {
        List<Path> paths = files.paths();
        if (paths.isEmpty()) {
            throw BadInput.in("files").found("nothing", "one file or more");
        }
        String said = text.getText().strip();
        Optional<OffsetDateTime> at = when();
        Path folder = job.folder();
        return progress -> WriteEntry.attach(folder, paths, said, at);
    }
}
