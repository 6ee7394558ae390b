package evenblade.tell.report;

import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Limit;
import evenblade.machine.installation.PitchLimit;
import evenblade.machine.installation.Reduction;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.LimitWords;
import evenblade.tell.report.ReportContent.LimitRow;
import java.util.ArrayList;
import java.util.List;

/** Engine, drive, propeller and limits in words. */
final class InstallationFacts {
    private InstallationFacts() {}

    static List<KnownThing> of(Installation installation, FigureFormat lengths) {
        List<KnownThing> facts = new ArrayList<>();
        installation.name().ifPresent(name -> facts.add(new KnownThing("As entered", name)));
        facts.add(new KnownThing("Engine", engine(installation.engine())));
        facts.add(new KnownThing("Drive", drive(installation.reduction())));
        Installation.Propeller propeller = installation.propeller();
        StringBuilder words = new StringBuilder(propeller.blades() + " blades");
        propeller.diameter().ifPresent(d -> words.append(", diameter ").append(lengths.large(d)));
        propeller
                .rotation()
                .ifPresent(r -> words.append(", turns ").append(r.word()).append(" seen from behind"));
        facts.add(new KnownThing("Propeller", words.toString()));
        return facts;
    }

    private static String engine(Engine engine) {
        StringBuilder words = new StringBuilder(engine.cycle().word());
        if (engine.cylinders() > 0) {
            words.append(", ").append(FigureFormat.count(engine.cylinders(), "cylinder"));
        }
        engine.idleRpm()
                .ifPresent(rpm ->
                        words.append(", idle ").append(FigureFormat.fixed(rpm, 0)).append(" rpm"));
        engine.maxRpm()
                .ifPresent(rpm ->
                        words.append(", at most ").append(FigureFormat.fixed(rpm, 0)).append(" rpm"));
        return words.toString();
    }

    private static String drive(Reduction reduction) {
        if (reduction.kind() == Reduction.Kind.DIRECT) {
            return "direct: one engine revolution per propeller revolution";
        }
        String kind = reduction.kind() == Reduction.Kind.UNSTATED
                ? ""
                : reduction.kind().word() + ", ";
        String ratio = FigureFormat.fixed(reduction.ratio(), 4) + " engine revolutions per propeller revolution";
        return kind
                + ratio
                + reduction
                        .teeth()
                        .map(t -> " (" + t.driving() + " teeth driving " + t.driven() + ")")
                        .orElse("");
    }

    static List<LimitRow> limits(Installation installation, FigureFormat lengths) {
        List<LimitRow> rows = new ArrayList<>();
        for (Limit limit : installation.limits()) {
            String what = limit.what() == Limit.Subject.TRACK
                    ? "Tip marks, " + LimitWords.statistic(limit.statistic())
                    : "Flange face run-out, full dial reading";
            rows.add(new LimitRow(what, lengths.both(limit.value()), limit.source()));
        }
        for (PitchLimit limit : installation.pitchLimits()) {
            rows.add(new LimitRow(
                    "Blade angles, " + LimitWords.statistic(limit.statistic()),
                    FigureFormat.fixed(limit.value().degrees(), 2) + "°",
                    limit.source()));
        }
        return rows;
    }
}
