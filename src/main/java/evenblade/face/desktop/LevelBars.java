package evenblade.face.desktop;

import evenblade.input.capture.ChannelLevel;
import evenblade.measure.soundcheck.LevelAim;
import evenblade.tell.chart.Ink;
import evenblade.tell.document.FigureFormat;
import java.awt.Dimension;
import java.awt.Graphics;
import java.util.List;
import java.util.stream.Collectors;
import javax.swing.JPanel;

/** How loud each channel is, in decibels below full scale: the good zone drawn, the highest of two seconds held. */
final class LevelBars extends JPanel {
    private static final double LOWEST_DB = -72; // a little below what is too low to use
    private static final int STEP_DB = 12; // six marks fit
    private static final int LONGEST_NAMES = 40; // letters; one name may be so long, two leave no room for the cure
    private static final String BY_GAIN = "turn gain down";
    private static final String NOT_BY_GAIN = "not by the gain";
    private static final int MOST_ROWS = 4; // of more, bars are thin and go without figures

    private transient List<ChannelLevel> levels = List.of();

    LevelBars() {
        setName("levels");
        room(0);
    }

    void show(List<ChannelLevel> now) {
        if (now.size() != levels.size()) {
            room(now.size());
        }
        levels = now;
        repaint();
    }

    /** Three rows at least, so that nothing moves with the second channel; one for the scale. */
    private void room(int channels) {
        setPreferredSize(new Dimension(220, (Math.max(3, Math.min(channels, MOST_ROWS)) + 1) * Look.em() + 4));
        revalidate();
    }

    /** Which channels are clipped just now, and what cures it in a few words. */
    static String clipText(List<ChannelLevel> clipping) {
        if (clipping.isEmpty()) {
            return "not clipped";
        }
        String names = names(clipping);
        if (names.length() > LONGEST_NAMES) {
            long byGain = clipping.stream()
                    .filter(level -> level.clip() == ChannelLevel.Clip.FULL_SCALE)
                    .count();
            String cure = byGain == clipping.size() ? BY_GAIN : byGain == 0 ? NOT_BY_GAIN : "not only by the gain";
            return "✕ " + FigureFormat.count(clipping.size(), "channel") + " CLIPPED: " + cure;
        }
        return clipping.stream()
                .map(level -> "✕ " + level.channel() + " CLIPPED: "
                        + (level.clip() == ChannelLevel.Clip.FULL_SCALE ? BY_GAIN : NOT_BY_GAIN))
                .collect(Collectors.joining(" · "));
    }

    private static String names(List<ChannelLevel> clipping) {
        return clipping.stream().map(ChannelLevel::channel).collect(Collectors.joining(", "));
    }

    /** What the few words mean. */
    static String clipTip(List<ChannelLevel> clipping) {
        return names(clipping) + ": " + cure(clipping);
    }

    private static String cure(List<ChannelLevel> clipping) {
        return clipping.stream().anyMatch(level -> level.clip() == ChannelLevel.Clip.BELOW_FULL_SCALE)
                ? "tops are flat below full scale: what comes before the gain is overdriven. Stop the engine, then take"
                        + " more distance, or a sensor or preamplifier with more range."
                : "samples are cut off at full scale. Turn the gain of the input down.";
    }

    @Override
    protected void paintComponent(Graphics g) {
        super.paintComponent(g);
        int em = Look.em();
        int room = getWidth() - 6 * em;
        int scale = em + 2;
        int height = Math.min(3 * em, (getHeight() - scale) / Math.max(1, levels.size()));
        for (int i = 0; i < levels.size(); i++) {
            bar(g, levels.get(i), i * height, height, room);
        }
        g.setColor(Look.ink(Ink.QUIET_TEXT));
        g.setFont(getFont().deriveFont(getFont().getSize2D() * 0.85f));
        int foot = Math.max(1, levels.size()) * height;
        int step = room < 20 * em ? 3 * STEP_DB : STEP_DB;
        for (int db = (int) LOWEST_DB; db <= 0; db += step) {
            int x = place(db, room);
            g.drawLine(x, foot - 2, x, foot + 2);
            String words = db == 0 ? "0 dB" : String.valueOf(db);
            g.drawString(words, Math.max(0, x - g.getFontMetrics().stringWidth(words) / 2), foot + scale - 1);
        }
    }

    private void bar(Graphics g, ChannelLevel level, int y, int height, int room) {
        int em = Look.em();
        g.setColor(Look.ink(Ink.SHADE));
        g.fillRect(0, y + 2, room, height - 4);
        int from = place(LevelAim.LOW_DB, room);
        g.setColor(Look.ink(Ink.GRID));
        g.fillRect(from, y + 2, place(LevelAim.HIGH_DB, room) - from, height - 4);
        g.setColor(Look.ink(level.clip() == ChannelLevel.Clip.NONE ? Ink.PROPELLER : Ink.LIMIT));
        g.fillRect(0, y + 2, place(level.peakDb(), room), height - 4);
        g.setColor(Look.ink(Ink.TEXT));
        for (double edge : new double[] {LevelAim.LOW_DB, LevelAim.HIGH_DB}) {
            g.drawLine(place(edge, room), y, place(edge, room), y + height);
        }
        int held = place(level.heldPeakDb(), room);
        g.fillRect(Math.max(0, held - 2), y + 1, 3, height - 2);
        if (height < em) {
            return;
        }
        g.setFont(getFont());
        String words = level.heldPeakDb() <= ChannelLevel.SILENCE_DB
                ? "silent"
                : FigureFormat.fixed(level.heldPeakDb(), 0) + " dB";
        g.drawString(words, room + 2 * em, y + (height + em) / 2 - 2);
    }

    private static int place(double db, int room) {
        return (int) (room * Math.max(0, Math.min(1, 1 - db / LOWEST_DB)));
    }
}
