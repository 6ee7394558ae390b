package evenblade.face.desktop;

import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.io.File;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JFileChooser;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.TransferHandler;
import net.miginfocom.swing.MigLayout;

/** Paths typed, chosen or dropped; several are parted by semicolons. */
final class FilesField extends JPanel {
    private final JTextField text = new JTextField(24);
    private final int mode;
    private final boolean several;

    /**
     * A field for paths.
     *
     * @param name of the text field
     * @param mode of a {@link JFileChooser}
     * @param several whether more than one may be given
     */
    FilesField(String name, int mode, boolean several) {
        super(new MigLayout("insets 0", "[grow,fill][]"));
        this.mode = mode;
        this.several = several;
        text.setName(name);
        JButton choose = Look.button("Choose…", "choose " + name, this::choose);
        add(text);
        add(choose);
    }

    JTextField text() {
        return text;
    }

    /** The paths in the field; none where it can't be read as paths. */
    List<Path> paths() {
        try {
            return java.util.Arrays.stream(text.getText().split(";"))
                    .map(String::strip)
                    .filter(part -> !part.isEmpty())
                    .map(Path::of)
                    .toList();
        } catch (InvalidPathException e) {
            return List.of();
        }
    }

    void put(List<Path> paths) {
        text.setText(paths.stream().map(Path::toString).collect(Collectors.joining("; ")));
    }

    private void choose() {
        JFileChooser chooser =
                new JFileChooser(paths().isEmpty() ? null : paths().get(0).toFile());
        chooser.setFileSelectionMode(mode);
        chooser.setMultiSelectionEnabled(several);
        if (chooser.showOpenDialog(this) == JFileChooser.APPROVE_OPTION) {
            List<File> files = several ? List.of(chooser.getSelectedFiles()) : List.of(chooser.getSelectedFile());
            put(files.stream().map(File::toPath).toList());
        }
    }

    /** Takes files that are dropped on a component. */
    static TransferHandler dropping(Consumer<List<Path>> taker) {
        return new TransferHandler() {
            @Override
            public boolean canImport(TransferSupport support) {
                return support.isDataFlavorSupported(DataFlavor.javaFileListFlavor);
            }

            @Override
            public boolean importData(TransferSupport support) {
                if (!canImport(support)) {
                    return false;
                }
                try {
                    List<?> files = (List<?>) support.getTransferable().getTransferData(DataFlavor.javaFileListFlavor);
                    taker.accept(files.stream().map(f -> ((File) f).toPath()).toList());
                    return true;
                } catch (UnsupportedFlavorException | IOException e) {
                    return false; // what was dropped is gone
                }
            }
        };
    }
}
