package evenblade.face.cli;

import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Reduction;
import evenblade.machine.installation.Beat;
import evenblade.machine.plan.ClosePair;
import evenblade.machine.plan.Place;
import evenblade.machine.plan.PlannedDwell;
import evenblade.machine.plan.PlannedLine;
import evenblade.machine.plan.RunPlan;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A plan as text for a terminal of 80 columns. */
final class PlanText {
    /** Dwells side by side that still fit. */
    private static final int DWELLS_PER_TABLE = 5;

    private final RunPlan plan;
    private final List<String> lines = new ArrayList<>();

    private PlanText(RunPlan plan) {
        this.plan = plan;
    }

    static List<String> lines(RunPlan plan) {
        PlanText text = new PlanText(plan);
        text.installation();
        text.orders();
        text.coincident();
        text.close();
        text.throbs();
        text.beyondRange();
        text.warnings();
        text.card();
        return text.lines;
    }

    private void installation() {
        Installation installation = plan.installation();
        installation.name().ifPresent(name -> paragraph("", "", name));
        Engine engine = installation.engine();
        StringBuilder text = new StringBuilder(engine.cycle().word());
        if (engine.cylinders() > 0) {
            text.append(", ").append(engine.cylinders()).append(engine.cylinders() == 1 ? " cylinder" : " cylinders");
        }
        engine.idleRpm().ifPresent(rpm -> text.append(format(", idle %.0f rpm", rpm)));
        engine.maxRpm().ifPresent(rpm -> text.append(format(", at most %.0f rpm", rpm)));
        paragraph("Engine     ", " ".repeat(11), text.toString());
        paragraph("Drive      ", " ".repeat(11), drive(installation.reduction()));
        String diameter = installation
                .propeller()
                .diameter()
                .map(length -> format(", diameter %.3f m", length.metres()))
                .orElse("");
        paragraph("Propeller  ", " ".repeat(11), installation.propeller().blades() + " blades" + diameter);
    }

    private static String drive(Reduction reduction) {
        if (reduction.kind() == Reduction.Kind.DIRECT) {
            return "direct: the propeller turns with the crank";
        }
        String kind = reduction.kind() == Reduction.Kind.UNSTATED
                ? ""
                : reduction.kind().word() + ", ";
        if (reduction.teeth().isEmpty()) {
            return kind + reduction.ratio() + " engine revolutions per propeller revolution";
        }
        Reduction.Teeth teeth = reduction.teeth().get();
        return format(
                "%s%d to %d teeth, %.6f engine revolutions per propeller revolution;"
                        + " the same teeth meet every %d engine = %d propeller revolutions",
                kind,
                teeth.driving(),
                teeth.driven(),
                teeth.ratio(),
                teeth.engineRevolutionsPerRepeat(),
                teeth.propellerRevolutionsPerRepeat());
    }

    private void orders() {
        List<PlannedDwell> dwells = plan.dwells();
        for (int from = 0; from == 0 || from < dwells.size(); from += DWELLS_PER_TABLE) {
            List<PlannedDwell> some = dwells.subList(from, Math.min(dwells.size(), from + DWELLS_PER_TABLE));
            heading(some.isEmpty() ? "Orders" : "Where the orders lie, in Hz at the engine rpm above them");
            TextTable table = new TextTable("lrr" + "r".repeat(some.size()));
            table.row(cells(List.of("line", "propeller", shaft()), some, dwell -> format("%.0f", dwell.engineRpm())));
            int index = 0;
            for (OrderLine line : plan.installation().orders().lines()) {
                int at = index++;
                List<String> first = List.of(
                        line.name(),
                        order(line.propellerOrder()),
                        order(line.propellerOrder()
                                / plan.installation().reduction().ratio()));
                table.row(cells(first, some, dwell -> frequency(dwell.lines().get(at))));
            }
            lines.addAll(table.lines());
            if (some.stream().anyMatch(PlanText::missesSome)) {
                lines.add("* beyond what the sensor can measure, see below");
            }
        }
    }

    private String shaft() {
        return plan.installation().engine().cycle() == Engine.Cycle.ELECTRIC ? "motor" : "crank";
    }

    private static boolean missesSome(PlannedDwell dwell) {
        return dwell.lines().stream().anyMatch(line -> line.fold().isPresent());
    }

    private static String frequency(PlannedLine line) {
        double hz = line.frequencyHz();
        String number = hz < 1000 ? format("%.2f", hz) : hz < 10_000 ? format("%.1f", hz) : format("%.0f", hz);
        return number + (line.fold().isPresent() ? "*" : "");
    }

    private static String order(double order) {
        return format("%.4f", order).replaceAll("\\.?0+$", "");
    }

    private interface DwellCell {
        String of(PlannedDwell dwell);
    }

    private static String[] cells(List<String> first, List<PlannedDwell> dwells, DwellCell cell) {
        List<String> all = new ArrayList<>(first);
        for (PlannedDwell dwell : dwells) {
            all.add(cell.of(dwell));
        }
        return all.toArray(String[]::new);
    }

    private void coincident() {
        heading("Lines that coincide: no analysis can split them, at any speed");
        if (plan.coincident().isEmpty()) {
            lines.add("none");
        }
        for (Place place : plan.coincident()) {
            paragraph("- ", "  ", String.join(" = ", place.names()));
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
        heading("Lines that are close: one in a plain spectrum, split by a steady run this long");
        pairs.forEach((names, byRpm) -> {
            paragraph("- ", "  ", names);
            List<String> runs = new ArrayList<>();
            byRpm.forEach((rpm, pair) ->
                    runs.add(format("%.0f rpm: %.3f Hz apart, %.1f s", rpm, pair.apartHz(), pair.splitAfterS())));
            paragraph("  ", "  ", String.join("; ", runs));
        });
    }

    private void throbs() {
        Map<String, List<String>> runs = new LinkedHashMap<>();
        for (PlannedDwell dwell : plan.dwells()) {
            for (Beat beat : dwell.beats()) {
                runs.computeIfAbsent(beat.lower().name() + " and " + beat.upper().name(), key -> new ArrayList<>())
                        .add(format("%.0f rpm: %.1f swells per second", dwell.engineRpm(), beat.hz()));
            }
        }
        if (runs.isEmpty()) {
            return;
        }
        heading("Slow throbs to expect where both lines are strong (1 to 8 swells per second)");
        runs.forEach((names, byRpm) -> {
            paragraph("- ", "  ", names);
            paragraph("  ", "  ", String.join("; ", byRpm));
        });
    }

    private void beyondRange() {
        if (plan.sampleRateHz().isEmpty()) {
            return;
        }
        double rate = plan.sampleRateHz().getAsDouble();
        heading("What the sensor can't see");
        paragraph(
                "",
                "",
                format(
                        "At %s samples per second nothing above %.1f Hz is measured. A line beyond it shows at a"
                                + " wrong, lower frequency, where it must not be taken for real.",
                        rate, plan.usableUpToHz().getAsDouble()));
        List<String> unseen = new ArrayList<>();
        for (PlannedDwell dwell : plan.dwells()) {
            for (PlannedLine line : dwell.lines()) {
                line.fold()
                        .ifPresent(fold -> unseen.add(format(
                                "%.0f rpm, %s: %.2f Hz %s",
                                dwell.engineRpm(),
                                line.line().name(),
                                line.frequencyHz(),
                                shows(line.frequencyHz(), fold, rate))));
            }
        }
        if (unseen.isEmpty()) {
            lines.add(
                    plan.dwells().isEmpty()
                            ? "Which lines those are depends on the speed."
                            : "It sees every line above.");
        }
        unseen.forEach(text -> paragraph("- ", "  ", text));
    }

    private static String shows(double frequencyHz, PlannedLine.Fold fold, double rate) {
        String near = fold.near().isEmpty() ? "" : ", to be taken for " + String.join(" or ", fold.near());
        return frequencyHz <= rate / 2
                ? "is too near half the sample rate"
                : format("shows at %.2f Hz%s", fold.toHz(), near);
    }

    private void warnings() {
        if (!plan.warnings().isEmpty()) {
            heading("To know");
            plan.warnings().forEach(warning -> paragraph("- ", "  ", WarningText.of(warning)));
        }
    }

    private void card() {
        heading("Run card: cautions");
        plan.card().cautions().forEach(caution -> paragraph("- ", "  ", caution));
        heading("Run card: the run");
        int number = 1;
        for (String step : plan.card().steps()) {
            paragraph(format("%2d ", number++), "   ", step);
        }
    }

    private void heading(String text) {
        lines.add("");
        lines.add(text);
    }

    private void paragraph(String first, String rest, String text) {
        lines.addAll(LineWrapper.lines(first, rest, text));
    }

    private static String format(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
