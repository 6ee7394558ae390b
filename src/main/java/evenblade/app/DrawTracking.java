package evenblade.app;

import evenblade.app.JudgeTracking.MarkedTips;
import evenblade.app.JudgeTracking.TrackView;
import evenblade.chart.Caption;
import evenblade.chart.DeviationPicture;
import evenblade.chart.Estimate;
import evenblade.chart.Picture;
import evenblade.tracking.Deviation;
import evenblade.tracking.TrackingAnalysis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Answers what the static side of a job looks like. */
public final class DrawTracking {
    private DrawTracking() {}

    /** The tips as they were marked last. */
    public static Picture tips(TrackView view) {
        MarkedTips last = view.sessions().get(view.sessions().size() - 1);
        String caption =
                "entry " + last.event() + ", " + last.session().layout().text();
        return SketchStatic.marks(view.installation(), last.session(), marked(view, caption))
                .picture()
                .orElseThrow();
    }

    /** What goes with the blades and what stays with the hub; empty where nothing can be told yet. */
    public static Optional<Picture> deviations(TrackView view) {
        return deviations(view, view.now());
    }

    /** The same for one of the stretches without a change. */
    static Optional<Picture> deviations(TrackView view, TrackingAnalysis spell) {
        List<DeviationPicture.Row> blades = rows("blade ", spell.blades());
        List<DeviationPicture.Row> positions = rows("position ", spell.positions());
        if (blades.isEmpty() && positions.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new DeviationPicture(new DeviationPicture.Data(
                Caption.of(marked(
                        view,
                        spell.sessions().size() + " session(s) "
                                + (spell == view.now() ? "since the last change" : "before a change"))),
                "deviation of the tip (mm)",
                blades,
                positions)));
    }

    private static List<DeviationPicture.Row> rows(String what, List<Deviation> deviations) {
        List<DeviationPicture.Row> rows = new ArrayList<>();
        for (Deviation deviation : deviations) {
            deviation
                    .estimate()
                    .ifPresent(e -> rows.add(new DeviationPicture.Row(
                            what + deviation.name(),
                            new Estimate(e.valueMm(), e.lowMm(), e.highMm(), e.lowMm() > 0 || e.highMm() < 0))));
        }
        return rows;
    }

    private static String marked(TrackView view, String caption) {
        return view.invented() ? "INVENTED · " + caption : caption;
    }
}
