package evenblade.face.desktop;

import evenblade.tell.chart.Picture;
import java.awt.Image;
import java.awt.Insets;
import java.awt.Toolkit;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.Transferable;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JFileChooser;
import javax.swing.JOptionPane;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;

/** A picture with what can be done to it: copy it, save it. */
final class PicturePane extends JPanel {
    /** Size of a saved or copied bitmap in pixels. */
    private static final int WIDTH_PX = 1600;

    private static final int HEIGHT_PX = 933; // 12 to 7, as on the screen

    private final transient Navigator bench;
    private final PictureView view;
    private final JButton copy = new JButton("Copy picture");
    private final JButton save = new JButton("Save picture…");

    PicturePane(Navigator bench) {
        super(new MigLayout("insets 0, gap 0", "[grow,fill]", "[grow,fill][]"));
        this.bench = bench;
        this.view = new PictureView(bench.work());
        add(view, "wrap");
        JPanel bar = new JPanel(new MigLayout("insets 2 0 0 0", "push[][]"));
        bar.add(copy);
        bar.add(save);
        add(bar);
        copy.setMargin(new Insets(2, 12, 2, 12));
        save.setMargin(copy.getMargin());
        copy.setName("copy picture");
        save.setName("save picture");
        copy.addActionListener(e -> copy());
        save.addActionListener(e -> save());
        view.registerKeyboardAction(
                e -> copy(), KeyStroke.getKeyStroke(KeyEvent.VK_C, InputEvent.CTRL_DOWN_MASK), WHEN_FOCUSED);
        view.registerKeyboardAction(
                e -> save(), KeyStroke.getKeyStroke(KeyEvent.VK_S, InputEvent.CTRL_DOWN_MASK), WHEN_FOCUSED);
        view.addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                view.repaint();
            }

            @Override
            public void focusLost(FocusEvent e) {
                view.repaint();
            }
        });
        able(false);
    }

    PictureView view() {
        return view;
    }

    void show(Optional<Picture> picture, String otherwise) {
        picture.ifPresentOrElse(view::show, () -> view.showInstead(otherwise));
        able(picture.isPresent());
    }

    private void able(boolean able) {
        copy.setEnabled(able);
        save.setEnabled(able);
    }

    /** Puts the picture on the clipboard. */
    void copy() {
        view.picture().ifPresent(picture -> bench.work()
                .begin(
                        "Copying the picture",
                        progress -> picture.image(WIDTH_PX, HEIGHT_PX),
                        image -> {
                            Toolkit.getDefaultToolkit().getSystemClipboard().setContents(new Copied(image), null);
                            bench.say("The picture is on the clipboard.");
                        },
                        bench::say));
    }

    /** Asks where to, and saves. */
    void save() {
        if (view.picture().isEmpty()) {
            return;
        }
        Optional<OpenJob> job = bench.job();
        Path folder = job.map(OpenJob::folder).orElseGet(() -> Path.of(System.getProperty("user.home")));
        PictureFile name = PictureFile.of(
                job.map(each -> each.record().name()), view.picture().get());
        JFileChooser chooser = new JFileChooser(folder.toFile());
        chooser.setDialogTitle("Save picture as PNG or SVG");
        chooser.setSelectedFile(name.freeIn(folder).toFile());
        while (chooser.showSaveDialog(this) == JFileChooser.APPROVE_OPTION) {
            Path file = PictureFile.withEnding(chooser.getSelectedFile().toPath());
            if (!Files.exists(file) || writesOver(file)) {
                save(file);
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
    private void save(Path file) {
        view.picture().ifPresent(picture -> bench.work()
                .begin(
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
                        bench::say));
    }

    /** A bitmap on the clipboard. */
    private record Copied(Image image) implements Transferable {
        @Override
        public DataFlavor[] getTransferDataFlavors() {
            return new DataFlavor[] {DataFlavor.imageFlavor};
        }

        @Override
        public boolean isDataFlavorSupported(DataFlavor flavor) {
            return flavor.equals(DataFlavor.imageFlavor);
        }

        @Override
        public Object getTransferData(DataFlavor flavor) throws UnsupportedFlavorException, IOException {
            if (!isDataFlavorSupported(flavor)) {
                throw new UnsupportedFlavorException(flavor);
            }
            return image;
        }
    }
}
