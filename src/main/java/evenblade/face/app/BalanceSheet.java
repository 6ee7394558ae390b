package evenblade.face.app;

import evenblade.judge.balance.BalanceAnswer;
import evenblade.judge.balance.BalanceAnswer.Advice;
import evenblade.judge.balance.Correction;
import evenblade.judge.balance.Residual;
import evenblade.judge.balance.Share;
import evenblade.judge.balance.Split;
import evenblade.judge.balance.Unbalance;
import evenblade.judge.balance.Weight;
import evenblade.judge.balance.WeightedReading;
import evenblade.machine.installation.HubCounting;
import evenblade.tell.document.Block;
import evenblade.tell.document.Document;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.PictureSlot;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * A balance answer in words, the same for terminal, paper and window.
 *
 * @param heading what it is
 * @param refused whether no correction is given
 * @param runs the runs it rests on; heading row first, empty for typed readings
 * @param reasons why there is no correction; empty where there is one
 * @param correction what to put on
 * @param split what goes where; heading row first, empty where there are no places
 * @param outlook what will be left, and how check runs came out
 * @param warnings what to know beside it
 * @param cautions before a hand goes near the propeller
 */
public record BalanceSheet(
        String heading,
        boolean refused,
        List<List<String>> runs,
        List<String> reasons,
        List<String> correction,
        List<List<String>> split,
        List<String> outlook,
        List<String> warnings,
        List<String> cautions) {
    private static final List<String> CAUTIONS = List.of(
            "Ignition off, key out, before a hand goes near the propeller. Treat it as live all the same.",
            "Weights only where and as the maker of propeller or spinner allows; torque and locking as the maker says."
                    + " No weight on the face of a wooden blade.",
            "A licensed person signs for it.");

    /** The answer to typed readings. */
    public static BalanceSheet of(BalanceAnswer answer) {
        String angles = answer.method() == BalanceAnswer.Method.WITH_PHASE
                ? "Angles turn as the phases do: against the rotation."
                : "Angles are counted as those of the trial weights were.";
        return new Writer(answer, d -> ((d % 360) + 360) % 360, WeightFigures.METRIC)
                .sheet(List.of(), List.of(angles), List.of());
    }

    /**
     * The answer to the runs of a job.
     *
     * @param lengths of the reader's unit; with inches, masses are in ounces
     */
    public static BalanceSheet of(JobBalance job, FigureFormat lengths) {
        WeightFigures figures = new WeightFigures(lengths);
        Writer writer = new Writer(job.answer(), job::asCounted, figures);
        List<String> after = new ArrayList<>();
        after.add(job.counted()
                .map(c -> "Angles count from hub position 1, " + (c == HubCounting.WITH_ROTATION ? "with" : "against")
                        + " the rotation.")
                .orElse("Angles are as you counted them; write down which way that was."));
        List<String> last =
                new ArrayList<>(job.checks().stream().map(c -> check(c, job)).toList());
        last.addAll(addNow(job, writer));
        return writer.sheet(runs(job, figures), after, last);
    }

    /** The answer, composed for every face. */
    public Document document() {
        Document.Builder text = Document.begin().subject(heading);
        if (!runs.isEmpty()) {
            Document.TableBuilder table = text.table("");
            List<String> columns = runs.get(0);
            table.left(columns.get(0));
            columns.subList(1, columns.size() - 1).forEach(table::right);
            table.left(columns.get(columns.size() - 1));
            runs.stream().skip(1).forEach(row -> table.row(row.toArray(String[]::new)));
            table.end();
        }
        if (refused) {
            text.say(Block.Tone.ANSWER, "NO CORRECTION IS GIVEN:");
        }
        reasons.forEach(reason -> text.say(Block.Tone.ITEM, reason));
        for (int i = 0; i < correction.size(); i++) {
            text.say(i == 0 ? Block.Tone.ANSWER : Block.Tone.PLAIN, correction.get(i));
        }
        if (!split.isEmpty()) {
            Document.TableBuilder table = text.table("Over the places:");
            split.get(0).subList(0, 1).forEach(table::left);
            split.get(0).subList(1, 4).forEach(table::right);
            split.get(0).subList(4, 5).forEach(table::left);
            split.stream().skip(1).forEach(row -> table.row(row.toArray(String[]::new)));
            table.end();
        }
        outlook.forEach(text::say);
        warnings.forEach(warning -> text.say(Block.Tone.ITEM, warning));
        cautions.forEach(caution -> text.say(Block.Tone.CAUTION, caution));
        return text.picture(PictureSlot.Shows.BALANCE).done();
    }

    private static List<List<String>> runs(JobBalance job, WeightFigures figures) {
        if (job.runs().isEmpty()) {
            return List.of();
        }
        List<List<String>> rows = new ArrayList<>();
        String unit = job.channel().map(c -> " " + c.unit().display()).orElse("");
        rows.add(List.of("run", "propeller rpm", "1×" + unit, "±", "phase °", "weights on"));
        for (JobBalance.Run run : job.runs()) {
            Optional<WeightedReading> reading = run.reading();
            rows.add(List.of(
                    run.name(),
                    text("%.0f", run.conditions().propellerRpm()),
                    reading.map(r -> text("%.3g", r.amplitude())).orElse("–"),
                    reading.map(r -> text("%.2g", r.standardError())).orElse("–"),
                    reading.filter(r -> r.phaseDeg().isPresent())
                            .map(r -> text("%.0f", r.phaseDeg().getAsDouble()))
                            .orElse("–"),
                    reading.map(r -> weights(r.weights(), job, figures)).orElse("–")));
        }
        return rows;
    }

    private static String weights(List<Weight> weights, JobBalance job, WeightFigures figures) {
        return weights.isEmpty()
                ? "none"
                : String.join(
                        "; ",
                        weights.stream()
                                .map(w -> text(
                                        "%s %s at %.0f°",
                                        figures.shortMass(w.massG()),
                                        figures.massUnit(),
                                        job.asCounted(w.angleDeg())))
                                .toList());
    }

    private static List<String> addNow(JobBalance job, Writer writer) {
        if (job.addNow().isEmpty() || job.on().isEmpty()) {
            return List.of();
        }
        List<String> all = new ArrayList<>();
        all.add("On the hub now: " + weights(job.on(), job, writer.figures) + ".");
        if (job.leaveAsItIs()) {
            all.add("What is on agrees with the correction within its error. Leave it as it is.");
            return all;
        }
        Unbalance add = job.addNow().get();
        double radius = job.answer().advice().orElseThrow().radiusMm();
        all.add(text(
                "Or leave that on and add %s, at %.1f°.",
                writer.figures.massAt(add.gramsAt(radius), radius), writer.counted.applyAsDouble(add.angleDeg())));
        job.addSplit()
                .ifPresent(split -> all.add("Over the places that is "
                        + String.join(
                                " and ",
                                split.shares().stream()
                                        .map(s -> text(
                                                "%s at place %s",
                                                writer.figures.mass(s.massG()), s.place().name()))
                                        .toList())
                        + "."));
        return all;
    }

    private static String check(JobBalance.CheckRun check, JobBalance job) {
        WeightedReading reading = check.run().reading().orElseThrow();
        String unit = job.channel().map(c -> " " + c.unit().display()).orElse("");
        String held = text(
                "Check run '%s': the runs before it predicted %.2g to %.2g%s, measured were %.3g%s. ",
                check.run().name(), check.predicted().low(), check.predicted().high(), unit, reading.amplitude(), unit);
        return held
                + (check.check().fits()
                        ? "It fits."
                        : text(
                                        "It doesn't fit (chance %.1f %%)",
                                        100 * check.check().chance())
                                + ": look for what changed, and whether each weight is where it was written down,"
                                + " before you add more.");
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }

    /** Puts one answer into words. */
    private record Writer(BalanceAnswer answer, DoubleUnaryOperator counted, WeightFigures figures) {
        BalanceSheet sheet(List<List<String>> runs, List<String> afterCorrection, List<String> last) {
            List<String> correction = new ArrayList<>();
            List<String> outlook = new ArrayList<>();
            answer.advice().ifPresent(advice -> {
                correction.addAll(correction(advice));
                correction.addAll(afterCorrection);
                outlook.addAll(outlook(advice));
            });
            outlook.addAll(last);
            String how = answer.method() == BalanceAnswer.Method.WITH_PHASE ? "with phase" : "without phase";
            return new BalanceSheet(
                    "Balance weight from runs " + how,
                    answer.refused(),
                    runs,
                    answer.refusals().stream().map(o -> BalanceWords.sentence(o, figures)).toList(),
                    correction,
                    answer.advice().flatMap(Advice::split).map(this::rows).orElse(List.of()),
                    outlook,
                    answer.warnings().stream().map(o -> BalanceWords.sentence(o, figures)).toList(),
                    CAUTIONS);
        }

        private List<String> correction(Advice advice) {
            Correction c = advice.correction();
            double radius = advice.radiusMm();
            double low = counted.applyAsDouble(c.value().angleDeg() - c.belowDeg());
            double high = counted.applyAsDouble(c.value().angleDeg() + c.aboveDeg());
            boolean mirrored = counted.applyAsDouble(90) != 90;
            return List.of(
                    text(
                            "With all trial weights off, put on %s, at %.1f°.",
                            figures.massAt(advice.massG(), radius),
                            counted.applyAsDouble(c.value().angleDeg())),
                    text(
                            "That is %s. The mass is between %s and %s, the angle between %.0f° and %.0f° (95 of 100"
                                    + " such cases).",
                            figures.bothUnbalances(c.value().gmm()),
                            figures.massNumber(c.lowGmm() / radius),
                            figures.mass(c.highGmm() / radius),
                            mirrored ? high : low,
                            mirrored ? low : high));
        }

        private List<List<String>> rows(Split split) {
            List<List<String>> rows = new ArrayList<>();
            rows.add(List.of(
                    "place",
                    "angle °",
                    "radius " + figures.lengths().unit().sign(),
                    "mass " + figures.massUnit(),
                    "made of"));
            for (Share share : split.shares()) {
                rows.add(List.of(
                        share.place().name(),
                        text("%.1f", counted.applyAsDouble(share.place().angleDeg())),
                        figures.radiusNumber(share.place().radiusMm()),
                        figures.massNumber(share.massG()),
                        String.join(
                                " + ",
                                share.piecesG().stream()
                                        .map(figures::shortMass)
                                        .toList())));
            }
            return rows;
        }

        private List<String> outlook(Advice advice) {
            List<String> all = new ArrayList<>();
            Residual residual = advice.residual();
            advice.split().ifPresent(split -> all.add("Left over: " + figures.unbalance(split.leftGmm()) + "."));
            all.add(text(
                    "The 1× line was %.3g. Predicted with %s: about %.2g, between %.2g and %.2g.",
                    advice.influence().restAmplitude(),
                    advice.split().isPresent() ? "these weights" : "this weight",
                    residual.amplitude(),
                    residual.low(),
                    residual.high()));
            answer.closure().ifPresent(c -> all.add(text("Closure %.3f: 1 where all readings agree.", c)));
            if (advice.influence().scatterMeasured()) {
                all.add(text(
                        "From run to run the line scatters by %.1f %%.",
                        100 * advice.influence().scatterShare()));
            }
            return all;
        }
    }
}
