package evenblade.tell.document;

import evenblade.base.units.LengthUnit;
import evenblade.judge.tracking.BestLayout;
import evenblade.judge.tracking.HubPattern;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.PitchReadings;
import evenblade.judge.tracking.StaticSide;
import evenblade.judge.tracking.StaticSide.BladeAngles;
import evenblade.judge.tracking.StaticSide.DialReading;
import evenblade.judge.tracking.StaticSide.MarkedTips;
import evenblade.judge.tracking.SwapFit.Deviation;
import evenblade.judge.tracking.TrackingAnalysis;
import evenblade.judge.tracking.TrackingSession;
import evenblade.tell.document.Block.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The static side of a job: what the tip marks say together, the flange, the blade angles, what to try and to keep. */
public final class TrackingDocument {
    /** Blades side by side that still fit beside time and spread on 80 columns. */
    private static final int MOST_ACROSS = 4;

    private final StaticSide side;
    private final Phrases phrases;
    private final FigureFormat figures;
    private final Document.Builder text = Document.begin();

    private TrackingDocument(StaticSide side, Phrases phrases) {
        this.side = side;
        this.phrases = phrases;
        this.figures = phrases.figures();
    }

    /** The whole answer; tip marks are left out where there are none. */
    public static Document of(StaticSide side, Phrases phrases) {
        TrackingDocument document = new TrackingDocument(side, phrases);
        if (!side.sessions().isEmpty()) {
            document.verdict();
            document.marks();
            document.shares();
            document.layouts();
        }
        document.flange();
        document.pitch();
        return document.text.done();
    }

    /** What has to be said of tip marks the moment they are written down: the spread, and whether it may stay so. */
    public static Document entered(MarkedTips tips, Phrases phrases) {
        FigureFormat figures = phrases.figures();
        Document.Builder text = Document.begin();
        text.known("spread", figures.both(tips.session().spreadMm()));
        if (tips.withinLimit().map(within -> !within).orElse(false)) {
            text.say(Tone.CAUTION, "BEYOND THE LIMIT: don't run it like this before the maker's figure is looked up.");
        }
        checks("limit", tips.checks(), text, phrases);
        if (tips.checks().isEmpty()) {
            unlimited(text, tips, phrases);
        }
        return text.done();
    }

    /** Where no limit was entered, the figures that people use stand beside the marks. */
    private static void unlimited(Document.Builder text, MarkedTips tips, Phrases phrases) {
        text.known("limit", "none for the track is entered: the propeller maker's figure rules");
        tips.usual().forEach(figure -> text.known("usual figure", phrases.text(figure.fact())));
    }

    private void verdict() {
        text.facts(Tone.ANSWER, phrases, List.of(side.now().verdict().fact()));
        List<TrackingAnalysis> spells = side.spells();
        for (TrackingAnalysis spell : spells.subList(0, spells.size() - 1)) {
            List<TrackingSession> sessions = spell.sessions();
            text.say("Until " + minute(sessions.get(sessions.size() - 1)) + ": "
                    + phrases.text(spell.verdict().fact()));
        }
        if (spells.size() > 1) {
            text.say("From " + minute(side.now().sessions().get(0))
                    + " on the marks don't fit with that any more: what was changed shows. What follows is from "
                    + FigureFormat.count(side.now().sessions().size(), "session") + " since.");
        }
        text.warnings(Tone.CAUTION, phrases, side.now().warnings());
        side.couple()
                .ifPresent(couple -> text.say("As marked last, the blades make a turning moment of about "
                        + FigureFormat.rough(couple.newtonMetres())
                        + " N·m at the engine's highest speed (an estimate for the order of magnitude)."));
    }

    private void marks() {
        int positions = side.sessions().get(0).session().layout().positions();
        int tables = (positions + MOST_ACROSS - 1) / MOST_ACROSS;
        int across = (positions + tables - 1) / tables;
        for (int from = 0; from < positions; from += across) {
            marks(from, Math.min(positions, from + across));
        }
        for (MarkedTips tips : side.sessions()) {
            checks(minute(tips.session()), tips.checks());
        }
        MarkedTips last = side.sessions().get(side.sessions().size() - 1);
        if (last.checks().isEmpty()) {
            unlimited(text, last, phrases);
        }
        text.known(
                "reading",
                "one is good to about ± " + figures.both(last.session().sigma()));
        HubPattern pattern = HubPattern.of(last.session().marksMm());
        text.known(
                "pattern",
                "in the last session the disc tilts by " + figures.both(pattern.onceATurn())
                        + " once a turn, which shakes at 1×"
                        + (pattern.twiceATurn().isPresent()
                                ? "; twice a turn "
                                        + figures.both(pattern.twiceATurn().getAsDouble()) + ", which shakes at 2×"
                                : ""));
        for (int i = 0; i < side.sessions().size(); i++) {
            text.add(new Block.Picture(new PictureSlot(PictureSlot.Shows.TIPS, i)));
        }
    }

    private void marks(int from, int to) {
        Document.TableBuilder table = text.table("Tip marks in "
                        + (figures.unit() == LengthUnit.INCH
                                ? "inches"
                                : figures.unit().sign()) + ", blade and mark by hub position (times in UTC)")
                .left("session");
        for (int p = from; p < to; p++) {
            table.right("position " + (p + 1));
        }
        table.right("spread");
        for (MarkedTips tips : side.sessions()) {
            TrackingSession session = tips.session();
            List<String> row = new ArrayList<>(List.of(minute(session)));
            for (int p = from; p < to; p++) {
                row.add(session.layout().at(p + 1) + "  "
                        + figures.number(session.marksMm().get(p)));
            }
            row.add(figures.number(session.spreadMm()));
            table.row(row.toArray(String[]::new));
        }
        table.end();
    }

    private void shares() {
        for (int i = 0; i < side.spells().size(); i++) {
            text.add(new Block.Picture(new PictureSlot(PictureSlot.Shows.DEVIATIONS, i)));
        }
        TrackingAnalysis now = side.now();
        Document.TableBuilder table = text.table(
                        "Off the mean, in " + figures.unit().sign() + ", with 95 % interval")
                .left("")
                .point("off")
                .left("interval");
        if (all(now).anyMatch(deviation -> deviation.estimate().isPresent())) {
            now.blades().forEach(each -> deviation(table, "blade ", each));
            now.positions().forEach(each -> deviation(table, "position ", each));
        }
        table.end();
        String open = Stream.concat(open("blade ", now.blades()), open("position ", now.positions()))
                .collect(Collectors.joining(", "));
        if (!open.isEmpty()) {
            text.say(
                    Tone.NOTE,
                    "Can't be separated yet: " + open
                            + ". What belongs to the blade and what to its place is one figure so far.");
        } else {
            text.say(
                    Tone.NOTE,
                    now.separable()
                            ? "Every blade and every hub position can be separated from the others."
                            : "Each is known against the mean of all, but not every difference between two of them.");
        }
    }

    private static Stream<Deviation> all(TrackingAnalysis now) {
        return Stream.concat(now.blades().stream(), now.positions().stream());
    }

    private static Stream<String> open(String what, List<Deviation> deviations) {
        return deviations.stream()
                .filter(deviation -> deviation.estimate().isEmpty())
                .map(deviation -> what + deviation.name());
    }

    private void deviation(Document.TableBuilder table, String what, Deviation deviation) {
        table.row(
                what + deviation.name(),
                deviation.estimate().map(e -> figures.offset(e.valueMm())).orElse("?"),
                deviation
                        .estimate()
                        .map(e -> figures.offset(e.lowMm()) + " to " + figures.offset(e.highMm()))
                        .orElse("not separated yet"));
    }

    private void layouts() {
        TrackingAnalysis now = side.now();
        BestLayout best = now.bestLayout();
        text.heading("What to try next, and the best order");
        text.known(
                "to learn more",
                "mark again with " + now.nextLayout().layout().text()
                        + ": the least known difference would then be good to ± "
                        + figures.both(now.nextLayout().worstStandardErrorMm()) + " (one standard error)");
        text.known(
                "best order",
                "of those that can be predicted " + best.layout().text() + ", predicted spread "
                        + figures.both(best.predictedSpread().valueMm()) + ", 95 %: "
                        + figures.number(best.predictedSpread().lowMm()) + " to "
                        + figures.first(best.predictedSpread().highMm())
                        + (best.blades() == 0
                                ? ", which is how it stands"
                                : "; as it stands "
                                        + figures.both(best.spreadNow().valueMm())));
        text.handsOff();
    }

    private void flange() {
        text.heading("Flange face");
        if (side.runOuts().isEmpty()) {
            text.say("No run-out entered. Read it before the flange is cleared: a small reading at the dial is a large"
                    + " one at the tip.");
        }
        for (DialReading dial : side.runOuts()) {
            String when = FigureFormat.minute(dial.at());
            text.known(
                    when,
                    figures.both(dial.reading().total()) + " in all at a radius of "
                            + figures.both(dial.reading().dialRadius())
                            + dial.reading()
                                    .high()
                                    .map(high -> ", highest at " + FigureFormat.fixed(high.degrees(), 0)
                                            + "° from position 1")
                                    .orElse("")
                            + dial.atTip()
                                    .map(tip -> ": " + figures.both(tip) + " at the tips")
                                    .orElse("; enter the propeller's diameter to carry it out to the tips"));
            checks(when, dial.checks());
        }
        side.runOutTest().ifPresent(test -> text.facts(Tone.PLAIN, phrases, List.of(test.fact())));
    }

    private void pitch() {
        if (side.pitches().isEmpty()) {
            return;
        }
        text.heading("Blade angles");
        for (BladeAngles angles : side.pitches()) {
            PitchReadings readings = angles.readings();
            String when = FigureFormat.minute(angles.at());
            SortedMap<String, Double> errors = readings.standardErrorsDeg();
            String blades = readings.deviationsDeg().entrySet().stream()
                    .map(off -> off.getKey() + " " + FigureFormat.offset(off.getValue(), 2) + " ± "
                            + FigureFormat.fixed(errors.get(off.getKey()), 2))
                    .collect(Collectors.joining("; "));
            text.known(
                    when,
                    "spread " + FigureFormat.fixed(readings.spreadDeg(), 2) + "°, mean "
                            + FigureFormat.fixed(readings.meanDeg(), 2) + "° from a zero on the "
                            + readings.reference().word()
                            + readings.station()
                                    .map(station -> ", at " + figures.both(station) + " from the shaft's centre")
                                    .orElse("")
                            + "; off the mean " + blades);
            checks(when, angles.checks());
        }
        if (side.installation().pitchLimits().isEmpty()) {
            text.known("limit", "none on pitch is entered: the propeller maker's figure rules");
        }
        side.thrust()
                .ifPresent(thrust -> text.say("As read last, the strongest blade pulls roughly "
                        + FigureFormat.rough(thrust.thrustNewtons())
                        + " N more than the weakest at the engine's highest speed, which makes a turning moment of about "
                        + FigureFormat.rough(thrust.coupleNewtonMetres())
                        + " N·m (an estimate for the order of magnitude, rather too large, with a lift slope of "
                        + FigureFormat.fixed(thrust.liftSlopePerRadian(), 1) + " per radian)."));
    }

    private void checks(String when, List<LimitCheck> checks) {
        checks(when, checks, text, phrases);
    }

    private static void checks(String name, List<LimitCheck> checks, Document.Builder text, Phrases phrases) {
        checks.forEach(check -> text.known(name, phrases.text(check.fact()) + "."));
    }

    /** How tip marks come out against the limits that apply, as the end of a sentence about their spread. */
    public static String againstLimits(List<LimitCheck> checks, Phrases phrases) {
        String said = checks.stream()
                .filter(LimitCheck::applies)
                .map(check -> phrases.text(check.against()))
                .collect(Collectors.joining(", "));
        return said.isEmpty() ? "no limit entered" : said;
    }

    private String minute(TrackingSession session) {
        return FigureFormat.minute(side.at(session));
    }
}
