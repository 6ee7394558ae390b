package evenblade.tell.chart;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The 1× of runs without and with weights as vectors, what a correction adds, and what is predicted to be left.
 *
 * @param caption what it was drawn from
 * @param unit written at the rings
 * @param runs in order of time, at least one
 * @param correction where one is given
 */
public record BalanceVectorsPicture(Caption caption, String unit, List<Run> runs, Optional<Correction> correction)
        implements Picture {
    /** What a run was made for. */
    public enum Role {
        WITHOUT_WEIGHTS(Ink.PROPELLER, Dash.SOLID),
        WITH_WEIGHTS(Ink.CRANK, Dash.LONG),
        CHECK(Ink.AFTER, Dash.DOTS);

        private final Ink ink;
        private final Dash dash;

        Role(Ink ink, Dash dash) {
            this.ink = ink;
            this.dash = dash;
        }
    }

    /**
     * One run.
     *
     * @param name short
     * @param role what it was made for
     * @param amplitude peak value
     * @param phaseDeg angle behind the mark
     */
    public record Run(String name, Role role, double amplitude, double phaseDeg) {}

    /**
     * What is predicted with the correction on.
     *
     * @param addedAmplitude length of what the weights add to the line
     * @param addedPhaseDeg and its angle behind the mark
     * @param amplitude of what is left
     * @param phaseDeg and its angle behind the mark
     * @param high upper end of the 95 % interval of what is left
     */
    public record Correction(
            double addedAmplitude, double addedPhaseDeg, double amplitude, double phaseDeg, double high) {}

    public BalanceVectorsPicture {
        runs = List.copyOf(runs);
        if (runs.isEmpty()) {
            throw new IllegalArgumentException("no runs to draw");
        }
    }

    @Override
    public String title() {
        return "Balancing: propeller 1× of each run as a vector";
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>(List.of(
                KeyEntry.line("O: without weights", Role.WITHOUT_WEIGHTS.ink, Role.WITHOUT_WEIGHTS.dash),
                KeyEntry.line("T: with weights", Role.WITH_WEIGHTS.ink, Role.WITH_WEIGHTS.dash)));
        if (runs().stream().anyMatch(run -> run.role() == Role.CHECK)) {
            entries.add(KeyEntry.line("check run", Role.CHECK.ink, Role.CHECK.dash));
        }
        if (correction().isPresent()) {
            entries.add(KeyEntry.line("C: what the correction adds", Ink.OTHER, Dash.LONG_SHORT));
            entries.add(KeyEntry.glyph("circle: what is left is within (95 %)", Glyph.CIRCLE, Ink.QUIET_TEXT, false));
        }
        entries.add(KeyEntry.note("0° is the mark, angles run against the rotation; rings in " + unit()));
        return entries;
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        double largest = runs().stream().mapToDouble(Run::amplitude).max().orElseThrow();
        double added =
                correction().map(c -> Math.max(c.addedAmplitude(), c.high())).orElse(0.0);
        PolarNet net = PolarNet.in(area, pen, Math.max(largest, added));
        net.paint();
        List<PolarNet.Tip> names = new ArrayList<>();
        for (Run run : runs()) {
            PolarNet.Tip tip = new PolarNet.Tip(run.name(), run.amplitude(), run.phaseDeg());
            net.arrow(tip, run.role().ink, run.role().dash);
            names.add(tip);
        }
        correction().ifPresent(c -> {
            PolarNet.Tip adds = new PolarNet.Tip("C", c.addedAmplitude(), c.addedPhaseDeg());
            net.arrow(adds, Ink.OTHER, Dash.LONG_SHORT);
            names.add(adds);
            net.circle(new PolarNet.Tip("", 0, 0), c.high(), Dash.LONG);
            names.add(new PolarNet.Tip("predicted", c.amplitude(), c.phaseDeg()));
        });
        net.paintNames(names, area);
        net.paintNumbers();
        return LaidOut.NONE;
    }
}
