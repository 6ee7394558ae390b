package evenblade.face.desktop;

import evenblade.judge.findings.EvidenceRef;
import evenblade.tell.document.Block;
import evenblade.tell.document.Document;
import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;

/** Sentences below each other, scrolled where there is no room. */
final class Lines extends JScrollPane {
    /** So many pieces of evidence say most of what there is to say. Our own choice. */
    private static final int SHOWN = 3;

    private final JPanel panel = new WidePanel(new MigLayout("insets 8, wrap 1, gapy 5, hidemode 3", "[grow,fill]"));

    Lines() {
        setViewportView(panel);
        setBorder(BorderFactory.createEmptyBorder());
        setHorizontalScrollBarPolicy(HORIZONTAL_SCROLLBAR_NEVER);
        getVerticalScrollBar().setUnitIncrement(Look.em());
    }

    void clear() {
        panel.removeAll();
    }

    /**
     * Shows an answer; of what rests on something to be looked at, the first few under each name, the rest on a click.
     *
     * @param see a button that leads there
     */
    void show(Document document, Function<EvidenceRef, JButton> see) {
        int subjects = 0;
        List<Block.Known> group = new ArrayList<>();
        for (Block block : document.blocks()) {
            boolean goesOn = block instanceof Block.Known known && known.name().isEmpty();
            if (!group.isEmpty() && !goesOn) {
                group(group, "see " + subjects, see);
                group.clear();
            }
            if (block instanceof Block.Known known) {
                group.add(known);
            } else if (block instanceof Block.Heading heading) {
                subjects++;
                strong(heading.text()).setName("finding " + subjects);
            } else if (block instanceof Block.Paragraph paragraph) {
                boolean caution = paragraph.tone() == Block.Tone.CAUTION;
                say((caution ? "!  " : "") + paragraph.sentence().text());
            } else if (block instanceof Block.Table) {
                put(Page.of(new Document(List.of(block))));
            }
        }
    }

    /** What is known under one name. */
    private void group(List<Block.Known> group, String name, Function<EvidenceRef, JButton> see) {
        String word = FigureFormat.capital(group.get(0).name());
        List<JComponent> rest = new ArrayList<>();
        for (int i = 0; i < group.size(); i++) {
            Block.Known known = group.get(i);
            String text = (i == 0 ? word + ": " : "") + known.sentence().text();
            if (known.seen().isEmpty()) {
                say(text);
                continue;
            }
            JButton button = see.apply(known.seen().get());
            button.setName(name + " " + group.get(0).name() + " " + (i + 1));
            button.getAccessibleContext()
                    .setAccessibleDescription(known.sentence().text());
            JComponent row = say(text, button);
            if (i >= SHOWN) {
                row.setVisible(false);
                rest.add(row);
            }
        }
        if (!rest.isEmpty()) {
            JButton more = new JButton(word + ": " + rest.size() + " more");
            more.setName(name + " " + group.get(0).name() + " more");
            more.addActionListener(e -> {
                rest.forEach(row -> row.setVisible(true));
                more.setVisible(false);
            });
            put(more);
        }
    }

    WrappedLabel say(String text) {
        WrappedLabel paragraph = new WrappedLabel(text);
        panel.add(paragraph, "wmin 50");
        return paragraph;
    }

    /** A sentence with something to press behind it. */
    private JComponent say(String text, JComponent behind) {
        JPanel row = new JPanel(new MigLayout("insets 0, gap 8", "[grow,fill][]", "[top]"));
        WrappedLabel paragraph = new WrappedLabel(text);
        row.add(paragraph, "wmin 50");
        row.add(behind);
        panel.add(row, "wmin 50");
        return row;
    }

    WrappedLabel strong(String text) {
        WrappedLabel paragraph = new WrappedLabel(text);
        paragraph.setFont(paragraph.getFont().deriveFont(java.awt.Font.BOLD));
        panel.add(paragraph, "wmin 50, gaptop 8");
        return paragraph;
    }

    void put(JComponent component) {
        panel.add(component, "grow 0");
    }

    /** All is said: shows it from the top. */
    void done() {
        panel.revalidate();
        panel.repaint();
        javax.swing.SwingUtilities.invokeLater(() -> getVerticalScrollBar().setValue(0));
    }
}
