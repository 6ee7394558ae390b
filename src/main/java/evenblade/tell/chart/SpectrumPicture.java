package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Series;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Amplitude spectrum with every order marked, or the steady lines where no order is known. The curve is for looking; the mark shapes stand at the
 * amplitudes that the order fit measured, which lie above the curve where the speed wandered.
 */
public final class SpectrumPicture extends Picture {
    /**
     * What is drawn.
     *
     * @param caption what it was drawn from
     * @param frequencyHz rising
     * @param amplitude one per frequency, peak value in that unit
     * @param unit of the channel
     * @param marks lines to mark; those outside the range are left out
     * @param upToHz right end of the picture
     * @param scale of the amplitude axis
     */
    public record Data(
            Caption caption,
            Series frequencyHz,
            Series amplitude,
            SignalUnit unit,
            List<OrderMark> marks,
            double upToHz,
            AmplitudeScale scale) {
        public Data {
            marks = List.copyOf(marks);
            if (frequencyHz.size() != amplitude.size() || frequencyHz.size() == 0) {
                throw new IllegalArgumentException("a spectrum of " + frequencyHz.size() + " frequencies and "
                        + amplitude.size() + " amplitudes can't be drawn");
            }
        }
    }

    private final Data data;

    public SpectrumPicture(Data data) {
        this.data = data;
    }

    @Override
    public String title() {
        return data.marks().stream().anyMatch(mark -> mark.kind().order())
                ? "Spectrum with the orders marked"
                : "Averaged spectrum";
    }

    @Override
    public Caption caption() {
        return data.caption();
    }

    @Override
    List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        entries.add(KeyEntry.line("averaged spectrum", Ink.TEXT, Dash.SOLID));
        entries.addAll(MarkFlags.key(data.marks()));
        return entries;
    }

    @Override
    void paintBody(Pen pen, Rectangle2D whole) {
        Rectangle2D area =
                new Rectangle2D.Double(whole.getX(), whole.getY(), whole.getWidth() - pen.em(0.6), whole.getHeight());
        Axis x = Axis.linear("frequency (Hz)", 0, data.upToHz());
        double[][] curve = Thinning.between(
                data.frequencyHz(), data.amplitude(), x.min(), x.max(), (int) Math.max(100, area.getWidth()));
        AxesFrame frame = new AxesFrame(x, amplitudeAxis(curve[1]), pen.theme());
        if (curve[0].length > 0) {
            frame.curve("spectrum", curve[0], curve[1], Ink.TEXT, pen.stroke(0.1));
        }
        MarkFlags flags = MarkFlags.layOut(pen, data.marks(), frame.place(area));
        double rows = flags.height() + pen.em(0.5);
        Plane plane = frame.place(
                new Rectangle2D.Double(area.getX(), area.getY() + rows, area.getWidth(), area.getHeight() - rows));
        MarkFlags placed = MarkFlags.layOut(pen, data.marks(), plane);
        placed.paintStaffs();
        frame.paint(pen.surface());
        placed.paintNames();
    }

    private Axis amplitudeAxis(double[] shown) {
        double largest = 0;
        double[] positive =
                java.util.Arrays.stream(shown).filter(a -> a > 0).sorted().toArray();
        if (positive.length > 0) {
            largest = positive[positive.length - 1];
        }
        for (OrderMark mark : data.marks()) {
            if (mark.frequencyHz() <= data.upToHz() && mark.detected()) {
                largest = Math.max(largest, mark.amplitude().orElse(0));
            }
        }
        double floor = positive.length > 0 ? positive[positive.length / 20] : largest;
        return data.scale().axis(AmplitudeScale.title(data.unit()), floor, largest);
    }
}
