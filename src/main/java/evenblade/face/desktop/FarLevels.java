package evenblade.face.desktop;

import evenblade.input.capture.ChannelLevel;
import evenblade.tell.chart.Ink;
import evenblade.tell.document.FigureFormat;
import java.awt.Font;
import java.util.Comparator;
import java.util.List;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** The levels to be read from afar: of one or two channels each, of more the loudest with its name. */
final class FarLevels extends JPanel {
    private static final int MOST = 2; // as many as there are rows

    private final FarLabel first = new FarLabel(" ", Font.BOLD);
    private final FarLabel second = new FarLabel(" ", Font.BOLD);
    private final JLabel name = Look.quiet(" ");

    FarLevels() {
        super(new MigLayout("insets 0, gap 0, wrap 1, hidemode 3", "[grow,fill]"));
        first.setName("live level");
        second.setName("live level 2");
        name.setName("live level name");
        add(first, "wmin 0");
        add(second, "wmin 0");
        add(name, "wmin 0");
        show(List.of());
    }

    /** Makes figures so high; gives the width that they need. */
    int figures(double heightPx) {
        first.figures(heightPx);
        second.figures(heightPx);
        return first.room("−00 dB").width;
    }

    void show(List<ChannelLevel> levels) {
        boolean both = levels.size() == MOST;
        List<ChannelLevel> shown = both
                ? levels
                : levels.stream().max(Comparator.comparingDouble(ChannelLevel::heldPeakDb)).stream()
                        .toList();
        if (!shown.isEmpty()) {
            show(first, shown.get(0));
        }
        if (both) {
            show(second, shown.get(1));
        }
        second.setVisible(both);
        name.setVisible(!both);
        String words = shown.isEmpty()
                ? " "
                : (levels.size() > MOST ? "loudest: " : "level: ")
                        + shown.get(0).channel();
        name.setText(words);
        name.setToolTipText(words);
    }

    private static void show(FarLabel label, ChannelLevel level) {
        boolean cut = level.clip() != ChannelLevel.Clip.NONE;
        label.setText(cut ? "✕ CLIP" : words(level));
        label.setForeground(Look.ink(cut ? Ink.LIMIT : Ink.TEXT));
        label.setToolTipText(level.channel());
    }

    private static String words(ChannelLevel level) {
        return level.heldPeakDb() <= ChannelLevel.SILENCE_DB
                ? "silent"
                : FigureFormat.fixed(level.heldPeakDb(), 0) + " dB";
    }
}
