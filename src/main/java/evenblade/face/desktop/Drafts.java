package evenblade.face.desktop;

import javax.swing.JComboBox;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import javax.swing.text.JTextComponent;

/** Keeps what was typed until it is entered, so that a crash loses nothing. */
final class Drafts {
    private final TextFile file;

    Drafts(TextFile file) {
        this.file = file;
    }

    /** Fills the field with what was typed before, and keeps what is typed from now on. */
    void keep(String form, JTextComponent field) {
        String key = form + "|" + field.getName();
        String typed = file.get(key, "");
        if (!typed.isEmpty()) {
            field.setText(typed);
        }
        field.getDocument().addDocumentListener(new Typed(() -> file.put(key, field.getText())));
    }

    /** Keeps a choice, by the words shown. */
    void keep(String form, JComboBox<String> choice) {
        String key = form + "|" + choice.getName();
        String chosen = file.get(key, "");
        for (int i = 0; i < choice.getItemCount(); i++) {
            if (choice.getItemAt(i).equals(chosen)) {
                choice.setSelectedIndex(i);
            }
        }
        choice.addActionListener(e -> file.put(key, String.valueOf(choice.getSelectedItem())));
    }

    /** Keeps what is said, by its words; nothing where it is left as found. */
    void keep(String form, Choice<?> choice) {
        String key = form + "|" + choice.getName();
        choice.say(file.get(key, ""));
        choice.addActionListener(e -> file.put(key, choice.saidWords()));
    }

    /** Entered or given up: forgets what was typed in a form. */
    void forget(String form) {
        file.removeAll(form + "|");
    }

    /** Brings everything to the disk. */
    void write() {
        file.write();
    }

    /** Runs something whenever a text changes. */
    record Typed(Runnable then) implements DocumentListener {
        @Override
        public void insertUpdate(DocumentEvent e) {
            then.run();
        }

        @Override
        public void removeUpdate(DocumentEvent e) {
            then.run();
        }

        @Override
        public void changedUpdate(DocumentEvent e) {
            then.run();
        }
    }
}
