package evenblade.keep.practice;

import evenblade.base.numeric.Phasor;

/**
 * A line that keeps step with the propeller: {@code x(t) = |z|·cos(2π·order·r(t) + arg z)}, where
 * {@code r} is the number of propeller revolutions turned and {@code z} may depend on the speed of the
 * moment (it follows it at once: the wander is slow against any resonance).
 *
 * @param propellerOrder multiple of propeller speed, greater than 0; need not be whole
 * @param law amplitude and phase by speed
 */
public record Line(double propellerOrder, Law law) {
    private static final double CONVERTER_SHARE = 0.48; // of the rate: a converter's filter ends just below half

    /** Amplitude and phase of a line at a propeller speed. */
    @FunctionalInterface
    public interface Law {
        Phasor at(double propellerHz);
    }

    /** Constant at any speed. */
    record Constant(Phasor value) implements Law {
        @Override
        public Phasor at(double propellerHz) {
            return value;
        }
    }

    /**
     * A line of constant amplitude.
     *
     * @param amplitude peak value
     * @param phaseDeg by which it is ahead of the cosine of its own angle
     */
    public static Line of(double propellerOrder, double amplitude, double phaseDeg) {
        return new Line(propellerOrder, new Constant(Phasor.ofDegrees(amplitude, phaseDeg)));
    }

    /** This line seen through a sensor that passes each frequency its own way. */
    public Line through(Response response) {
        return new Line(propellerOrder, hz -> law.at(hz).times(response.at(propellerOrder * hz)));
    }

    /** This line at another scale. */
    public Line times(double factor) {
        return new Line(propellerOrder, hz -> law.at(hz).times(factor));
    }

    /** What a sensor makes of a line of unit amplitude at a frequency. */
    @FunctionalInterface
    public interface Response {
        Phasor at(double frequencyHz);
    }

    /**
     * What the converter of an audio interface lets in: all below 0.48 of its rate, nothing above.
     *
     * @param rateHz samples per second
     */
    public static Response converter(double rateHz) {
        return frequencyHz -> frequencyHz < CONVERTER_SHARE * rateHz ? new Phasor(1, 0) : Phasor.ZERO;
    }

    /**
     * Adds this line to the samples, given the revolutions turned and the speed at each.
     *
     * @param stride samples over which a law that depends on speed is taken as straight
     */
    void addTo(double[] samples, double[] revolutions, double[] propellerHz, int stride) {
        if (law instanceof Constant constant) {
            double amplitude = constant.value().magnitude();
            double offset = Math.atan2(constant.value().im(), constant.value().re());
            for (int i = 0; i < samples.length; i++) {
                samples[i] += amplitude * Math.cos(angle(revolutions[i]) + offset);
            }
            return;
        }
        for (int from = 0; from < samples.length; from += stride) {
            int to = Math.min(from + stride, samples.length - 1);
            Phasor start = law.at(propellerHz[from]);
            Phasor change = law.at(propellerHz[to]).plus(start.times(-1)).times(1.0 / Math.max(1, to - from));
            for (int i = from; i < Math.min(from + stride, samples.length); i++) {
                double re = start.re() + (i - from) * change.re();
                double im = start.im() + (i - from) * change.im();
                double angle = angle(revolutions[i]);
                samples[i] += re * Math.cos(angle) - im * Math.sin(angle);
            }
        }
    }

    private double angle(double revolutions) {
        double turns = propellerOrder * revolutions;
        return 2 * Math.PI * (turns - Math.rint(turns));
    }
}
