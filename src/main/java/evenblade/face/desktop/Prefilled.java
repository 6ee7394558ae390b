package evenblade.face.desktop;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import javax.swing.JTextField;

/** Fields filled in with what the run before noted: what a person typed stays, what only stood there may change. */
final class Prefilled {
    private final Map<JTextField, String> filled = new HashMap<>();

    /** Fills one in, or empties it again where there is nothing to fill in any more. */
    void fill(JTextField field, Optional<String> value) {
        String shown = field.getText();
        boolean typed = !shown.isBlank() && !shown.equals(filled.get(field));
        if (typed) {
            return;
        }
        String words = value.orElse("");
        filled.put(field, words);
        if (!words.equals(shown)) {
            field.setText(words);
        }
    }
}
