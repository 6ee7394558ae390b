package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.AddRun;
import evenblade.face.app.PreviewRecording;
import evenblade.face.app.RunBefore;
import evenblade.input.recording.TableReading;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Event;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JFileChooser;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.Timer;

/** Takes the recording of a ground run in, after showing what the reader makes of it. */
final class ImportForm extends EntryForm {
    private static final int REST_MS = 350; // longer than between two keys of slow typing
    private static final String TABLE_NAMES = ".*\\.(csv|txt|tsv|dat|asc)";

    private final FilesField file = new FilesField("recording", JFileChooser.FILES_ONLY, false);
    private final SeenRecording seen = new SeenRecording();
    private final TableFields table = new TableFields(this::soon, this::keep, this::keep);
    private final JTextField label;
    private final JTextField engineRpm;
    private final JTextField fullScale;
    private final JTextField mark;
    private final JTextField channels;
    private final JTextArea text;
    private final Map<Condition, JTextField> conditions = new EnumMap<>(Condition.class);
    private final transient Timer rest = new Timer(REST_MS, e -> look());
    private transient Optional<Work.Task> looking = Optional.empty();
    private transient Optional<Path> lookedAt = Optional.empty();
    private transient Optional<Path> filledFor = Optional.empty();
    private final transient Prefilled prefilled = new Prefilled();
    private final WrappedLabel asBefore = new WrappedLabel("");

    ImportForm(Navigator bench, OpenJob job) {
        super(bench, job, "run", "A ground run from its recording", "Take the run in", ImportForm::new);
        rest.setRepeats(false);
        labelled("recording box", "Recording", file);
        keep(file.text());
        file.text().putClientProperty("JTextField.placeholderText", "WAV, FLAC, CSV, M4A, MP3 …; drop it here");
        file.text().setToolTipText("WAV, FLAC, CSV, M4A, MP3 …; drop it here");
        body.add(seen, "span 2, growx");
        asBefore.setName("as before");
        asBefore.setVisible(false);
        body.add(asBefore, "span 2, growx, wmin 50");
        body.add(table, "span 2, growx");
        label = field("label", "Short name", "as found, blades moved on, …");
        engineRpm = field("engine rpm", "Engine rpm held", "as the gauge showed it; nothing where it varied");
        fullScale = field("full scale", "Full scale", "like 50 m/s2; sound only, where it is known");
        mark = field("mark", "Mark channel", "number or name of the once-per-revolution mark, if any");
        channels = field("channels", "Channels", "numbers or names parted by commas; nothing for all");
        for (Condition condition : Condition.NOTED) {
            conditions.put(condition, field(condition.word(), words(condition), hint(condition)));
        }
        text = area("text", "Remark", 2);
        whenField();
        file.text().getDocument().addDocumentListener(new Drafts.Typed(rest::restart));
        fullScale.getDocument().addDocumentListener(new Drafts.Typed(rest::restart));
        setTransferHandler(FilesField.dropping(this::put));
        rest.restart();
    }

    void put(List<Path> paths) {
        file.put(paths.subList(0, Math.min(1, paths.size())));
    }

    private void soon() {
        if (rest != null) {
            rest.restart();
        }
    }

    private void look() {
        looking.ifPresent(Work.Task::giveUp);
        Optional<Path> path = file.paths().stream().findFirst();
        if (!path.equals(lookedAt)) {
            lookedAt = path;
            table.another();
        }
        if (path.isEmpty()) {
            seen.nothing();
            return;
        }
        Optional<String> scale = typed(fullScale);
        boolean fill = !path.equals(filledFor);
        Path folder = job.folder();
        try {
            TableReading said = table.said();
            looking = Optional.of(bench.begin(
                    "Looking into the recording",
                    progress -> fill
                            ? Looked.first(folder, path.get(), scale, said)
                            : new Looked(PreviewRecording.preview(path.get(), scale, said), Optional.empty()),
                    looked -> show(path.get(), looked),
                    this::unread));
        } catch (BadInput e) {
            seen.wrong(e.getMessage());
        }
    }

    /**
     * What the reader makes of a file.
     *
     * @param before what such a run takes over, where the file is looked at for the first time
     */
    private record Looked(PreviewRecording.Preview preview, Optional<RunBefore> before) {
        /** Read as the run before was, where nothing is said. */
        static Looked first(Path job, Path recording, Optional<String> scale, TableReading said) {
            NewRun nothing = new NewRun(Optional.empty(), Optional.empty(), "", RunSettings.NONE, Conditions.NONE);
            Optional<RunBefore> before = RunBefore.of(job, recording, nothing);
            return new Looked(
                    PreviewRecording.preview(
                            recording,
                            scale.or(() -> before.flatMap(run -> run.settings().fullScale())),
                            said.unsaid()
                                    ? before.map(run -> run.settings().table()).orElse(said)
                                    : said),
                    before);
        }
    }

    private void show(Path path, Looked looked) {
        PreviewRecording.Preview preview = looked.preview();
        seen.show(preview);
        preview.table().ifPresentOrElse(table::show, () -> table.setVisible(false));
        fullScale.setEnabled(preview.sound());
        if (!filledFor.equals(Optional.of(path))) {
            filledFor = Optional.of(path);
            fill(looked.before());
        }
    }

    /** What is as in the run before stands in the fields, to be seen and changed; a speed or the weather never does. */
    private void fill(Optional<RunBefore> before) {
        RunSettings settings = before.map(RunBefore::settings).orElse(RunSettings.NONE);
        Conditions noted = before.map(RunBefore::conditions).orElse(Conditions.NONE);
        prefilled.fill(fullScale, settings.fullScale());
        prefilled.fill(mark, settings.markChannel());
        prefilled.fill(
                channels, Optional.of(String.join(", ", settings.channels())).filter(all -> !all.isEmpty()));
        RunBefore.KEPT.forEach(condition -> prefilled.fill(conditions.get(condition), noted.get(condition)));
        if (table.said().unsaid()) {
            table.say(settings.table());
        }
        asBefore.setText(before.map(run -> "What isn't typed is as in '" + run.name() + "'. Change what isn't so.")
                .orElse(""));
        asBefore.setVisible(before.isPresent());
        revalidate();
    }

    private void unread(String why) {
        seen.wrong(why);
        String name = lookedAt.map(path -> path.getFileName().toString()).orElse("");
        if (name.toLowerCase(Locale.ROOT).matches(TABLE_NAMES)) {
            table.showUnread();
        }
    }

    @Override
    Work.Labour<List<Event>> entry() {
        List<Path> paths = file.paths();
        if (paths.isEmpty()) {
            throw BadInput.in("recording").found("nothing", "a file");
        }
        NewRun run = new NewRun(when(), typed(label), text.getText().strip(), settings(), noted());
        Path folder = job.folder();
        return progress ->
                List.of(AddRun.add(folder, paths.get(0), run, progress).event());
    }

    private RunSettings settings() {
        List<String> wanted = Arrays.stream(channels.getText().split(","))
                .map(String::strip)
                .filter(each -> !each.isEmpty())
                .toList();
        return new RunSettings(
                number(engineRpm, "engine rpm"),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                new ArrayList<>(wanted),
                typed(mark),
                typed(fullScale),
                table.isVisible() ? table.said() : TableReading.UNSAID);
    }

    private Conditions noted() {
        Map<Condition, String> entries = new EnumMap<>(Condition.class);
        conditions.forEach((condition, field) -> typed(field).ifPresent(said -> entries.put(condition, said)));
        return new Conditions(entries);
    }

    static OptionalDouble number(JTextField field, String what) {
        Optional<String> typed = typed(field);
        if (typed.isEmpty()) {
            return OptionalDouble.empty();
        }
        try {
            return OptionalDouble.of(Double.parseDouble(typed.get()));
        } catch (NumberFormatException e) {
            throw BadInput.in(what).found("\"" + typed.get() + "\"", "a number like 4800, or nothing");
        }
    }

    static String words(Condition condition) {
        return switch (condition) {
            case WIND -> "Wind";
            case TEMPERATURE -> "Air temperature";
            case FUEL -> "Fuel on board";
            case SENSOR -> "Sensor";
            case PLACE -> "Where it was fixed";
            case DIRECTION -> "Which way it pointed";
            case GAIN -> "Gain or range";
            case DEVICE -> "Recorded with";
            case NOTHING_CHANGED -> "Nothing was changed";
        };
    }

    static String hint(Condition condition) {
        return switch (condition) {
            case WIND -> "4 kt from ahead";
            case TEMPERATURE -> "12 °C";
            case FUEL -> "half";
            case SENSOR -> "laptop microphone, accelerometer No. 2, …";
            case PLACE -> "top of the gearbox";
            case DIRECTION -> "across, along or up";
            case GAIN -> "fixed, automatic gain off";
            case DEVICE -> "laptop line in";
            case NOTHING_CHANGED -> "since the run before";
        };
    }
}
