package evenblade.face.cli;

import evenblade.base.fact.Fact;
import evenblade.base.json.JsonFields;
import evenblade.face.app.WeighFindings.Answer;
import evenblade.judge.findings.Carried;
import evenblade.judge.findings.Cause;
import evenblade.judge.findings.EvidenceItem;
import evenblade.judge.findings.Finding;
import evenblade.judge.findings.RunEvidence.RunRef;
import evenblade.judge.tie.JobTie;
import evenblade.judge.tie.Size;
import evenblade.judge.tie.SmoothestLayout;
import evenblade.judge.tie.TieAnswer;
import evenblade.judge.tie.TrackTie;
import evenblade.tell.document.TieDocument;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The JSON form of a job's findings. */
final class FindingsJson {
    private FindingsJson() {}

    static JsonFields of(Answer answer) {
        return new JsonFields()
                .put("job", answer.job())
                .put("invented", answer.invented())
                .put("runs", answer.runs())
                .put(
                        "findings",
                        answer.findings().list().stream()
                                .map(FindingsJson::finding)
                                .toList())
                .put("tie", answer.tie().map(FindingsJson::tie))
                .put("smoothestLayout", answer.tie().flatMap(JobTie::smoothest).map(FindingsJson::smoothest))
                .put("warnings", WarningText.json(answer.warnings()));
    }

    private static JsonFields finding(Finding finding) {
        return new JsonFields()
                .put("cause", finding.cause().word())
                .put("among", finding.among().stream().map(Cause::word).toList())
                .put("statement", WarningText.of(finding.statement()))
                .put("sureness", finding.sureness().share())
                .put("confident", finding.sureness().confident())
                .put("howSure", WarningText.of(Fact.of(finding.sureness().word())))
                .put("carriesMmS", finding.carried().map(Carried::mmS))
                .put("carriesShare", finding.carried().map(Carried::share))
                .put("open", finding.open())
                .put("goneSince", finding.goneSince().map(RunRef::name))
                .put("for", pieces(finding.speaksFor()))
                .put("against", pieces(finding.speaksAgainst()))
                .put("next", WarningText.of(finding.next()));
    }

    private static List<JsonFields> pieces(List<EvidenceItem> pieces) {
        return pieces.stream()
                .map(p -> new JsonFields()
                        .put("text", WarningText.of(p.fact()))
                        .put("points", p.points())
                        .put("measured", p.origin() == EvidenceItem.Origin.RUNNING ? "running" : "standing"))
                .toList();
    }

    private static JsonFields tie(JobTie tie) {
        JsonFields json = new JsonFields();
        if (tie.answer() instanceof TieAnswer.NotYet notYet) {
            json.put("tied", false)
                    .put("why", WarningText.of(notYet.why()))
                    .put("whatWouldSettle", WarningText.of(notYet.whatWouldSettle()))
                    .put(
                            "runs",
                            tie.runs().stream()
                                    .map(run -> new JsonFields()
                                            .put("run", run.label())
                                            .put("trackMm", run.trackSizeMm())
                                            .put("amplitude", run.amplitude())
                                            .put("standardError", run.standardError()))
                                    .toList());
        } else {
            tied(json, (TieAnswer.Tied) tie.answer());
        }
        return json.put("engineRpm", tie.engineRpm())
                .put("channel", tie.channel())
                .put("unit", tie.unit().symbol())
                .put("byPhase", tie.phase())
                .put("positionsCounted", tie.counting().word())
                .put("positionsCountedEntered", tie.countingEntered())
                .put("text", TieDocument.sentences(tie, WarningText.PHRASES));
    }

    private static void tied(JsonFields json, TieAnswer.Tied tied) {
        TrackTie tie = tied.tie();
        json.put("tied", true)
                .put("trackMatters", tie.trackMatters())
                .put("follows", tied.follows() == TieAnswer.Follows.TRACK ? "track" : "blades")
                .put("left", size(tie.left()))
                .put("perMillimetre", size(tie.perMillimetre()))
                .put("perDegree", tie.perDegree().map(FindingsJson::size))
                .put("pitchLeftOut", tied.pitchLeftOut().map(WarningText::of))
                .put(
                        "runs",
                        tie.shares().stream()
                                .map(s -> new JsonFields()
                                        .put("run", s.label())
                                        .put("amplitude", s.measured())
                                        .put("withTrack", size(s.withTrack())))
                                .toList());
    }

    private static JsonFields smoothest(SmoothestLayout layout) {
        Map<String, Object> named = new LinkedHashMap<>();
        layout.layout().byPosition().forEach((position, blade) -> named.put(String.valueOf(position), blade));
        return new JsonFields()
                .put("layout", named)
                .put("predicted", size(layout.predicted()))
                .put("now", size(layout.now()))
                .put("allTried", layout.allTried());
    }

    private static JsonFields size(Size size) {
        return new JsonFields()
                .put("value", size.value())
                .put("ciLow", size.low())
                .put("ciHigh", Double.isFinite(size.high()) ? size.high() : null);
    }
}
