package evenblade.base.numeric;

/**
 * A complex number, as the size and angle of something that turns.
 *
 * @param re part along 0°
 * @param im part along 90°
 */
public record Phasor(double re, double im) {
    public static final Phasor ZERO = new Phasor(0, 0);

    /** From size and angle in degrees. */
    public static Phasor ofDegrees(double magnitude, double degrees) {
        double radians = Math.toRadians(degrees);
        return new Phasor(magnitude * Math.cos(radians), magnitude * Math.sin(radians));
    }

    public double magnitude() {
        return Math.hypot(re, im);
    }

    /** Angle in degrees, 0 up to but not including 360; 0 for zero. */
    public double degrees() {
        double degrees = Math.toDegrees(Math.atan2(im, re));
        double wrapped = degrees < 0 ? degrees + 360 : degrees;
        return wrapped >= 360 ? 0 : wrapped;
    }

    public Phasor plus(Phasor other) {
        return new Phasor(re + other.re, im + other.im);
    }

    public Phasor minus(Phasor other) {
        return new Phasor(re - other.re, im - other.im);
    }

    public Phasor times(Phasor other) {
        return new Phasor(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    /** This over another; that one not zero. */
    public Phasor over(Phasor other) {
        double square = other.re * other.re + other.im * other.im;
        return times(other.conjugate()).times(1 / square);
    }

    /** Of this size, at the angle counted the other way. */
    public Phasor conjugate() {
        return new Phasor(re, -im);
    }

    public Phasor times(double factor) {
        return new Phasor(re * factor, im * factor);
    }
}
