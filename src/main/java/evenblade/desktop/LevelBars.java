package evenblade.desktop;

import evenblade.capture.ChannelLevel;
import evenblade.chart.Ink;
import java.awt.Dimension;
import java.awt.Graphics;
import java.util.List;
import java.util.Locale;
import javax.swing.JPanel;

/** How loud each channel is, in decibels below full scale. */
final class LevelBars extends JPanel {
    private static final double LOWEST_DB = -72;

    private transient List<ChannelLevel> levels = List.of();

    LevelBars() {
        setName("levels");
        setPreferredSize(new Dimension(220, 3 * Look.em()));
    }

    void show(List<ChannelLevel> now) {
        levels = now;
        repaint();
    }

    @Override
    protected void paintComponent(Graphics g) {
        super.paintComponent(g);
        int em = Look.em();
        int height = levels.isEmpty() ? 0 : Math.min(3 * em / 2, getHeight() / levels.size());
        int room = getWidth() - 5 * em;
        for (int i = 0; i < levels.size(); i++) {
            ChannelLevel level = levels.get(i);
            int y = i * height;
            g.setColor(Look.ink(Ink.SHADE));
            g.fillRect(0, y + 2, room, height - 4);
            g.setColor(Look.ink(level.clipped() > 0 ? Ink.LIMIT : Ink.PROPELLER));
            g.fillRect(0, y + 2, place(level.peakDb(), room), height - 4);
            g.setColor(Look.ink(Ink.TEXT));
            int held = place(level.heldPeakDb(), room);
            g.fillRect(Math.max(0, held - 2), y + 1, 3, height - 2);
            g.drawString(
                    String.format(Locale.ROOT, "%.0f dB", level.heldPeakDb()), room + em / 2, y + height - height / 4);
        }
    }

    private static int place(double db, int room) {
        return (int) (room * Math.max(0, Math.min(1, 1 - db / LOWEST_DB)));
    }
}
