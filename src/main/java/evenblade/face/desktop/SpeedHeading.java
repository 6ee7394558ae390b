package evenblade.face.desktop;

import evenblade.tell.document.Block;
import evenblade.tell.document.Document;
import java.util.stream.Collectors;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** The speed of a run: the answer in large letters with what can be chosen beside it, and what it rests on. */
final class SpeedHeading extends JPanel {
    private final JLabel answer = Look.heading(" ");
    private final RowsPanel first = new RowsPanel(0, 0, 0, 0);
    private final WrappedLabel known = new WrappedLabel(" ");

    SpeedHeading() {
        super(new MigLayout("insets 0, wrap 1, gapy 2", "[grow,fill]"));
        answer.setName("speed");
        known.setName("speed known");
        first.add(answer);
        add(first, "wmin 50");
        add(known, "wmin 50");
    }

    /** Puts a choice beside the answer. */
    void choice(String words, JComponent choice) {
        JPanel both = new JPanel(new MigLayout("insets 0"));
        both.add(Look.label(words, choice));
        both.add(choice, "wmin 50");
        first.add(both);
    }

    void show(Document speed) {
        speed.blocks().stream()
                .filter(Block.Paragraph.class::isInstance)
                .findFirst()
                .ifPresent(block ->
                        answer.setText(((Block.Paragraph) block).sentence().text()));
        answer.setToolTipText(answer.getText());
        known.setText(speed.blocks().stream()
                .filter(Block.Known.class::isInstance)
                .map(Block.Known.class::cast)
                .map(each -> each.name() + " " + each.sentence().text())
                .collect(Collectors.joining("  ·  ")));
    }
}
