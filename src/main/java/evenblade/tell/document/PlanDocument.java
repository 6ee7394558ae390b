package evenblade.tell.document;

import evenblade.base.fact.Fact;
import evenblade.machine.installation.Beat;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.plan.Place;
import evenblade.machine.plan.PlannedDwell;
import evenblade.machine.plan.PlannedDwell.ClosePair;
import evenblade.machine.plan.PlannedDwell.PlannedLine;
import evenblade.machine.plan.RunPlan;
import evenblade.tell.document.Block.Tone;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** What a ground run will show, and the card to run it by. */
public final class PlanDocument {
    /** Dwells side by side that still fit on 80 columns. */
    private static final int DWELLS_PER_TABLE = 5;

    /** A place to write on. */
    private static final String BLANK = "________";
    /** What is only known beside the aircraft; an even number of them. */
    private static final List<String> BLANKS = List.of(
            "Date, time",
            "Wind, air",
            "Fuel on board",
            "At the controls",
            "Who stands where",
            "Sign for stop",
            "Sensor, place",
            "Directions",
            "Changed since",
            "Recording");

    private final RunPlan plan;
    private final Phrases phrases;
    private final Document.Builder text = Document.begin();

    private PlanDocument(RunPlan plan, Phrases phrases) {
        this.phrases = phrases;
        this.plan = plan;
    }

    /** The plan with its card at the end. */
    public static Document of(RunPlan plan, Phrases phrases) {
        PlanDocument document = new PlanDocument(plan, phrases);
        document.text.addAll(InstallationDocument.of(plan.installation(), phrases));
        document.lines();
        document.card();
        return document.text.done();
    }

    /** The card first, then what the run will show. */
    public static Document cardFirst(RunPlan plan, Phrases phrases) {
        PlanDocument document = new PlanDocument(plan, phrases);
        document.card();
        document.lines();
        return document.text.done();
    }

    private void lines() {
        orders();
        coincident();
        close();
        throbs();
        beyondRange();
        if (!plan.warnings().isEmpty()) {
            text.heading("To know").warnings(Tone.ITEM, phrases, plan.warnings());
        }
    }

    private void orders() {
        List<PlannedDwell> dwells = plan.dwells();
        for (int from = 0; from == 0 || from < dwells.size(); from += DWELLS_PER_TABLE) {
            List<PlannedDwell> some = dwells.subList(from, Math.min(dwells.size(), from + DWELLS_PER_TABLE));
            orders(some);
            if (some.stream().anyMatch(PlanDocument::missesSome)) {
                text.say(Tone.NOTE, "* beyond what the sensor can measure, see below");
            }
        }
    }

    private void orders(List<PlannedDwell> dwells) {
        boolean electric = plan.installation().engine().cycle() == Engine.Cycle.ELECTRIC;
        Document.TableBuilder table = text.table(
                        dwells.isEmpty() ? "Orders" : "Where the orders are, in Hz at the engine rpm above them")
                .left("line");
        double ratio = plan.installation().reduction().ratio();
        boolean oneShaft = ratio == 1;
        if (oneShaft) {
            table.right("order");
        } else {
            table.right("propeller").right(electric ? "motor" : "crank");
        }
        dwells.forEach(dwell -> table.right(FigureFormat.rpm(dwell.engineRpm())));
        List<OrderLine> lines = plan.installation().orders().lines();
        for (OnePlace<OrderLine> place : OnePlace.of(lines, Function.identity())) {
            OrderLine line = place.first();
            List<String> row = new ArrayList<>(List.of(place.name(), order(line.propellerOrder())));
            if (!oneShaft) {
                row.add(order(line.propellerOrder() / ratio));
            }
            for (PlannedDwell dwell : dwells) {
                row.add(frequency(dwell.lines().get(lines.indexOf(line))));
            }
            table.row(row.toArray(String[]::new));
        }
        table.end();
    }

    private static boolean missesSome(PlannedDwell dwell) {
        return dwell.lines().stream().anyMatch(line -> line.fold().isPresent());
    }

    /** Five figures or more: two decimals up to 1 kHz, where orders lie closest. */
    private static String frequency(PlannedLine line) {
        double hz = line.frequencyHz();
        return FigureFormat.fixed(hz, hz < 1000 ? 2 : hz < 10_000 ? 1 : 0)
                + (line.fold().isPresent() ? "*" : "");
    }

    private static String order(double order) {
        return FigureFormat.fixed(order, 4).replaceAll("\\.?0+$", "");
    }

    private void coincident() {
        text.heading("Lines that coincide: no analysis can split them, at any speed");
        if (plan.coincident().isEmpty()) {
            text.say("none");
        }
        for (Place place : plan.coincident()) {
            text.say(Tone.ITEM, String.join(" = ", place.names()));
        }
    }

    private void close() {
        Map<String, Map<Double, ClosePair>> pairs = new LinkedHashMap<>();
        for (PlannedDwell dwell : plan.dwells()) {
            for (ClosePair pair : dwell.close()) {
                String names = String.join(" = ", pair.lower().names()) + " | "
                        + String.join(" = ", pair.upper().names());
                pairs.computeIfAbsent(names, key -> new LinkedHashMap<>()).put(dwell.engineRpm(), pair);
            }
        }
        if (pairs.isEmpty()) {
            return;
        }
        text.heading("Lines that are close: one in a plain spectrum, split by a steady run this long");
        pairs.forEach((names, byRpm) -> {
            List<String> runs = new ArrayList<>();
            byRpm.forEach((rpm, pair) -> runs.add(FigureFormat.rpm(rpm) + " rpm: "
                    + FigureFormat.fixed(pair.apartHz(), 3) + " Hz apart, "
                    + FigureFormat.fixed(pair.splitAfterS(), 1) + " s"));
            text.say(Tone.ITEM, names + ": " + String.join("; ", runs));
        });
    }

    private void throbs() {
        Map<String, List<String>> runs = new LinkedHashMap<>();
        for (PlannedDwell dwell : plan.dwells()) {
            for (Beat beat : dwell.beats()) {
                runs.computeIfAbsent(
                                beat.lower().name() + " and " + beat.upper().name(), key -> new ArrayList<>())
                        .add(FigureFormat.rpm(dwell.engineRpm()) + " rpm: " + FigureFormat.fixed(beat.hz(), 1)
                                + " swells per second");
            }
        }
        if (runs.isEmpty()) {
            return;
        }
        text.heading("Slow throbs to expect where both lines are strong (1 to 8 swells per second)");
        runs.forEach((names, byRpm) -> text.say(Tone.ITEM, names + ": " + String.join("; ", byRpm)));
    }

    private void beyondRange() {
        if (plan.sampleRateHz().isEmpty()) {
            return;
        }
        double rate = plan.sampleRateHz().getAsDouble();
        text.heading("What the sensor can't see");
        text.say("At " + FigureFormat.sampleRate(rate) + " samples per second nothing above "
                + FigureFormat.fixed(plan.usableUpToHz().getAsDouble(), 1)
                + " Hz is measured. A line beyond it shows at a wrong, lower frequency, where it must not be taken for"
                + " real.");
        boolean missed = false;
        for (PlannedDwell dwell : plan.dwells()) {
            for (PlannedLine line : dwell.lines()) {
                line.fold()
                        .ifPresent(fold -> text.say(
                                Tone.ITEM,
                                FigureFormat.rpm(dwell.engineRpm()) + " rpm, "
                                        + line.line().name() + ": "
                                        + FigureFormat.fixed(line.frequencyHz(), 2) + " Hz "
                                        + shows(line.frequencyHz(), fold, rate)));
                missed |= line.fold().isPresent();
            }
        }
        if (!missed) {
            text.say(
                    plan.dwells().isEmpty()
                            ? "Which lines those are depends on the speed."
                            : "It sees every line above.");
        }
    }

    private static String shows(double frequencyHz, PlannedLine.Fold fold, double rate) {
        String near = fold.near().isEmpty() ? "" : ", to be taken for " + String.join(" or ", fold.near());
        return frequencyHz <= rate / 2
                ? "is too near half the sample rate"
                : "shows at " + FigureFormat.fixed(fold.toHz(), 2) + " Hz" + near;
    }

    /** The card alone, with blanks to fill in by hand. */
    public static Document card(RunPlan plan, Phrases phrases) {
        PlanDocument document = new PlanDocument(plan, phrases);
        Document.TableBuilder blanks = document.text
                .table("")
                .left("fill in by hand")
                .left("")
                .left("")
                .left("");
        for (int i = 0; i < BLANKS.size(); i += 2) {
            blanks.row(BLANKS.get(i), BLANK.repeat(3), BLANKS.get(i + 1), BLANK.repeat(3));
        }
        blanks.end();
        document.card();
        return document.text.done();
    }

    private void card() {
        text.heading("Run card: cautions");
        text.facts(Tone.ITEM, phrases, plan.card().cautions());
        text.heading("Run card: the run");
        int number = 1;
        for (Fact step : plan.card().steps()) {
            text.add(new Block.Known(number + ".", phrases.sentence(step)));
            number++;
        }
        Document.TableBuilder table = text.table("The speeds to hold, and what the gauges read there")
                .right("engine rpm")
                .right("propeller rpm")
                .right("for, s")
                .left("rpm read")
                .left("gauges")
                .left("seen, felt, heard");
        for (PlannedDwell dwell : plan.dwells()) {
            table.row(
                    FigureFormat.rpm(dwell.engineRpm()),
                    FigureFormat.rpm(dwell.propellerRpm()),
                    FigureFormat.fixed(dwell.lengthS(), 0),
                    BLANK,
                    BLANK,
                    BLANK + BLANK);
        }
        table.end();
    }
}
