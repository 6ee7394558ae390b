package evenblade.tell.chart;

import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * The 1× of each run as a vector: how strong, and at which angle after the mark.
 *
 * @param caption what it was drawn from
 * @param unit written at the rings
 * @param vectors in order of time, at least one
 */
public record PolarPicture(Caption caption, String unit, List<Vector> vectors) implements Picture {
    /**
     * One run.
     *
     * @param name short
     * @param amplitude peak value
     * @param phaseDeg angle after the mark
     * @param radius of the 95 % circle round the tip, in the amplitude's unit
     */
    public record Vector(String name, double amplitude, double phaseDeg, double radius) {}

    public PolarPicture {
        vectors = List.copyOf(vectors);
        if (vectors.isEmpty()) {
            throw new IllegalArgumentException("no vectors to draw");
        }
    }

    @Override
    public String title() {
        return "Propeller 1× as a vector";
    }

    @Override
    public List<KeyEntry> key() {
        return List.of(
                KeyEntry.line("run", Ink.PROPELLER, Dash.SOLID),
                KeyEntry.line("last run", Ink.CRANK, Dash.LONG),
                KeyEntry.glyph("95 % circle", Glyph.CIRCLE, Ink.QUIET_TEXT, false),
                KeyEntry.note("0° is the mark; angles run against the clock; rings in " + unit()));
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        double largest = vectors().stream()
                .mapToDouble(v -> v.amplitude() + v.radius())
                .max()
                .orElseThrow();
        PolarNet net = PolarNet.in(area, pen, largest);
        net.paint();
        List<PolarNet.Tip> tips = vectors().stream()
                .map(v -> new PolarNet.Tip(v.name(), v.amplitude(), v.phaseDeg()))
                .toList();
        for (int i = 0; i < vectors().size(); i++) {
            boolean last = i == vectors().size() - 1 && i > 0;
            net.circle(tips.get(i), vectors().get(i).radius(), Dash.SOLID);
            net.arrow(tips.get(i), last ? Ink.CRANK : Ink.PROPELLER, last ? Dash.LONG : Dash.SOLID);
        }
        net.paintNames(tips, area);
        net.paintNumbers();
        return LaidOut.NONE;
    }
}
