package evenblade.face.app;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.problem.BadInput;
import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.judge.tracking.FaceRunOut;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.PitchReadings;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.job.Detail;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Limit;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.TipMarksPicture;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Answers what static readings come to while they are being typed, before they are written down. */
public final class SketchStatic {
    private SketchStatic() {}

    /**
     * What there is to see of readings that may not be complete.
     *
     * @param picture of the tips, from two marks on
     * @param sentences what the readings come to, against each limit with its source
     */
    public record Sketch(Optional<Picture> picture, List<Fact> sentences) {
        public Sketch {
            sentences = List.copyOf(sentences);
        }
    }

    /**
     * A mark as typed so far.
     *
     * @param position hub position, from 1
     * @param blade on it
     * @param length with its unit
     */
    public record Mark(int position, String blade, String length) {}

    /**
     * Tip marks while they are typed; one that can't be read yet is left out.
     *
     * @param caption of the picture
     * @param unit shown first
     */
    public static Sketch marks(Installation installation, List<Mark> marks, String caption, LengthUnit unit) {
        List<TipMarksPicture.Tip> tips = new ArrayList<>();
        for (Mark mark : marks) {
            readable(mark.length())
                    .ifPresent(length ->
                            tips.add(new TipMarksPicture.Tip(mark.blade(), String.valueOf(mark.position()), length)));
        }
        if (tips.size() < 2) {
            return new Sketch(Optional.empty(), List.of());
        }
        Picture picture = picture(installation, tips, TrackingSession.USUAL_SIGMA, caption, unit);
        if (tips.size() < marks.size()) {
            return new Sketch(Optional.of(picture), List.of());
        }
        List<Double> mm = tips.stream().map(tip -> tip.mark().millimetres()).toList();
        return new Sketch(Optional.of(picture), trackSentences(installation, mm));
    }

    /** The marks of a session that was written down. */
    public static Sketch marks(Installation installation, TrackingSession session, String caption, LengthUnit unit) {
        Layout layout = session.layout();
        List<TipMarksPicture.Tip> tips = IntStream.rangeClosed(1, layout.positions())
                .mapToObj(p -> new TipMarksPicture.Tip(
                        layout.at(p),
                        String.valueOf(p),
                        Length.ofMillimetres(session.marksMm().get(p - 1))))
                .toList();
        return new Sketch(
                Optional.of(picture(installation, tips, session.sigma(), caption, unit)),
                trackSentences(installation, session.marksMm()));
    }

    /** Blade angles. */
    public static Sketch pitch(Installation installation, Detail.Pitch pitch) {
        PitchReadings readings = pitch.angles(Instant.EPOCH);
        List<Fact> sentences = new ArrayList<>();
        sentences.add(Fact.of(
                SketchFact.ANGLES,
                Measure.ANGLE.of(readings.spreadDeg()),
                Measure.ANGLE.of(readings.meanDeg()),
                new Quoted(readings.reference().word())));
        readings.deviationsDeg()
                .forEach((blade, off) -> sentences.add(Fact.of(
                        SketchFact.ANGLE_OFF,
                        new Quoted(blade),
                        Measure.ANGLE.of(off),
                        Measure.ANGLE.of(readings.standardErrorsDeg().get(blade)))));
        sentences.addAll(said(LimitCheck.pitch(installation.pitchLimits(), readings.bladeAnglesDeg())));
        if (installation.pitchLimits().isEmpty()) {
            sentences.add(Fact.of(SketchFact.NO_PITCH_LIMIT));
        }
        return new Sketch(Optional.empty(), sentences);
    }

    /** Face run-out, carried out to the tips where the diameter is known. */
    public static Sketch runOut(Installation installation, Detail.RunOut runOut) {
        FaceRunOut reading = runOut.reading(Instant.EPOCH);
        List<Fact> sentences = new ArrayList<>();
        installation
                .propeller()
                .diameter()
                .map(diameter -> reading.atTip(Length.ofMetres(diameter.metres() / 2)))
                .ifPresentOrElse(
                        tip -> sentences.add(Fact.of(
                                SketchFact.DIAL_AT_TIPS,
                                Measure.LENGTH.of(reading.total().metres()),
                                Measure.LENGTH.of(tip.metres()))),
                        () -> sentences.add(Fact.of(SketchFact.ENTER_DIAMETER)));
        sentences.addAll(said(LimitCheck.runOut(installation.limits(), reading)));
        return new Sketch(Optional.empty(), sentences);
    }

    private static List<Fact> said(List<LimitCheck> checks) {
        return checks.stream()
                .map(check -> Fact.of(SketchFact.AGAINST_LIMIT, check.fact()))
                .toList();
    }

    private static List<Fact> trackSentences(Installation installation, List<Double> mm) {
        List<Fact> sentences = said(LimitCheck.track(installation.limits(), mm));
        return sentences.isEmpty() ? List.of(Fact.of(SketchFact.NO_TRACK_LIMIT)) : sentences;
    }

    private static Picture picture(
            Installation installation, List<TipMarksPicture.Tip> tips, Length sigma, String caption, LengthUnit unit) {
        Optional<Length> spread = installation.limits().stream()
                .filter(limit -> limit.what() == Limit.Subject.TRACK && limit.statistic() == Limit.Statistic.SPREAD)
                .map(Limit::value)
                .findFirst();
        return new TipMarksPicture(new TipMarksPicture.Data(Caption.of(caption), tips, sigma, spread), unit);
    }

    private static Optional<Length> readable(String text) {
        try {
            return Optional.of(Length.parse(text, BadInput.in("mark")));
        } catch (BadInput e) {
            return Optional.empty();
        }
    }

    /** What static readings come to while they are typed. */
    enum SketchFact implements Code {
        ANGLES,
        ANGLE_OFF,
        NO_PITCH_LIMIT,
        DIAL_AT_TIPS,
        ENTER_DIAMETER,
        AGAINST_LIMIT,
        NO_TRACK_LIMIT
    }
}
