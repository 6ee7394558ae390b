package evenblade.face.desktop;

import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.function.Consumer;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.KeyStroke;

/** One thing that can be asked for by menu, button or key. */
final class MenuCommand extends AbstractAction {
    private final transient Consumer<Action> then;

    /**
     * A command.
     *
     * @param words with the letter to press beside Alt behind an {@code &}
     * @param keys as {@link KeyStroke#getKeyStroke(String)} reads them; empty for none
     */
    MenuCommand(String words, String keys, Runnable then) {
        this(words, keys, itself -> then.run());
    }

    /** A command for what has to know by which command it was asked for. */
    MenuCommand(String words, String keys, Consumer<Action> then) {
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
        then.accept(this);
    }

    /** The keys of a command as people read them: {@code Ctrl+1}; empty where it has none. */
    static String keys(Action action) {
        return action.getValue(ACCELERATOR_KEY) instanceof KeyStroke stroke
                ? InputEvent.getModifiersExText(stroke.getModifiers()) + "+" + KeyEvent.getKeyText(stroke.getKeyCode())
                : "";
    }
}
