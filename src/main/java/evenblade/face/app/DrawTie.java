package evenblade.face.app;

import evenblade.base.numeric.Phasor;
import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.input.recording.Series;
import evenblade.judge.tie.JobTie;
import evenblade.judge.tie.Size;
import evenblade.judge.tie.TieAnswer;
import evenblade.judge.tie.TieRun;
import evenblade.judge.tie.TrackTie;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.Curve;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.PlottedEstimate;
import evenblade.tell.chart.PolarPicture;
import evenblade.tell.chart.TrackTiePicture;
import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Answers what propeller 1× against track looks like over the runs of a job. */
public final class DrawTie {
    private static final int POINTS = 25; // looks smooth; ours
    /** A tenth past the last reading, so that its mark stands free of the edge. */
    private static final double BEYOND = 1.1;
    /** Radius that holds 95 % of a plane's normal scatter, in standard errors of one direction: √(−2 ln 0.05). */
    private static final double CIRCLE = Math.sqrt(-2 * Math.log(0.05));

    private DrawTie() {}

    /**
     * The pictures: 1× against track, with the fit where there is one; then the vectors of 1×, where phases are known.
     *
     * @param invented whether the job was made up for practice
     * @param unit of track
     */
    public static List<Picture> draw(JobTie tie, boolean invented, LengthUnit unit) {
        return List.copyOf(named(tie, invented, unit).values());
    }

    /** The pictures by name. */
    public static Map<String, Picture> named(JobTie tie, boolean invented, LengthUnit unit) {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        pictures.put("track", againstTrack(tie, invented, unit));
        if (tie.phase()) {
            pictures.put("vectors", vectors(tie, invented));
        }
        return pictures;
    }

    private static Picture againstTrack(JobTie tie, boolean invented, LengthUnit unit) {
        TieRun largest = tie.runs().stream()
                .max(Comparator.comparingDouble(r -> r.trackMm().magnitude()))
                .orElseThrow();
        List<TrackTiePicture.Run> runs = tie.runs().stream()
                .map(r -> new TrackTiePicture.Run(
                        r.label(),
                        shown(r.trackMm().magnitude(), unit),
                        new PlottedEstimate(
                                r.amplitude(),
                                Math.max(0, r.amplitude() - FigureFormat.NINETY_FIVE * r.standardError()),
                                r.amplitude() + FigureFormat.NINETY_FIVE * r.standardError(),
                                true)))
                .toList();
        Optional<TrackTiePicture.Fit> fit = tie.answer() instanceof TieAnswer.Tied tied
                ? Optional.of(fit(tied.tie(), largest.trackMm(), unit))
                : Optional.empty();
        List<String> caption = caption(tie, invented);
        fit.ifPresent(drawn -> caption.add("fit for track as in '" + largest.label() + "'"));
        return new TrackTiePicture(
                new Caption(caption),
                "size of the track vector (" + unit.sign() + ")",
                "propeller 1×, peak (" + tie.unit().display() + ")",
                runs,
                fit);
    }

    /** Along one direction of track, from none to a little beyond the largest. */
    private static TrackTiePicture.Fit fit(TrackTie tie, Phasor largest, LengthUnit unit) {
        double[] size = new double[POINTS];
        double[] middle = new double[POINTS];
        double[] low = new double[POINTS];
        double[] high = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            double share = BEYOND * i / (POINTS - 1);
            size[i] = shown(share * largest.magnitude(), unit);
            Size predicted = tie.predicted(largest.times(share), 0);
            middle[i] = predicted.value();
            low[i] = predicted.low();
            high[i] = predicted.high();
        }
        return new TrackTiePicture.Fit(curve(size, middle), curve(size, low), curve(size, high));
    }

    private static double shown(double mm, LengthUnit unit) {
        return unit == LengthUnit.INCH ? Length.ofMillimetres(mm).inches() : mm;
    }

    private static Curve curve(double[] x, double[] y) {
        return new Curve(Series.of(x), Series.of(y));
    }

    private static Picture vectors(JobTie tie, boolean invented) {
        List<PolarPicture.Vector> vectors = tie.runs().stream()
                .map(r -> new PolarPicture.Vector(
                        r.label(), r.amplitude(), r.phaseDegrees().orElseThrow(), CIRCLE * r.standardError()))
                .toList();
        return new PolarPicture(new Caption(caption(tie, invented)), tie.unit().display(), vectors);
    }

    private static List<String> caption(JobTie tie, boolean invented) {
        List<String> parts = new ArrayList<>();
        if (invented) {
            parts.add("INVENTED");
        }
        parts.add(Caption.channel(tie.channel()));
        parts.add(Caption.rpm(tie.engineRpm()));
        parts.add("speed confirmed");
        return parts;
    }
}
