package evenblade.face.desktop;

import evenblade.tell.chart.Ink;
import evenblade.tell.document.Document;
import evenblade.tell.document.Html;
import java.awt.Color;
import java.awt.Font;
import java.util.Locale;
import javax.swing.BorderFactory;
import javax.swing.JEditorPane;
import javax.swing.JScrollPane;
import javax.swing.text.html.HTMLEditorKit;
import javax.swing.text.html.StyleSheet;

/** Shows a document in the window: tables as tables, all of it to be selected and copied; pictures are shown beside it. */
final class Page extends JScrollPane {
    private final JEditorPane text = pane();

    Page(String name) {
        text.setName(name);
        setViewportView(text);
        setBorder(BorderFactory.createEmptyBorder());
        getVerticalScrollBar().setUnitIncrement(Look.em());
    }

    /** A part of a page between other things. */
    static JEditorPane of(Document document) {
        JEditorPane part = pane();
        show(part, document);
        return part;
    }

    private static JEditorPane pane() {
        JEditorPane text = new JEditorPane();
        text.setEditable(false);
        text.putClientProperty(JEditorPane.HONOR_DISPLAY_PROPERTIES, Boolean.TRUE);
        HTMLEditorKit kit = new HTMLEditorKit();
        kit.setStyleSheet(styles(kit.getStyleSheet(), text.getFont()));
        text.setEditorKit(kit);
        text.setBorder(BorderFactory.createEmptyBorder(4, 8, 8, 8));
        return text;
    }

    private static StyleSheet styles(StyleSheet inherited, Font font) {
        StyleSheet styles = new StyleSheet();
        styles.addStyleSheet(inherited);
        styles.addRule("body { font-family: " + font.getFamily() + "; font-size: " + font.getSize() + "pt; color: "
                + colour(Look.ink(Ink.TEXT)) + " }");
        styles.addRule("h3 { font-size: " + font.getSize() + "pt; margin: 10 0 2 0 }");
        styles.addRule("h4 { font-size: " + font.getSize() + "pt; margin: 10 0 2 0 }");
        styles.addRule("p { margin: 3 0 3 0 }");
        styles.addRule("caption { text-align: left; font-weight: bold }");
        styles.addRule("th { text-align: left; font-weight: normal; padding: 1 12 1 0; color: "
                + colour(Look.ink(Ink.QUIET_TEXT)) + " }");
        styles.addRule("td { padding: 1 12 1 0 }");
        styles.addRule(".n { text-align: right }");
        styles.addRule(".faint { color: " + colour(Look.ink(Ink.QUIET_TEXT)) + " }");
        styles.addRule(".clear { font-weight: bold }");
        styles.addRule(".says { font-weight: bold }");
        styles.addRule(".note { color: " + colour(Look.ink(Ink.QUIET_TEXT)) + " }");
        return styles;
    }

    private static String colour(Color colour) {
        return String.format(Locale.ROOT, "#%06x", colour.getRGB() & 0xFFFFFF);
    }

    void show(Document document) {
        show(text, document);
    }

    private static void show(JEditorPane text, Document document) {
        text.setText("<html><body>" + Html.of(document, slot -> "") + "</body></html>");
        text.setCaretPosition(0);
    }
}
