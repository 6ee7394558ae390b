package evenblade.face.desktop;

import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Event;
import evenblade.tell.chart.LaidOut;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.ShownUnit;
import evenblade.tell.chart.Spot;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Insets;
import java.awt.Toolkit;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.DefaultComboBoxModel;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JFileChooser;
import javax.swing.JOptionPane;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JToggleButton;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;

/** A picture to work in: what the cursor reads, its peaks, its unit, and what can be done with exactly what is seen. */
final class PicturePane extends JPanel {
    /** Size of a saved or copied bitmap in pixels. */
    private static final int WIDTH_PX = 1600;

    private static final int HEIGHT_PX = 933; // 12 to 7, as on the screen
    private static final String HINT = "Point to read; click to hold the cursor, then point or click to measure from "
            + "there. Wheel or a drawn box: nearer. Esc: let go.";
    private static final String UNIT = "picture.unit";
    private static final String PEAKS = "picture.peaks";

    private final transient Navigator bench;
    private final PictureView view;
    private final WrappedLabel words = new WrappedLabel("");
    private final RowsPanel bar = new RowsPanel(2, 0, 0, 0);
    private final JButton back = button("back one step", "Back", "One step back to the whole (Backspace)");
    private final JButton whole = button("whole picture", "Whole", "All of it (Home)");
    private final JComboBox<String> unit = new JComboBox<>();
    private final JToggleButton peaks = new JToggleButton("Peaks");
    private final PeakTable table;
    private final JScrollPane beside;
    private final List<JComponent> able = new ArrayList<>();
    private transient Optional<Picture> made = Optional.empty();
    private transient List<ShownUnit> units = List.of();
    private boolean filling;

    PicturePane(Navigator bench) {
        super(new BorderLayout(0, 2));
        this.bench = bench;
        this.view = new PictureView(bench.work());
        this.table = new PeakTable(spot -> view.point(Optional.of(spot)));
        JScrollPane scroll = new JScrollPane(view);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        scroll.setMinimumSize(new Dimension(view.getMinimumSize().width, view.getMinimumSize().height));
        beside = new JScrollPane(table);
        beside.setVisible(false);
        JPanel foot = new JPanel(new MigLayout("insets 0, gap 0, wrap 1, hidemode 3", "[grow,fill]"));
        words.setName("cursor words");
        // Two lines always: a picture that changes its height under the pointer can't be pointed at.
        foot.add(words, "wmin 0, h " + 3 * Look.em() + "!");
        foot.add(bar);
        add(scroll, BorderLayout.CENTER);
        add(beside, BorderLayout.EAST);
        add(foot, BorderLayout.SOUTH);
        fillBar();
        view.watchedBy(this::read);
        view.registerKeyboardAction(
                e -> copy(), KeyStroke.getKeyStroke(KeyEvent.VK_C, InputEvent.CTRL_DOWN_MASK), WHEN_FOCUSED);
        view.registerKeyboardAction(
                e -> save(), KeyStroke.getKeyStroke(KeyEvent.VK_S, InputEvent.CTRL_DOWN_MASK), WHEN_FOCUSED);
        read();
    }

    private static JButton button(String name, String text, String tip) {
        JButton button = new JButton(text);
        button.setName(name);
        button.setToolTipText(tip);
        button.setMargin(new Insets(2, 10, 2, 10));
        return button;
    }

    private void fillBar() {
        back.addActionListener(e -> view.back());
        whole.addActionListener(e -> view.showWhole());
        unit.setName("unit");
        unit.setToolTipText("The unit of the amplitudes");
        unit.addActionListener(e -> {
            if (!filling && unit.getSelectedIndex() >= 0) {
                bench.settings().keep(UNIT, unit.getSelectedIndex());
                draw();
            }
        });
        peaks.setName("peak table");
        peaks.setToolTipText("The ten highest peaks of what is seen");
        peaks.setMargin(back.getMargin());
        peaks.setSelected(bench.settings().number(PEAKS, 0) == 1);
        peaks.addActionListener(e -> {
            bench.settings().keep(PEAKS, peaks.isSelected() ? 1 : 0);
            read();
        });
        bar.add(back);
        bar.add(whole);
        bar.add(peaks);
        bar.add(unit);
        act("copy picture", "Copy", "To the clipboard, as it is seen (Ctrl+C on the picture)", this::copy);
        act("save picture", "Save…", "To a file, as it is seen (Ctrl+S on the picture)", this::save);
        act("print picture", "Print…", "As it is seen, across a page", this::print);
        act("keep picture", "Add to the job", "As it is seen, among the photos and papers of the job", this::keep);
    }

    private void act(String name, String text, String tip, Runnable then) {
        JButton button = button(name, text, tip);
        button.addActionListener(e -> then.run());
        bar.add(button);
        able.add(button);
    }

    /** Adds something that a page offers for its picture. */
    void offer(JComponent tool) {
        bar.add(tool, bar.getComponentCount() - able.size());
    }

    PictureView view() {
        return view;
    }

    void show(Optional<Picture> picture, String otherwise) {
        made = picture;
        List<ShownUnit> choice = picture.map(Picture::units).orElse(List.of());
        if (!choice.equals(units)) {
            units = choice;
            filling = true;
            unit.setModel(new DefaultComboBoxModel<>(
                    choice.stream().map(ShownUnit::display).toArray(String[]::new)));
            unit.setSelectedIndex(Math.min(choice.size() - 1, bench.settings().number(UNIT, 0)));
            filling = false;
        }
        picture.ifPresentOrElse(shown -> draw(), () -> view.showInstead(otherwise));
        read();
    }

    private void draw() {
        if (!filling) {
            made.ifPresent(picture ->
                    view.show(unit.getSelectedIndex() < 0 ? picture : picture.in(units.get(unit.getSelectedIndex()))));
        }
    }

    /** Says what the cursors read. */
    private void read() {
        List<Spot> spots = view.cursors();
        List<String> lines = LaidOut.words(spots);
        boolean readable = view.layoutDrawn().flatMap(LaidOut::plot).isPresent();
        words.setText(
                switch (spots.size()) {
                    case 0 -> readable ? HINT : "";
                    case 1 -> lines.get(0);
                    default -> lines.get(1) + "\n" + lines.get(2);
                });
        words.setForeground(
                Look.ink(spots.isEmpty() ? evenblade.tell.chart.Ink.QUIET_TEXT : evenblade.tell.chart.Ink.TEXT));
        boolean zooms = view.picture().flatMap(Picture::zoom).isPresent();
        back.setVisible(zooms);
        whole.setVisible(zooms);
        back.setEnabled(view.zoomed());
        whole.setEnabled(view.zoomed());
        unit.setVisible(units.size() > 1);
        able.forEach(each -> each.setEnabled(view.picture().isPresent()));
        able.get(able.size() - 1).setVisible(bench.job().isPresent());
        List<Spot> highest = view.picture().map(Picture::peaks).orElse(List.of());
        peaks.setVisible(!highest.isEmpty());
        boolean listed = peaks.isSelected() && !highest.isEmpty();
        if (listed) {
            table.show(highest);
        }
        if (beside.isVisible() != listed) {
            beside.setVisible(listed);
            revalidate();
        }
    }

    /** Puts what is seen on the clipboard. */
    void copy() {
        view.seen()
                .ifPresent(picture -> bench.begin(
                        "Copying the picture",
                        progress -> picture.image(WIDTH_PX, HEIGHT_PX),
                        image -> {
                            Toolkit.getDefaultToolkit()
                                    .getSystemClipboard()
                                    .setContents(new CopiedPicture(image), null);
                            bench.say("The picture is on the clipboard.");
                        },
                        bench::say));
    }

    void print() {
        view.seen().ifPresent(picture -> PrintOut.of(picture, bench.work(), bench::say));
    }

    private PictureFile fileOf(Picture picture) {
        return PictureFile.of(bench.job().map(each -> each.record().name()), picture);
    }

    /** Puts what is seen among the papers of the job. */
    private void keep() {
        view.seen().ifPresent(picture -> bench.job()
                .ifPresent(job -> bench.begin(
                        "Adding the picture to the job",
                        progress -> {
                            Path folder = Files.createTempDirectory("evenblade");
                            Path file = fileOf(picture).freeIn(folder);
                            picture.toPng(file, WIDTH_PX, HEIGHT_PX);
                            String text = picture.title() + ". "
                                    + String.join(", ", picture.caption().parts());
                            List<Event> added = WriteEntry.attach(job.folder(), List.of(file), text, Optional.empty());
                            Files.delete(file);
                            Files.delete(folder);
                            return added;
                        },
                        added -> {
                            bench.entered(List.of());
                            bench.say("The picture is in the job: " + Words.name(added.get(0)));
                        },
                        bench::say)));
    }

    /** Asks where to, and saves. */
    void save() {
        Optional<Picture> seen = view.seen();
        if (seen.isEmpty()) {
            return;
        }
        Path folder = bench.job().map(OpenJob::folder).orElseGet(() -> Path.of(System.getProperty("user.home")));
        JFileChooser chooser = new JFileChooser(folder.toFile());
        chooser.setDialogTitle("Save picture as PNG or SVG");
        chooser.setSelectedFile(fileOf(seen.get()).freeIn(folder).toFile());
        while (chooser.showSaveDialog(this) == JFileChooser.APPROVE_OPTION) {
            Path file = PictureFile.withEnding(chooser.getSelectedFile().toPath());
            if (!Files.exists(file) || writesOver(file)) {
                save(seen.get(), file);
                return;
            }
        }
    }

    private boolean writesOver(Path file) {
        Object[] answers = {"Choose another name", "Write over it"};
        return JOptionPane.showOptionDialog(
                        this,
                        file.getFileName() + " is there already.",
                        "Save picture",
                        JOptionPane.DEFAULT_OPTION,
                        JOptionPane.WARNING_MESSAGE,
                        null,
                        answers,
                        answers[0])
                == 1;
    }

    /** Saves in the kind that the name ends with. */
    private void save(Picture picture, Path file) {
        bench.begin(
                "Saving the picture",
                progress -> {
                    if (PictureFile.isSvg(file)) {
                        picture.toSvg(file);
                    } else {
                        picture.toPng(file, WIDTH_PX, HEIGHT_PX);
                    }
                    return file;
                },
                saved -> bench.say("Saved " + saved),
                bench::say);
    }
}
