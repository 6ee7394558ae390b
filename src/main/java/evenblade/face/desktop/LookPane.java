package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.face.app.DrawSpectrum;
import evenblade.face.app.LookAtRecording;
import evenblade.face.app.LookAtRecording.LookedAt;
import evenblade.face.app.LookCloser;
import evenblade.face.app.SpectrumRequest;
import evenblade.input.recording.TableReading;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import evenblade.measure.lines.SteadyLine;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.Zoom;
import evenblade.tell.document.SpectrumDocument;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/** Any recording, looked at without a job: its spectrum, its waterfall, its steady lines; with an installation, the orders that they may be. */
final class LookPane extends JPanel {
    /** The strongest lines are in sight at first, with a little room. */
    private static final int LINES_IN_SIGHT = 10;

    /** The last line stands clear of the edge. */
    private static final double SPARE = 1.15;
    /** Where the lines fill more than this of the band, all of it is shown. */
    private static final double WORTH = 0.7;

    private static final String NONE = "no installation";
    private static final String OF_JOB = "the job's installation";
    private static final String FROM_FILE = "from a file…";

    private final transient Navigator bench;
    private final transient Path file;
    private final JComboBox<String> channel = new JComboBox<>();
    private final JTextField fullScale = new JTextField(8);
    private final JComboBox<String> installation = new JComboBox<>();
    private final PicturePane spectrum;
    private final transient SpectrumOverlays overlays;
    private final ListenButton listen;
    private final WaterfallPane waterfall;
    private final Page lines = new Page("steady lines");
    private final Complaint complaint = new Complaint();
    private transient Optional<Path> installationFile = Optional.empty();
    private transient Optional<Work.Task> task = Optional.empty();
    private boolean filling = true;

    /**
     * A look at a recording.
     *
     * @param back leads to where one came from; none where the timeline stands beside
     */
    LookPane(Navigator bench, Path file, Optional<Runnable> back) {
        super(new MigLayout("insets 6 14 8 14, gapy 3, wrap 1, hidemode 3", "[grow,fill]", ""));
        this.bench = bench;
        this.file = file;
        setName("look");
        spectrum = new PicturePane(bench);
        spectrum.setName("look spectrum");
        overlays = new SpectrumOverlays(bench, spectrum);
        listen = new ListenButton(bench, spectrum, false);
        waterfall = new WaterfallPane(bench);
        add(choices(back), "wmin 50");
        add(complaint);
        JTabbedPane tabs = new JTabbedPane();
        tabs.setName("look tabs");
        tabs.addTab("Spectrum", spectrum);
        tabs.addTab("Waterfall", waterfall);
        tabs.addTab("Steady lines", lines);
        add(tabs, "pushy, grow, wmin 100, hmin 100");
        setTransferHandler(FilesField.dropping(paths -> paths.stream().limit(1).forEach(bench::look)));
        filling = false;
        work();
    }

    private JPanel choices(Optional<Runnable> back) {
        RowsPanel row = new RowsPanel(0, 0, 0, 0);
        JLabel name = Look.heading(String.valueOf(file.getFileName()));
        name.setToolTipText(name.getText());
        row.add(name);
        channel.setName("look channel");
        channel.addActionListener(e -> again());
        labelled(row, "Channel", channel);
        installation.setName("look installation");
        installation.addItem(NONE);
        if (bench.job().isPresent()) {
            installation.addItem(OF_JOB);
            installation.setSelectedItem(OF_JOB);
        }
        installation.addItem(FROM_FILE);
        installation.addActionListener(e -> chooseInstallation());
        labelled(row, "Orders of", installation);
        fullScale.setName("look full scale");
        fullScale.putClientProperty("JTextField.placeholderText", "like 50 m/s2");
        fullScale.setToolTipText("What the largest sample of sound stands for; then press Enter");
        fullScale.addActionListener(e -> again());
        labelled(row, "Full scale", fullScale);
        row.add(button("look another", "Another recording…", () -> chooseRecording(bench, this)));
        bench.job()
                .ifPresent(job -> row.add(button("take in", "Take it into the job…", () -> {
                    ImportForm form = new ImportForm(bench, job);
                    form.put(List.of(file));
                    bench.show(form);
                })));
        back.ifPresent(leave -> row.add(button("back", "Back", leave)));
        return row;
    }

    private static void labelled(JPanel row, String words, JComponent field) {
        row.add(Look.label(words, field));
        row.add(field);
    }

    private static JButton button(String name, String words, Runnable then) {
        JButton button = new JButton(words);
        button.setName(name);
        button.setMargin(new java.awt.Insets(2, 10, 2, 10));
        button.addActionListener(e -> then.run());
        return button;
    }

    /** Asks for a recording and looks at it. */
    static void chooseRecording(Navigator bench, JComponent over) {
        JFileChooser chooser = new JFileChooser();
        chooser.setDialogTitle("Look at a recording");
        if (chooser.showOpenDialog(over) == JFileChooser.APPROVE_OPTION) {
            bench.look(chooser.getSelectedFile().toPath());
        }
    }

    private void chooseInstallation() {
        if (filling) {
            return;
        }
        if (FROM_FILE.equals(installation.getSelectedItem())) {
            JFileChooser chooser = new JFileChooser();
            chooser.setDialogTitle("An installation file (JSON)");
            if (chooser.showOpenDialog(this) == JFileChooser.APPROVE_OPTION) {
                name(chooser.getSelectedFile().toPath());
            } else {
                installation.setSelectedIndex(0);
                return;
            }
        }
        again();
    }

    /** Takes the orders of an installation file. */
    void name(Path chosen) {
        installationFile = Optional.of(chosen);
        filling = true;
        String name = String.valueOf(chosen.getFileName());
        installation.insertItemAt(name, installation.getItemCount() - 1);
        installation.setSelectedItem(name);
        filling = false;
    }

    void again() {
        if (!filling) {
            work();
        }
    }

    private Optional<Installation> installation() {
        Object chosen = installation.getSelectedItem();
        if (OF_JOB.equals(chosen)) {
            return bench.job().map(job -> job.record().installation());
        }
        return NONE.equals(chosen) ? Optional.empty() : installationFile.map(InstallationFile::read);
    }

    private void work() {
        complaint.clear();
        task.ifPresent(Work.Task::giveUp);
        try {
            SpectrumRequest request = new SpectrumRequest(
                    file,
                    installation(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Optional.ofNullable((String) channel.getSelectedItem()),
                    EntryForm.typed(fullScale).map(text -> FullScale.parse(text, BadInput.in("full scale"))),
                    TableReading.UNSAID);
            spectrum.show(Optional.empty(), "working…");
            task = Optional.of(bench.begin(
                    "Looking at " + file.getFileName(),
                    progress -> {
                        LookedAt looked = LookAtRecording.look(request, progress);
                        return new Answer(looked, DrawSpectrum.draw(looked), LookCloser.at(looked));
                    },
                    this::show,
                    wrong -> {
                        complaint.show(wrong);
                        spectrum.show(Optional.empty(), "");
                    }));
        } catch (BadInput e) {
            complaint.show(e.getMessage());
        }
    }

    private record Answer(LookedAt looked, Map<String, Picture> pictures, LookCloser closer) {}

    private void show(Answer answer) {
        LookedAt looked = answer.looked();
        if (channel.getItemCount() == 0) {
            filling = true;
            looked.spectrum().source().channels().forEach(channel::addItem);
            channel.setSelectedItem(looked.spectrum().channel());
            filling = false;
        }
        Map<String, Work.Labour<Optional<evenblade.tell.chart.SpectrumCurve>>> offers = new LinkedHashMap<>();
        offers.put(
                "the loudest it ever was",
                progress -> Optional.of(answer.closer().loudest()));
        overlays.show(Optional.of(answer.pictures().get("spectrum")), "", offers);
        waterfall.show(Optional.of(answer.pictures().get("waterfall")), "", Optional.of(answer.closer()));
        listen.of(Optional.of(answer.closer()));
        nearer(looked);
        lines.show(SpectrumDocument.of(looked.spectrum(), looked.run(), looked.dwell(), Words.PHRASES));
    }

    /** Shows the part where the lines lie first, where that is little of the whole band. */
    private void nearer(LookedAt looked) {
        double wholeHz = looked.spectrum().measured().upToHz();
        double partHz = SPARE
                * looked.spectrum().measured().lines().stream()
                        .limit(LINES_IN_SIGHT)
                        .mapToDouble(SteadyLine::frequencyHz)
                        .max()
                        .orElse(wholeHz);
        if (partHz < WORTH * wholeHz) {
            spectrum.view().zoom(Zoom.across(0, partHz), true);
            PictureView fall = waterfall.fall().view();
            fall.whole()
                    .ifPresent(
                            whole -> fall.zoom(new Zoom(whole.across(), Optional.of(new Zoom.Range(0, partHz))), true));
        }
    }

    @Override
    public void removeNotify() {
        task.ifPresent(Work.Task::giveUp);
        super.removeNotify();
    }
}
