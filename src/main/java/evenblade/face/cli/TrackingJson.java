package evenblade.face.cli;

import evenblade.base.fact.Measure;
import evenblade.base.json.JsonFields;
import evenblade.base.units.Length;
import evenblade.judge.tracking.BestLayout;
import evenblade.judge.tracking.Estimate;
import evenblade.judge.tracking.HubPattern;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.RunOutTest;
import evenblade.judge.tracking.StaticSide;
import evenblade.judge.tracking.StaticSide.BladeAngles;
import evenblade.judge.tracking.StaticSide.DialReading;
import evenblade.judge.tracking.StaticSide.MarkedTips;
import evenblade.judge.tracking.SwapFit.Deviation;
import evenblade.judge.tracking.TrackVerdict.StandOut;
import evenblade.judge.tracking.TrackingAnalysis;
import evenblade.judge.tracking.TrackingSession;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;

/** The JSON form of a job's static side. */
final class TrackingJson {
    private TrackingJson() {}

    static JsonFields of(StaticSide view) {
        TrackingAnalysis now = view.now();
        return new JsonFields()
                .put("job", view.job())
                .put("invented", view.invented())
                .put(
                        "sessions",
                        view.sessions().stream().map(TrackingJson::session).toList())
                .put("blades", deviations(now.blades()))
                .put("positions", deviations(now.positions()))
                .put("separable", now.separable())
                .put("verdict", verdict(now))
                .put("nextLayout", layout(now.nextLayout().layout()))
                .put("bestLayout", best(now.bestLayout()))
                .put("trackNow", trackNow(now))
                .put("sessionsUsed", now.sessions().size())
                .put(
                        "earlier",
                        view.spells().subList(0, view.spells().size() - 1).stream()
                                .map(spell -> new JsonFields()
                                        .put(
                                                "from",
                                                view.at(spell.sessions().get(0)).toString())
                                        .put("sessions", spell.sessions().size())
                                        .put("verdict", verdict(spell)))
                                .toList())
                .put(
                        "runOuts",
                        view.runOuts().stream().map(TrackingJson::runOut).toList())
                .put("runOutTest", view.runOutTest().map(TrackingJson::test))
                .put("pitches", view.pitches().stream().map(TrackingJson::pitch).toList())
                .put("coupleNewtonMetres", view.couple().map(c -> c.newtonMetres()))
                .put("thrustOffsetNewtons", view.thrust().map(t -> t.thrustNewtons()))
                .put("thrustCoupleNewtonMetres", view.thrust().map(t -> t.coupleNewtonMetres()))
                .put("liftSlopePerRadian", view.thrust().map(t -> t.liftSlopePerRadian()))
                .put("warnings", WarningText.json(now.warnings()));
    }

    private static JsonFields session(MarkedTips tips) {
        TrackingSession session = tips.session();
        Map<String, Object> marks = new LinkedHashMap<>();
        Map<String, Object> rounds = new LinkedHashMap<>();
        for (int p = 1; p <= session.layout().positions(); p++) {
            marks.put(String.valueOf(p), session.marksMm().get(p - 1));
            rounds.put(
                    String.valueOf(p),
                    session.readings().get(p - 1).stream()
                            .map(Length::millimetres)
                            .toList());
        }
        return new JsonFields()
                .put("event", tips.event())
                .put("at", tips.at().toString())
                .put("layout", layout(session.layout()))
                .put("readingsMm", marks)
                .put("roundsMm", rounds)
                .put("sigmaMm", session.sigma().millimetres())
                .put("spreadMm", session.spreadMm())
                .put("onceATurnMm", HubPattern.of(session.marksMm()).onceATurn())
                .put("twiceATurnMm", HubPattern.of(session.marksMm()).twiceATurn())
                .put("withinLimit", tips.withinLimit())
                .put(
                        "usualFigures",
                        tips.usual().stream()
                                .map(u -> new JsonFields()
                                        .put("figure", u.figure().word())
                                        .put("measuredMm", u.measuredMm())
                                        .put("allowedMm", u.allowedMm())
                                        .put("kept", u.kept()))
                                .toList())
                .put("limits", tips.checks().stream().map(TrackingJson::check).toList());
    }

    private static JsonFields check(LimitCheck check) {
        return new JsonFields()
                .put("statistic", check.statistic().word())
                .put("measured", check.measured())
                .put("allowed", check.allowed())
                .put("unit", check.measure() == Measure.LENGTH ? "mm" : "°")
                .put("source", check.source())
                .put("outcome", check.outcome().word());
    }

    private static Map<String, Object> layout(Layout layout) {
        Map<String, Object> named = new LinkedHashMap<>();
        layout.byPosition().forEach((position, blade) -> named.put(String.valueOf(position), blade));
        return named;
    }

    private static Map<String, Object> deviations(List<Deviation> deviations) {
        Map<String, Object> named = new LinkedHashMap<>();
        for (Deviation deviation : deviations) {
            named.put(
                    deviation.name(),
                    new JsonFields()
                            .put("deviationMm", deviation.estimate().map(Estimate::valueMm))
                            .put("standardErrorMm", deviation.estimate().map(Estimate::standardErrorMm))
                            .put("ciLowMm", deviation.estimate().map(Estimate::lowMm))
                            .put("ciHighMm", deviation.estimate().map(Estimate::highMm)));
        }
        return named;
    }

    private static JsonFields verdict(TrackingAnalysis analysis) {
        return new JsonFields()
                .put("kind", analysis.verdict().kind().word())
                .put("names", analysis.verdict().names())
                .put("text", WarningText.of(analysis.verdict().fact()))
                .put("firm", analysis.verdict().firm())
                .put("suspect", analysis.verdict().suspect().map(s -> new JsonFields()
                        .put("session", s.session())
                        .put("position", String.valueOf(s.position()))
                        .put("offMm", s.offMm())))
                .put(
                        "perhaps",
                        analysis.verdict().perhaps().stream()
                                .map(StandOut::name)
                                .toList());
    }

    private static JsonFields best(BestLayout best) {
        return new JsonFields()
                .put("layout", layout(best.layout()))
                .put("predictedSpreadMm", best.predictedSpread().valueMm())
                .put("ciLowMm", best.predictedSpread().lowMm())
                .put("ciHighMm", best.predictedSpread().highMm())
                .put("spreadNowMm", best.spreadNow().valueMm())
                .put("bladesMoved", best.blades())
                .put("allTried", best.allTried());
    }

    private static Map<String, Object> trackNow(TrackingAnalysis now) {
        Map<String, Object> byPosition = new LinkedHashMap<>();
        for (int p = 0; p < now.trackNow().size(); p++) {
            Estimate tip = now.trackNow().get(p);
            byPosition.put(
                    String.valueOf(p + 1),
                    new JsonFields().put("deviationMm", tip.valueMm()).put("standardErrorMm", tip.standardErrorMm()));
        }
        return byPosition;
    }

    private static JsonFields runOut(DialReading dial) {
        return new JsonFields()
                .put("event", dial.event())
                .put("at", dial.at().toString())
                .put("totalMm", dial.reading().total().millimetres())
                .put("dialRadiusMm", dial.reading().dialRadius().millimetres())
                .put("highDeg", dial.reading().high().map(a -> a.degrees()))
                .put("atTipMm", dial.atTip().map(Length::millimetres))
                .put("limits", dial.checks().stream().map(TrackingJson::check).toList());
    }

    private static JsonFields test(RunOutTest test) {
        return new JsonFields()
                .put(
                        "answer",
                        test.answer().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'))
                .put("share", test.share())
                .put("ciLow", test.shareLow())
                .put("ciHigh", test.shareHigh())
                .put("text", WarningText.of(test.fact()));
    }

    private static JsonFields pitch(BladeAngles angles) {
        Map<String, Object> blades = new LinkedHashMap<>();
        SortedMap<String, Double> errors = angles.readings().standardErrorsDeg();
        angles.readings()
                .deviationsDeg()
                .forEach((blade, deviation) -> blades.put(
                        blade,
                        new JsonFields().put("deviationDeg", deviation).put("standardErrorDeg", errors.get(blade))));
        return new JsonFields()
                .put("event", angles.event())
                .put("at", angles.at().toString())
                .put("layout", layout(angles.readings().layout()))
                .put("meanDeg", angles.readings().meanDeg())
                .put("spreadDeg", angles.readings().spreadDeg())
                .put("zeroDeg", angles.readings().zero().degrees())
                .put("reference", angles.readings().reference().word())
                .put("stationMm", angles.readings().station().map(Length::millimetres))
                .put("blades", blades)
                .put("limits", angles.checks().stream().map(TrackingJson::check).toList());
    }
}
