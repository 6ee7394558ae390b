package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Series;

/**
 * One curve of a spectrum.
 *
 * @param name as written in the key
 * @param curve frequency in Hz, amplitude as peak value in the picture's unit
 * @param role what it stands for
 */
public record SpectrumCurve(String name, Curve curve, Role role) {
    /** What a curve stands for: each has its own look. */
    public enum Role {
        MEASURED(Ink.TEXT, Dash.SOLID),
        /** The highest that each frequency ever was. */
        LOUDEST(Ink.OTHER, Dash.SOLID),
        /** Another run or channel, to compare with. */
        REFERENCE(Ink.CRANK, Dash.LONG),
        /** Drawn as a surface. */
        BEFORE(Ink.BEFORE, Dash.SOLID),
        AFTER(Ink.AFTER, Dash.SOLID);

        private final Ink ink;
        private final Dash dash;

        Role(Ink ink, Dash dash) {
            this.ink = ink;
            this.dash = dash;
        }

        Ink ink() {
            return ink;
        }

        Dash dash() {
            return dash;
        }
    }

    /** Amplitudes in another unit. */
    SpectrumCurve in(ShownUnit unit, SignalUnit from) {
        if (unit == ShownUnit.AS_MEASURED) {
            return this;
        }
        int first = 0;
        double leastHz = unit.integrates(from) ? ShownUnit.LEAST_HZ : Double.MIN_VALUE;
        while (first < curve.x().size() - 1 && curve.x().at(first) < leastHz) {
            first++;
        }
        int size = curve.x().size() - first;
        double[] y = new double[size];
        for (int i = 0; i < size; i++) {
            y[i] = curve.y().at(first + i) * unit.factor(from, curve.x().at(first + i));
        }
        return new SpectrumCurve(name, new Curve(curve.x().part(first, size), Series.of(y)), role);
    }
}
