package evenblade.practice;

/**
 * Amplitude and phase of a line as one complex number: {@code x = Re(z·e^{jα}) = |z|·cos(α + arg z)}.
 *
 * @param re real part: what goes with the cosine
 * @param im imaginary part: minus what goes with the sine
 */
public record Phasor(double re, double im) {
    public static final Phasor ZERO = new Phasor(0, 0);

    public static Phasor polar(double amplitude, double phaseRad) {
        return new Phasor(amplitude * Math.cos(phaseRad), amplitude * Math.sin(phaseRad));
    }

    public static Phasor polarDeg(double amplitude, double phaseDeg) {
        return polar(amplitude, Math.toRadians(phaseDeg));
    }

    public Phasor plus(Phasor other) {
        return new Phasor(re + other.re, im + other.im);
    }

    public Phasor times(Phasor other) {
        return new Phasor(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    public Phasor times(double factor) {
        return new Phasor(re * factor, im * factor);
    }

    /** One divided by this; this must not be zero. */
    public Phasor inverse() {
        double square = re * re + im * im;
        return new Phasor(re / square, -im / square);
    }

    /** Peak value. */
    public double amplitude() {
        return Math.hypot(re, im);
    }

    /** 0 up to 360; positive where the line is ahead of the cosine. */
    public double phaseDeg() {
        double degrees = Math.toDegrees(Math.atan2(im, re)) % 360;
        return degrees < 0 ? degrees + 360 : degrees;
    }
}
