package evenblade.face.desktop;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import evenblade.tell.chart.ChartTheme;
import evenblade.tell.chart.Ink;
import evenblade.tell.chart.Palette;
import java.awt.Color;
import java.awt.Font;
import java.util.Map;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.UIManager;
import net.miginfocom.swing.SwingComponentWrapper;

/** Colours and letters of the whole desktop: the pictures' own, so that a line has one colour everywhere. */
final class Look {
    private static final Map<String, String> LIGHT = Map.of(
            "@background", "#f4f6f7",
            "@foreground", "#1d2327",
            "@accentColor", "#0a4f8f",
            "Component.focusColor", "#c25e00",
            "Component.focusedBorderColor", "#c25e00",
            "List.background", "#ffffff",
            "Table.background", "#ffffff");
    private static final Map<String, String> DARK = Map.of(
            "@background", "#1b2127",
            "@foreground", "#e8ecef",
            "@accentColor", "#4fa3e8",
            "Component.focusColor", "#e8963a",
            "Component.focusedBorderColor", "#e8963a",
            "List.background", "#14191e",
            "Table.background", "#14191e");
    private static final Map<String, String> BOTH = Map.of(
            "Component.focusWidth", "2",
            "Component.innerFocusWidth", "1",
            "Component.arc", "4",
            "Button.arc", "4",
            "Table.showHorizontalLines", "true",
            "ScrollBar.width", "14",
            "SplitPaneDivider.size", "8",
            "Button.margin", "7,14,7,14",
            "TextField.margin", "4,6,4,6");

    /** Nobody has to read smaller letters than this in a picture. */
    private static final double LEAST_LETTER_PX = 11;
    /** The smallest kind of text in a picture is nine tenths of its ordinary text. */
    private static final double LEAST_TEXT_PX = LEAST_LETTER_PX / 0.9;

    private Look() {}

    /** Puts the user's choice of colours and text size in force, for windows that are open too. */
    static void apply(Settings settings) {
        // Room for the ring around what has the focus, also at the edge of a panel.
        SwingComponentWrapper.setVisualPaddingEnabled(false);
        Map<String, String> defaults = new java.util.HashMap<>(BOTH);
        defaults.putAll(settings.dark() ? DARK : LIGHT);
        FlatLaf.setGlobalExtraDefaults(defaults);
        UIManager.put("defaultFont", null);
        if (settings.dark()) {
            FlatDarkLaf.setup();
        } else {
            FlatLightLaf.setup();
        }
        Font usual = UIManager.getFont("Label.font");
        UIManager.put("defaultFont", usual.deriveFont((float) settings.textPx()));
        FlatLaf.updateUI();
    }

    static Palette palette() {
        return FlatLaf.isLafDark() ? Palette.DARK : Palette.LIGHT;
    }

    /** Theme of the pictures at the scale of a screen. */
    static ChartTheme theme(double scale) {
        double textPx = Math.max(LEAST_TEXT_PX, UIManager.getFont("Label.font").getSize2D() * 0.9);
        return new ChartTheme(palette(), textPx * scale, LEAST_LETTER_PX * scale);
    }

    static Color ink(Ink ink) {
        return palette().of(ink);
    }

    /** Line height of ordinary text; every distance is a multiple of it. */
    static int em() {
        return UIManager.getFont("Label.font").getSize();
    }

    static JLabel heading(String text) {
        JLabel label = new JLabel(text);
        label.putClientProperty("FlatLaf.style", "font: bold +5");
        return label;
    }

    static JLabel strong(String text) {
        JLabel label = new JLabel(text);
        label.putClientProperty("FlatLaf.style", "font: bold");
        return label;
    }

    static JLabel quiet(String text) {
        JLabel label = new JLabel(text);
        label.putClientProperty("FlatLaf.style", "foreground: $Label.disabledForeground; font: -1");
        label.setForeground(ink(Ink.QUIET_TEXT));
        return label;
    }

    /** The words beside a field, for those who can't see where it stands too. */
    static JLabel label(String words, JComponent field) {
        JLabel label = new JLabel(words);
        label.setLabelFor(field);
        return label;
    }

    static JButton button(String words, String name, Runnable pressed) {
        JButton button = new JButton(words);
        button.setName(name);
        button.addActionListener(e -> pressed.run());
        return button;
    }

    /** Marks what goes ahead in a form. */
    static <C extends JComponent> C main(C button) {
        button.putClientProperty(
                "FlatLaf.style",
                "background: @accentColor; focusedBackground: @accentColor; hoverBackground: lighten(@accentColor,6%);"
                        + " pressedBackground: darken(@accentColor,6%); foreground: contrast(@accentColor,#111,#fff);"
                        + " font: bold");
        return button;
    }
}
