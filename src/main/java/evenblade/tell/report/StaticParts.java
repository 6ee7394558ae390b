package evenblade.tell.report;

import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.judge.tracking.FaceRunOut;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.PitchReadings;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Limit;
import evenblade.machine.installation.PitchLimit;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.TipMarksPicture;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Tracking, pitch and run-out as entered, each held against the limits that were entered for it. */
final class StaticParts {
    private static final int WIDTH_PX = 1000;
    private static final int HEIGHT_PX = 480;

    private final JobRecord record;
    private final Installation installation;
    private final Lengths lengths;

    private StaticParts(JobRecord record, Lengths lengths) {
        this.record = record;
        this.lengths = lengths;
        this.installation = record.installation();
    }

    /** One part per session, in order of time. */
    static List<StaticPart> of(JobRecord record, Lengths lengths) {
        return new StaticParts(record, lengths).parts();
    }

    private List<StaticPart> parts() {
        List<StaticPart> parts = new ArrayList<>();
        for (Event event : record.standing()) {
            if (event.detail() instanceof Detail.Tracking tracking) {
                parts.add(tracking(event, tracking.session(event.at().toInstant())));
            } else if (event.detail() instanceof Detail.Pitch pitch) {
                parts.add(pitch(event, pitch.angles(event.at().toInstant())));
            } else if (event.detail() instanceof Detail.RunOut runOut) {
                parts.add(runOut(event, runOut.reading(event.at().toInstant())));
            }
        }
        return parts;
    }

    private StaticPart tracking(Event event, TrackingSession session) {
        List<Length> marks =
                session.marksMm().stream().map(Length::ofMillimetres).toList();
        List<String> sentences = new ArrayList<>();
        sentences.add("Spread, largest minus smallest: " + lengths.both(Length.ofMillimetres(session.spreadMm()))
                + ". One reading is good to about ± " + lengths.both(session.sigma()) + ".");
        List<Limit> limits = limits(Limit.Subject.TRACK);
        limits.forEach(limit -> sentences.add(verdict(lengths.check(LimitCheck.track(limit, session.marksMm())))));
        if (limits.isEmpty()) {
            sentences.add("No limit on track was entered; the propeller maker's figure rules.");
        }
        return new StaticPart(
                title("Tracking", event),
                positions(session.layout()),
                rows(session, marks),
                sentences,
                List.of(tips(event, session, marks, limits)));
    }

    private List<StaticPart.Row> rows(TrackingSession session, List<Length> marks) {
        StaticPart.Row blades = new StaticPart.Row("Blade", blades(session.layout()));
        StaticPart.Row millimetres = new StaticPart.Row(
                "Mark, mm",
                marks.stream().map(m -> Amounts.fixed(m.millimetres(), 2)).toList());
        StaticPart.Row inches = new StaticPart.Row(
                "Mark, in", marks.stream().map(Amounts::inches).toList());
        return lengths.units() == LengthUnit.INCH
                ? List.of(blades, inches, millimetres)
                : List.of(blades, millimetres, inches);
    }

    private ReportFigure tips(Event event, TrackingSession session, List<Length> marks, List<Limit> limits) {
        List<TipMarksPicture.Tip> tips = IntStream.rangeClosed(1, marks.size())
                .mapToObj(p -> new TipMarksPicture.Tip(session.layout().at(p), String.valueOf(p), marks.get(p - 1)))
                .toList();
        Optional<Length> spread = limits.stream()
                .filter(limit -> limit.statistic() == Limit.Statistic.SPREAD)
                .map(Limit::value)
                .findFirst();
        TipMarksPicture picture = new TipMarksPicture(
                new TipMarksPicture.Data(
                        Caption.of(marked(record, title("tracking", event))), tips, session.sigma(), spread),
                lengths.units());
        return ReportFigure.wide("Tip marks as seen edge on against the block", picture.png(WIDTH_PX, HEIGHT_PX));
    }

    /** A caption that can't be torn off from the word that it was invented. */
    static String marked(JobRecord record, String caption) {
        return record.invented() ? "INVENTED · " + caption : caption;
    }

    private StaticPart pitch(Event event, PitchReadings angles) {
        List<String> sentences = new ArrayList<>();
        sentences.add("Spread, largest minus smallest: " + Amounts.fixed(angles.spreadDeg(), 2) + "°; mean "
                + Amounts.fixed(angles.meanDeg(), 2) + "°. Zero taken on the "
                + (angles.reference() == PitchReadings.Reference.HUB ? "hub" : "level") + ", "
                + Amounts.fixed(angles.zero().degrees(), 2) + "°."
                + angles.station()
                        .map(s -> " Read " + lengths.both(s) + " from the shaft's centre.")
                        .orElse(""));
        for (PitchLimit limit : installation.pitchLimits()) {
            sentences.add(
                    verdict(lengths.check(LimitCheck.pitch(limit, angles.bladeAnglesDeg()))));
        }
        if (installation.pitchLimits().isEmpty()) {
            sentences.add("No limit on pitch was entered; the propeller maker's figure rules.");
        }
        return new StaticPart(
                title("Pitch", event),
                positions(angles.layout()),
                List.of(
                        new StaticPart.Row("Blade", blades(angles.layout())),
                        new StaticPart.Row(
                                "Blade angle, °",
                                angles.bladeAnglesDeg().stream()
                                        .map(a -> Amounts.fixed(a, 2))
                                        .toList())),
                sentences,
                List.of());
    }

    private StaticPart runOut(Event event, FaceRunOut reading) {
        List<String> sentences = new ArrayList<>();
        installation.propeller().diameter().ifPresent(diameter -> {
            Length tip = reading.atTip(Length.ofMetres(diameter.metres() / 2));
            sentences.add("Carried out to the tips this is " + lengths.both(tip)
                    + " of track, largest minus smallest: compare it with the track before the flange is cleared.");
        });
        List<Limit> limits = limits(Limit.Subject.FACE_RUN_OUT);
        limits.forEach(limit -> sentences.add(verdict(lengths.check(LimitCheck.runOut(limit, reading)))));
        if (limits.isEmpty()) {
            sentences.add("No limit on the flange was entered; the maker's figure rules.");
        }
        return new StaticPart(
                title("Flange face run-out", event),
                List.of("Full dial reading", "Dial radius", "Highest at"),
                List.of(new StaticPart.Row(
                        "",
                        List.of(
                                lengths.both(reading.total()),
                                lengths.both(reading.dialRadius()),
                                reading.high()
                                        .map(h -> Amounts.fixed(h.degrees(), 0) + "° from position 1")
                                        .orElse("not noted")))),
                sentences,
                List.of());
    }

    private List<Limit> limits(Limit.Subject subject) {
        return installation.limits().stream()
                .filter(limit -> limit.what() == subject)
                .toList();
    }

    private static String verdict(String check) {
        return "Against the limit: " + check;
    }

    private static String title(String what, Event event) {
        return what + ", " + Amounts.minute(event.at()) + " (" + event.id() + ")";
    }

    private static List<String> positions(Layout layout) {
        return IntStream.rangeClosed(1, layout.positions())
                .mapToObj(p -> "Position " + p)
                .toList();
    }

    private static List<String> blades(Layout layout) {
        return IntStream.rangeClosed(1, layout.positions()).mapToObj(layout::at).toList();
    }
}
