package evenblade.rig;

/** Amplitude and phase of a line: x(t) = Re{z·exp(j·2π·order·turns(t))}, turns counted from the mark of the shaft. */
public record Phasor(double re, double im) {
    static final Phasor ZERO = new Phasor(0, 0);

    /** By amplitude and phase in rad. */
    public static Phasor polar(double amplitude, double phaseRad) {
        return new Phasor(amplitude * Math.cos(phaseRad), amplitude * Math.sin(phaseRad));
    }

    Phasor plus(Phasor other) {
        return new Phasor(re + other.re, im + other.im);
    }

    Phasor minus(Phasor other) {
        return new Phasor(re - other.re, im - other.im);
    }

    Phasor times(Phasor other) {
        return new Phasor(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    Phasor times(double factor) {
        return new Phasor(re * factor, im * factor);
    }

    Phasor over(Phasor other) {
        double square = other.re * other.re + other.im * other.im;
        return new Phasor((re * other.re + im * other.im) / square, (im * other.re - re * other.im) / square);
    }

    public double amplitude() {
        return Math.hypot(re, im);
    }

    public double phaseDeg() {
        return Math.toDegrees(Math.atan2(im, re));
    }
}
