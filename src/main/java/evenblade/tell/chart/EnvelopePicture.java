package evenblade.tell.chart;

import evenblade.input.recording.Series;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;

/**
 * How the whole signal swells and fades over the first seconds of a dwell: a slow throb shows as even waves.
 *
 * @param caption what it was drawn from
 * @param unit of the level
 * @param timeS rising, seconds into the recording; at least two
 * @param level peak value of a steady sine of the same mean square, one per time
 */
public record EnvelopePicture(Caption caption, String unit, Series timeS, Series level) implements Picture {
    /** So much is shown: some ten waves of a throb, and still wide enough to be seen. */
    private static final double SHOWN_S = 8;

    @Override
    public String title() {
        return "Swell of the whole signal";
    }

    @Override
    public List<KeyEntry> key() {
        return List.of(KeyEntry.line("level over 80 ms", Ink.AFTER, Dash.SOLID));
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        double[] time = timeS().toArray();
        int shown =
                (int) Arrays.stream(time).filter(t -> t <= time[0] + SHOWN_S).count();
        double[] level = Arrays.copyOf(level().toArray(), shown);
        Axis x = Axis.linear("time (s)", time[0], time[shown - 1]);
        Axis y = Axis.fromZero(
                "level (" + unit() + ")", Arrays.stream(level).max().orElse(1));
        AxesFrame frame = new AxesFrame(x, y, pen.theme());
        frame.curve("level over 80 ms", Arrays.copyOf(time, shown), level, Ink.AFTER, pen.stroke(0.14));
        frame.place(area);
        frame.paint(pen.surface());
        return LaidOut.NONE;
    }
}
