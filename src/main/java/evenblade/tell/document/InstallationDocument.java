package evenblade.tell.document;

import evenblade.base.fact.Fact;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Limit;
import evenblade.machine.installation.Limit.PitchLimit;
import evenblade.machine.installation.Reduction;

/** Engine, drive and propeller, and the limits that were entered for them. */
public final class InstallationDocument {
    private InstallationDocument() {}

    /** What is installed. */
    public static Document of(Installation installation, Phrases phrases) {
        FigureFormat figures = phrases.figures();
        Document.Builder text = Document.begin();
        installation.name().ifPresent(name -> text.known("As entered", name));
        text.known("Engine", engine(installation.engine()));
        text.known("Drive", drive(installation.reduction()));
        Installation.Propeller propeller = installation.propeller();
        text.known(
                "Propeller",
                FigureFormat.count(propeller.blades(), "blade")
                        + propeller
                                .diameter()
                                .map(diameter -> ", diameter " + figures.large(diameter))
                                .orElse("")
                        + propeller
                                .rotation()
                                .map(rotation -> ", turns " + rotation.word() + " seen from behind")
                                .orElse(""));
        installation
                .sensor()
                .place()
                .ifPresent(place -> text.known(
                        "Sensor",
                        figures.large(place.ahead()) + " ahead of and " + figures.large(place.above())
                                + " above the middle between the engine mounts"));
        return text.done();
    }

    /** What is installed, in one line. */
    public static String inOneLine(Installation installation) {
        Engine engine = installation.engine();
        return installation.name().map(name -> name + ": ").orElse("")
                + engine.cycle().word()
                + (engine.cylinders() == 0 ? "" : ", " + FigureFormat.count(engine.cylinders(), "cylinder"))
                + ", " + FigureFormat.significant(installation.reduction().ratio(), 4)
                + " engine revolutions per propeller revolution, "
                + FigureFormat.count(installation.propeller().blades(), "blade");
    }

    private static String engine(Engine engine) {
        StringBuilder words = new StringBuilder(engine.cycle().word());
        if (engine.cylinders() > 0) {
            words.append(", ").append(FigureFormat.count(engine.cylinders(), "cylinder"));
        }
        engine.idleRpm()
                .ifPresent(rpm ->
                        words.append(", idle ").append(FigureFormat.rpm(rpm)).append(" rpm"));
        engine.maxRpm()
                .ifPresent(rpm ->
                        words.append(", at most ").append(FigureFormat.rpm(rpm)).append(" rpm"));
        return words.toString();
    }

    private static String drive(Reduction reduction) {
        if (reduction.kind() == Reduction.Kind.DIRECT) {
            return "direct: the propeller turns with the crank";
        }
        String kind = reduction.kind() == Reduction.Kind.UNSTATED
                ? ""
                : reduction.kind().word() + ", ";
        String ratio = FigureFormat.fixed(reduction.ratio(), 4) + " engine revolutions per propeller revolution";
        return reduction
                .teeth()
                .map(teeth -> kind + teeth.driving() + " to " + teeth.driven() + " teeth, " + ratio
                        + "; the same teeth meet every " + teeth.engineRevolutionsPerRepeat() + " engine = "
                        + teeth.propellerRevolutionsPerRepeat() + " propeller revolutions")
                .orElse(kind + ratio);
    }

    /** Limits with their statistic and source. */
    public static Document limits(Installation installation, Phrases phrases) {
        Document.TableBuilder table =
                Document.begin().table("").left("what").right("limit").left("source");
        for (Limit limit : installation.limits()) {
            table.row(
                    limit.what() == Limit.Subject.TRACK
                            ? "Tip marks, " + phrases.text(Fact.of(limit.statistic()))
                            : "Flange face run-out, full dial reading",
                    phrases.figures().both(limit.value()),
                    limit.source());
        }
        for (PitchLimit limit : installation.pitchLimits()) {
            table.row(
                    "Blade angles, " + phrases.text(Fact.of(limit.statistic())),
                    FigureFormat.fixed(limit.value().degrees(), 2) + "°",
                    limit.source());
        }
        Document.Builder text = table.end();
        boolean none =
                installation.limits().isEmpty() && installation.pitchLimits().isEmpty();
        return text.say(
                        none ? Block.Tone.PLAIN : Block.Tone.NOTE,
                        none
                                ? "No limits were entered. The propeller maker's figures rule."
                                : "A limit counts only with the number it is meant for: the same marks can pass one and"
                                        + " fail another. The maker's figure comes before any other.")
                .done();
    }
}
