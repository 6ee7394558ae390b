package evenblade.face.desktop;

import java.awt.event.ActionEvent;
import javax.swing.AbstractAction;
import javax.swing.KeyStroke;

/** One thing that can be asked for by menu, button or key. */
final class MenuCommand extends AbstractAction {
    private final transient Runnable then;

    /**
     * A command.
     *
     * @param words with the letter to press beside Alt behind an {@code &}
     * @param keys as {@link KeyStroke#getKeyStroke(String)} reads them; empty for none
     */
    MenuCommand(String words, String keys, Runnable then) {
        super(words.replace("&", ""));
        this.then = then;
        int mark = words.indexOf('&');
        if (mark >= 0) {
            putValue(MNEMONIC_KEY, (int) Character.toUpperCase(words.charAt(mark + 1)));
        }
        if (!keys.isEmpty()) {
            putValue(ACCELERATOR_KEY, KeyStroke.getKeyStroke(keys));
        }
    }

    @Override
    public void actionPerformed(ActionEvent e) {
        then.run();
    }
}
