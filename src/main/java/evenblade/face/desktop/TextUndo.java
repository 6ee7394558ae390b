package evenblade.face.desktop;

import java.awt.event.ActionEvent;
import javax.swing.AbstractAction;
import javax.swing.KeyStroke;
import javax.swing.text.JTextComponent;
import javax.swing.undo.UndoManager;

/**
 * Ctrl+Z and Ctrl+Y inside a text. While a text is typed, Ctrl+Z belongs to it even where nothing is left to take back:
 * a slip of the hand must never reach an entry of the job.
 */
final class TextUndo {
    private static final String UNDO = "take back typing";
    private static final String REDO = "type again";

    private TextUndo() {}

    /** Gives a text its own undo; once, however often it is called. */
    static void on(JTextComponent text) {
        if (!text.isEditable() || text.getActionMap().get(UNDO) != null) {
            return;
        }
        UndoManager typed = new UndoManager();
        text.getDocument().addUndoableEditListener(typed);
        bind(text, UNDO, "ctrl Z", () -> {
            if (typed.canUndo()) {
                typed.undo();
            }
        });
        bind(text, REDO, "ctrl Y", () -> {
            if (typed.canRedo()) {
                typed.redo();
            }
        });
    }

    private static void bind(JTextComponent text, String name, String keys, Runnable then) {
        text.getInputMap().put(KeyStroke.getKeyStroke(keys), name);
        text.getActionMap().put(name, new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent e) {
                then.run();
            }
        });
    }
}
