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
        TrackingAnalysis now = view.now();
        List<DeviationPicture.Row> blades = rows("blade ", now.blades());
        List<DeviationPicture.Row> positions = rows("position ", now.positions());
        if (blades.isEmpty() && positions.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new DeviationPicture(new DeviationPicture.Data(
                Caption.of(marked(view, now.sessions().size() + " session(s) since the last change")),
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
                            what + deviation.name(), new Estimate(e.valueMm(), e.lowMm(), e.highMm(), true))));
        }
        return rows;
    }

    private static String marked(TrackView view, String caption) {
        return view.invented() ? "INVENTED · " + caption : caption;
    }
}
