package evenblade.face.desktop;

import evenblade.face.app.SeeEvidence;
import evenblade.face.app.ShowJob;
import evenblade.keep.job.Event;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.Kind;
import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.KeyboardFocusManager;
import java.awt.Rectangle;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.beans.PropertyChangeListener;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.Action;
import javax.swing.JComponent;
import javax.swing.JFileChooser;
import javax.swing.JFrame;
import javax.swing.JOptionPane;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import javax.swing.text.JTextComponent;

/** The one window: a job in it, or a choice of jobs. */
final class MainWindow extends JFrame implements Navigator {
    private static final Dimension USUAL = new Dimension(1280, 800);
    private static final Dimension LEAST = new Dimension(760, 520);

    private final transient Settings settings;
    private final transient Drafts drafts;
    private final transient Work work = new Work();
    private final JPanel main = new JPanel(new BorderLayout());
    private transient WorkStrip strip = new WorkStrip();
    private final transient Action newJob = new MenuCommand("&New job…", "ctrl N", this::startNewJob);
    private final transient Action open = new MenuCommand("&Open a job…", "ctrl O", this::chooseJob);
    private final transient Action practice = new MenuCommand("&Practice job…", "", this::startPractice);
    private final transient Action look = new MenuCommand("&Look at a recording…", "ctrl L", this::chooseRecording);
    private transient Optional<OpenJob> job = Optional.empty();
    private transient Optional<JobPane> pane = Optional.empty();
    private transient Optional<Event> shown = Optional.empty();
    /** A recording that waits for a job to go into. */
    private transient Optional<Path> handed = Optional.empty();

    MainWindow(Settings settings) {
        super("Evenblade");
        setIconImages(List.of(AppIcon.of(16), AppIcon.of(32), AppIcon.of(64), AppIcon.of(128)));
        this.settings = settings;
        this.drafts = settings.drafts();
        setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
        setMinimumSize(LEAST);
        settings.window().filter(MainWindow::onAScreen).ifPresentOrElse(this::setBounds, () -> {
            setSize(USUAL);
            setLocationByPlatform(true);
        });
        addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                end();
            }
        });
        Thread.setDefaultUncaughtExceptionHandler((thread, wrong) -> SwingUtilities.invokeLater(
                () -> say("A fault of the program, not yours: " + wrong + ". What is written down is safe.")));
        followFocus();
        // Where the plus stands on the key of the equals sign, and on the number pad.
        for (String keys : List.of("ctrl EQUALS", "ctrl shift EQUALS", "ctrl ADD")) {
            getRootPane()
                    .registerKeyboardAction(
                            e -> text(2), KeyStroke.getKeyStroke(keys), JComponent.WHEN_IN_FOCUSED_WINDOW);
        }
        getRootPane()
                .registerKeyboardAction(
                        e -> text(-2), KeyStroke.getKeyStroke("ctrl SUBTRACT"), JComponent.WHEN_IN_FOCUSED_WINDOW);
        getRootPane()
                .setTransferHandler(
                        FilesField.dropping(paths -> paths.stream().limit(1).forEach(this::look)));
        build();
    }

    /** What gets the focus comes into sight: Tab must not lead to a place that is scrolled away. */
    private void followFocus() {
        PropertyChangeListener follower = e -> {
            if (e.getNewValue() instanceof JTextComponent text && SwingUtilities.isDescendingFrom(text, this)) {
                TextUndo.on(text);
            }
            if (e.getNewValue() instanceof JComponent focused
                    && focused.getParent() instanceof JComponent around
                    && SwingUtilities.isDescendingFrom(focused, this)) {
                around.scrollRectToVisible(focused.getBounds());
            }
        };
        KeyboardFocusManager keys = KeyboardFocusManager.getCurrentKeyboardFocusManager();
        keys.addPropertyChangeListener("permanentFocusOwner", follower);
        addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosed(WindowEvent e) {
                keys.removePropertyChangeListener("permanentFocusOwner", follower);
            }
        });
    }

    /** Whether enough of a window would be seen: the screen it was on may be gone. */
    private static boolean onAScreen(Rectangle bounds) {
        return Arrays.stream(GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices())
                .map(screen -> screen.getDefaultConfiguration().getBounds().intersection(bounds))
                .anyMatch(seen -> seen.width >= LEAST.width / 2 && seen.height >= LEAST.height / 2);
    }

    /** Fills the window anew, in the looks that hold now. */
    private void build() {
        getContentPane().removeAll();
        main.removeAll();
        WorkStrip before = strip;
        strip = new WorkStrip();
        strip.takeOver(before);
        work.watchedBy(strip);
        getContentPane().setLayout(new BorderLayout());
        getContentPane().add(main, BorderLayout.CENTER);
        getContentPane().add(strip, BorderLayout.SOUTH);
        if (job.isPresent()) {
            showJob();
        } else {
            showStart();
        }
        getContentPane().revalidate();
        getContentPane().repaint();
    }

    private void showStart() {
        pane = Optional.empty();
        bar(menus(Optional.empty()));
        fill(new StartPanel(this, newJob, open, practice, look));
        setTitle("Evenblade");
    }

    private void bar(MenuBar menus) {
        menus.add(strip.working());
        setJMenuBar(menus);
    }

    private void showJob() {
        JobCommands commands = new JobCommands(this, job.orElseThrow());
        bar(menus(Optional.of(commands)));
        JobPane made = new JobPane(this, job.get(), commands);
        pane = Optional.of(made);
        fill(made);
        setTitle(job.get().record().name() + " · Evenblade");
        showNewest();
        showHanded();
    }

    /** Takes a recording that another program handed over: it waits until a job is open. */
    void hand(Path recording) {
        handed = Optional.of(recording);
        if (job.isPresent()) {
            showHanded();
        } else {
            look(recording);
            say("Open a job, or begin one: " + recording.getFileName() + " then goes into it.");
        }
    }

    @Override
    public void look(Path recording) {
        if (held()) {
            return;
        }
        if (job.isPresent()) {
            show(new LookPane(this, recording, Optional.empty()));
        } else {
            fillAside(new LookPane(this, recording, Optional.of(this::build)));
        }
    }

    private void showHanded() {
        job.ifPresent(open -> handed.ifPresent(recording -> {
            handed = Optional.empty();
            ImportForm form = new ImportForm(this, open);
            form.put(List.of(recording));
            show(form);
        }));
    }

    private void fill(JComponent panel) {
        main.removeAll();
        main.add(panel);
        main.revalidate();
        main.repaint();
    }

    private MenuBar menus(Optional<JobCommands> commands) {
        MenuBar bar = new MenuBar();
        bar.add(
                "&Job",
                List.of(
                        Optional.of(newJob),
                        Optional.of(open),
                        Optional.of(practice),
                        Optional.of(look),
                        Optional.empty(),
                        Optional.of(new MenuCommand("&Close the job", "ctrl W", this::closeJob)),
                        Optional.of(new MenuCommand("&End", "ctrl Q", this::end))));
        commands.ifPresent(c -> {
            List<Optional<? extends Action>> adding = new ArrayList<>();
            c.adding().forEach(action -> adding.add(Optional.of(action)));
            adding.add(Optional.empty());
            adding.add(Optional.of(c.takeBack));
            bar.add("&Add", adding);
            List<Optional<? extends Action>> looking = new ArrayList<>();
            c.looking().forEach(action -> looking.add(Optional.of(action)));
            bar.add("&Look at", looking);
        });
        bar.add(
                "&Picture",
                List.of(
                        Optional.of(
                                new MenuCommand("&Copy the picture", "ctrl shift C", () -> picture(PicturePane::copy))),
                        Optional.of(new MenuCommand(
                                "&Save the picture…", "ctrl shift S", () -> picture(PicturePane::save))),
                        Optional.of(new MenuCommand(
                                "&Print the picture…", "ctrl shift P", () -> picture(PicturePane::print)))));
        bar.add(
                "&Screen",
                List.of(
                        Optional.of(new MenuCommand("&Millimetres or inches", "ctrl M", this::switchUnits)),
                        Optional.of(new MenuCommand("&Dark or light", "ctrl D", this::switchColours)),
                        Optional.of(new MenuCommand("&Larger text", "ctrl PLUS", () -> text(2))),
                        Optional.of(new MenuCommand("&Smaller text", "ctrl MINUS", () -> text(-2)))));
        bar.add(
                "&Help",
                List.of(
                        Optional.of(new MenuCommand("&Keys and mouse", "F1", () -> HelpPage.keys(this))),
                        Optional.of(new MenuCommand("&About Evenblade", "", () -> HelpPage.about(this)))));
        return bar;
    }

    @Override
    public boolean mayLeave() {
        return !held();
    }

    /** A recording under way isn't left; says so. */
    private boolean held() {
        Optional<LivePane> recording = pane.flatMap(JobPane::recording);
        recording.ifPresent(LivePane::remind);
        return recording.isPresent();
    }

    /** Does something with the picture in sight; of several with the first. */
    private void picture(Consumer<PicturePane> then) {
        inSight(main).ifPresentOrElse(then, () -> say("There is no picture in sight."));
    }

    private static Optional<PicturePane> inSight(Container in) {
        for (Component each : in.getComponents()) {
            if (each instanceof PicturePane pane
                    && pane.isShowing()
                    && pane.view().picture().isPresent()) {
                return Optional.of(pane);
            }
            if (each instanceof Container inner) {
                Optional<PicturePane> found = inSight(inner);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private void startNewJob() {
        if (held()) {
            return;
        }
        fillAside(new InstallationForm(this, this::build).listening());
    }

    private void startPractice() {
        if (held()) {
            return;
        }
        fillAside(new PracticeForm(this, this::build));
    }

    private void fillAside(JComponent panel) {
        fill(panel);
        panel.requestFocusInWindow();
    }

    private void chooseJob() {
        if (held()) {
            return;
        }
        JFileChooser chooser = new JFileChooser(
                settings.recentJobs().stream().findFirst().map(Path::toFile).orElse(null));
        chooser.setFileSelectionMode(JFileChooser.DIRECTORIES_ONLY);
        chooser.setDialogTitle("Open a job's folder");
        if (chooser.showOpenDialog(this) == JFileChooser.APPROVE_OPTION) {
            openJob(chooser.getSelectedFile().toPath());
        }
    }

    private void chooseRecording() {
        if (!held()) {
            LookPane.chooseRecording(this, main);
        }
    }

    private void closeJob() {
        if (held()) {
            return;
        }
        job = Optional.empty();
        settings.closed();
        build();
    }

    private void switchColours() {
        if (held()) {
            return;
        }
        settings.dark(!settings.dark());
        Look.apply(settings);
        build();
    }

    private void switchUnits() {
        if (held()) {
            return;
        }
        settings.inches(!settings.inches());
        build();
        say("Short lengths now stand in " + (settings.inches() ? "inches" : "millimetres")
                + " first, and a bare number counts as such.");
    }

    private void text(int more) {
        if (held()) {
            return;
        }
        settings.textPx(settings.textPx() + more);
        Look.apply(settings);
        build();
    }

    private void end() {
        Optional<LivePane> recording = pane.flatMap(JobPane::recording);
        if (recording.isPresent()) {
            if (stopsFirst()) {
                recording.get().stopThen(this::end);
            } else {
                recording.get().remind();
            }
            return;
        }
        remember();
        dispose();
    }

    private boolean stopsFirst() {
        String[] answers = {"Go on recording", "Stop, keep the run and close"};
        return JOptionPane.showOptionDialog(
                        this,
                        "A recording is under way.",
                        "Evenblade",
                        JOptionPane.DEFAULT_OPTION,
                        JOptionPane.WARNING_MESSAGE,
                        null,
                        answers,
                        answers[0])
                == 1;
    }

    private void remember() {
        settings.window(getBounds());
        settings.write();
        drafts.write();
    }

    @Override
    public Settings settings() {
        return settings;
    }

    @Override
    public Drafts drafts() {
        return drafts;
    }

    @Override
    public Work work() {
        return work;
    }

    @Override
    public void openJob(Path folder) {
        if (held()) {
            return;
        }
        work.begin(
                "Opening " + folder.getFileName(),
                progress -> ShowJob.show(folder, Thoroughness.QUICK),
                view -> {
                    settings.opened(folder);
                    shown = Optional.empty();
                    job = Optional.of(new OpenJob(folder, view));
                    showJob();
                },
                this::say);
    }

    @Override
    public void show(JComponent panel) {
        if (held()) {
            return;
        }
        shown = Optional.empty();
        pane.ifPresent(p -> p.show(panel, Optional.empty()));
        SwingUtilities.invokeLater(() -> firstField(panel).ifPresent(Component::requestFocusInWindow));
    }

    /** Typing goes into the first field of what was just shown. */
    private static Optional<JTextComponent> firstField(Container shown) {
        for (Component each : shown.getComponents()) {
            if (each instanceof JTextComponent field && field.isEditable() && field.isShowing()) {
                return Optional.of(field);
            }
            if (each instanceof Container inner) {
                Optional<JTextComponent> found = firstField(inner);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    @Override
    public void showNewest() {
        job.ifPresent(open -> {
            Optional<Event> event = shown.or(() -> open.newestFirst().stream()
                    .filter(each -> each.kind() != Kind.STRUCK_OUT)
                    .findFirst());
            event.ifPresentOrElse(
                    this::showEntry, () -> pane.ifPresent(p -> p.show(new FirstPanel(), Optional.empty())));
        });
    }

    @Override
    public void showEntry(Event event) {
        showEntry(event, Optional.empty());
    }

    @Override
    public void showEntry(Event event, Optional<SeeEvidence.Sight> sight) {
        if (held()) {
            return;
        }
        shown = Optional.of(event);
        job.ifPresent(open -> pane.ifPresent(p -> p.show(view(open, p, event, sight), Optional.of(event))));
    }

    private JComponent view(OpenJob open, JobPane shownIn, Event event, Optional<SeeEvidence.Sight> sight) {
        return switch (event.kind()) {
            case RUN -> new RunView(this, open, open.record().asItReads(event), sight);
            case TRACKING, PITCH, RUN_OUT -> new StaticView(this, open, event, shownIn.commands().track);
            case CORRECTION, BALANCE, AMENDMENT, INSTALLATION, NOTE, ATTACHMENT, STRUCK_OUT ->
                new EntryView(this, open, event);
        };
    }

    @Override
    public void entered(List<Event> events) {
        job.ifPresent(open -> work.begin(
                "Reading the job",
                progress -> ShowJob.show(open.folder(), Thoroughness.QUICK),
                view -> {
                    open.changed(view);
                    pane.ifPresent(JobPane::refresh);
                    events.stream().findFirst().ifPresent(this::showEntry);
                },
                this::say));
    }

    @Override
    public void say(String text) {
        strip.say(text);
    }

    @Override
    public void passing(String text) {
        strip.passing(text);
    }

    @Override
    public Optional<OpenJob> job() {
        return job;
    }
}
