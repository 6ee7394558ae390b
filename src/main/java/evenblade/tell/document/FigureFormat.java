package evenblade.tell.document;

import evenblade.base.fact.Amount;
import evenblade.base.fact.Estimated;
import evenblade.base.fact.Measure;
import evenblade.base.units.LengthUnit;
import java.util.Locale;

/**
 * How figures are written.
 *
 * @param lengths in which unit the reader wants them first
 */
public record FigureFormat(LengthUnit lengths) {
    /** 0.0254 m by definition. */
    private static final double METRES_PER_INCH = 0.0254;

    /** With its unit, as a figure of its kind is usually written. */
    public String text(Amount amount) {
        if (amount.measure() == Measure.SHARE && amount.value() < 0.001) {
            return text(amount, 3);
        }
        return text(amount, decimals(amount.measure()));
    }

    /** With its unit and so many decimals. */
    public String text(Amount amount, int decimals) {
        String number = fixed(shown(amount), decimals) + unit(amount.measure());
        return amount.measure() == Measure.LENGTH && lengths == LengthUnit.INCH
                ? fixed(amount.value() / METRES_PER_INCH, decimals + 1) + " in = " + number
                : number;
    }

    /** With its interval. */
    public String text(Estimated estimated) {
        Measure measure = estimated.measure();
        return text(new Amount(estimated.value(), measure)) + " ("
                + fixed(shown(new Amount(estimated.low(), measure)), decimals(measure)) + " to "
                + fixed(shown(new Amount(estimated.high(), measure)), decimals(measure)) + ")";
    }

    /** With that many decimals; never a minus before nothing. */
    public String fixed(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.matches("-0(\\.0*)?") ? text.substring(1) : text;
    }

    /** The number in the unit that is shown. */
    double shown(Amount amount) {
        return switch (amount.measure()) {
            case LENGTH, MASS, VELOCITY -> 1e3 * amount.value();
            case UNBALANCE, DISPLACEMENT -> 1e6 * amount.value();
            case SHARE -> 100 * amount.value();
            default -> amount.value();
        };
    }

    /** The unit with the space before it. */
    String unit(Measure measure) {
        return switch (measure) {
            case LENGTH -> " mm";
            case ANGLE -> "°";
            case MASS -> " g";
            case UNBALANCE -> " g·mm";
            case TIME -> " s";
            case FREQUENCY -> " Hz";
            case SAMPLE_RATE -> " samples per second";
            case ENGINE_RPM, PROPELLER_RPM -> " rpm";
            case SHARE -> " %";
            case LEVEL -> " dB";
            case VELOCITY -> " mm/s";
            case ACCELERATION -> " m/s²";
            case DISPLACEMENT -> " µm";
            case FORCE -> " N";
            case MOMENT -> " N·m";
            case NUMBER -> "";
        };
    }

    private static int decimals(Measure measure) {
        return switch (measure) {
            case UNBALANCE, ENGINE_RPM, PROPELLER_RPM -> 0;
            case LENGTH, VELOCITY -> 2;
            default -> 1;
        };
    }
}
