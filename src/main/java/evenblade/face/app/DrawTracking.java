package evenblade.face.app;

import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.judge.tracking.StaticSide;
import evenblade.judge.tracking.StaticSide.MarkedTips;
import evenblade.judge.tracking.SwapFit.Deviation;
import evenblade.judge.tracking.TrackingAnalysis;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.DeviationPicture;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.PlottedEstimate;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Answers what the static side of a job looks like. */
public final class DrawTracking {
    private DrawTracking() {}

    /** All of them by name, in the units of the job: the tips as marked last, then what goes with blades and positions. */
    public static Map<String, Picture> all(Path job, StaticSide view) {
        LengthUnit unit = JobParticulars.units(job, Optional.empty());
        Map<String, Picture> pictures = new LinkedHashMap<>();
        pictures.put("tips", tips(view, unit));
        deviations(view, unit).ifPresent(picture -> pictures.put("deviations", picture));
        return pictures;
    }

    /** The tips as they were marked last. */
    public static Picture tips(StaticSide view, LengthUnit unit) {
        return tips(view, view.sessions().get(view.sessions().size() - 1), unit);
    }

    /** The tips as they were marked in one session. */
    static Picture tips(StaticSide view, MarkedTips tips, LengthUnit unit) {
        String caption =
                "entry " + tips.event() + ", " + tips.session().layout().text();
        return SketchStatic.marks(view.installation(), tips.session(), marked(view, caption), unit)
                .picture()
                .orElseThrow();
    }

    /** What goes with the blades and what stays with the hub; empty where nothing can be told yet. */
    public static Optional<Picture> deviations(StaticSide view, LengthUnit unit) {
        return deviations(view, view.now(), unit);
    }

    /** Deviations in one of the stretches without a change. */
    static Optional<Picture> deviations(StaticSide view, TrackingAnalysis spell, LengthUnit unit) {
        List<DeviationPicture.Row> blades = rows("blade ", spell.blades(), unit);
        List<DeviationPicture.Row> positions = rows("position ", spell.positions(), unit);
        if (blades.isEmpty() && positions.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new DeviationPicture(
                Caption.of(marked(
                        view,
                        spell.sessions().size() + " session(s) "
                                + (spell == view.now() ? "since the last change" : "before a change"))),
                "deviation of the tip (" + unit.sign() + ")",
                blades,
                positions));
    }

    private static List<DeviationPicture.Row> rows(String what, List<Deviation> deviations, LengthUnit unit) {
        List<DeviationPicture.Row> rows = new ArrayList<>();
        for (Deviation deviation : deviations) {
            deviation
                    .estimate()
                    .ifPresent(e -> rows.add(new DeviationPicture.Row(
                            what + deviation.name(),
                            new PlottedEstimate(
                                    shown(e.valueMm(), unit),
                                    shown(e.lowMm(), unit),
                                    shown(e.highMm(), unit),
                                    e.lowMm() > 0 || e.highMm() < 0))));
        }
        return rows;
    }

    private static double shown(double mm, LengthUnit unit) {
        return unit == LengthUnit.INCH ? Length.ofMillimetres(mm).inches() : mm;
    }

    private static String marked(StaticSide view, String caption) {
        return view.invented() ? "INVENTED · " + caption : caption;
    }
}
