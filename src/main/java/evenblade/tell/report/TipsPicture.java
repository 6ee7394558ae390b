package evenblade.tell.report;

import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.tell.chart.BeforeAfterBarsPicture;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.ChartTheme;
import evenblade.tell.chart.MarkKind;
import evenblade.tell.chart.PlottedEstimate;
import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** The tips as they were marked first and last, each above the lowest of its session, blade by blade. */
final class TipsPicture {
    private static final int WIDTH_PX = 1000; // a page at some 150 pixels an inch
    private static final int HEIGHT_PX = 330; // three blades with air between
    /** Each blade beyond the third needs this much more. */
    private static final int MORE_PX = 60;

    private static final int USUAL_BLADES = 3; // what the height is for

    private TipsPicture() {}

    /** Empty where the tips weren't marked twice with the same blades. */
    static Optional<ReportFigure> of(JobRecord record, LengthUnit unit) {
        List<Event> marked = record.standing(Kind.TRACKING);
        if (marked.size() < 2) {
            return Optional.empty();
        }
        Event first = marked.get(0);
        Event last = marked.get(marked.size() - 1);
        TrackingSession before = session(first);
        TrackingSession after = session(last);
        List<String> blades = before.layout().blades().stream().sorted().toList();
        if (!blades.equals(after.layout().blades().stream().sorted().toList())) {
            return Optional.empty();
        }
        List<BeforeAfterBarsPicture.Row> rows = new ArrayList<>();
        for (String blade : blades) {
            rows.add(new BeforeAfterBarsPicture.Row(
                    "blade " + blade, MarkKind.PROPELLER, above(before, blade, unit), above(after, blade, unit), ""));
        }
        String caption = "each tip above the lowest one";
        BeforeAfterBarsPicture picture = new BeforeAfterBarsPicture(
                new BeforeAfterBarsPicture.Data(
                        record.invented() ? Caption.of("INVENTED", caption) : Caption.of(caption),
                        FigureFormat.day(first.at()) + " (" + first.id() + ")",
                        FigureFormat.day(last.at()) + " (" + last.id() + ")",
                        "tip above the lowest (" + unit.sign() + ")",
                        rows),
                "The tips before and after");
        int height = HEIGHT_PX + MORE_PX * Math.max(0, blades.size() - USUAL_BLADES);
        return Optional.of(ReportFigure.drawn(picture, WIDTH_PX, height, ChartTheme.forPage(WIDTH_PX, WIDTH_PX)));
    }

    static TrackingSession session(Event event) {
        return ((Detail.Tracking) event.detail()).session(event.at().toInstant());
    }

    private static PlottedEstimate above(TrackingSession session, String blade, LengthUnit unit) {
        List<Double> marks = session.marksMm();
        int place = session.layout().blades().indexOf(blade);
        double shown = shown(marks.get(place) - Collections.min(marks), unit);
        return new PlottedEstimate(shown, shown, shown, true);
    }

    private static double shown(double mm, LengthUnit unit) {
        return unit == LengthUnit.INCH ? Length.ofMillimetres(mm).inches() : mm;
    }
}
