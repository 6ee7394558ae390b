package evenblade.tell.document;

import evenblade.judge.balance.BalanceAnswer;
import evenblade.judge.balance.BalanceAnswer.Advice;
import evenblade.judge.balance.BalanceAtRest;
import evenblade.judge.balance.Correction;
import evenblade.judge.balance.HubMoments;
import evenblade.judge.balance.JobBalance;
import evenblade.judge.balance.Objection;
import evenblade.judge.balance.Residual;
import evenblade.judge.balance.Split;
import evenblade.judge.balance.Split.Share;
import evenblade.judge.balance.Unbalance;
import evenblade.judge.balance.Weight;
import evenblade.judge.balance.WeightedReading;
import evenblade.machine.installation.HubCounting;
import evenblade.tell.document.Block.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;

/** The weight to put on and what it will leave, or why there is none. */
public final class BalanceDocument {
    private final BalanceAnswer answer;
    private final Optional<JobBalance> job;
    private final Phrases phrases;
    private final WeightFigures figures;
    private final DoubleUnaryOperator counted;
    private final String unit;
    private final Document.Builder text = Document.begin();

    private BalanceDocument(
            BalanceAnswer answer, Optional<JobBalance> job, DoubleUnaryOperator counted, Phrases phrases) {
        this.answer = answer;
        this.job = job;
        this.counted = counted;
        this.phrases = phrases;
        this.figures = new WeightFigures(phrases.figures());
        this.unit = job.flatMap(JobBalance::channel)
                .map(read -> " " + read.unit().display())
                .orElse("");
    }

    /** The answer to typed readings. */
    public static Document of(BalanceAnswer answer, Phrases phrases) {
        return new BalanceDocument(answer, Optional.empty(), degrees -> ((degrees % 360) + 360) % 360, phrases).whole();
    }

    /** The answer to the runs of a job. */
    public static Document of(JobBalance job, Phrases phrases) {
        return new BalanceDocument(job.answer(), Optional.of(job), job::asCounted, phrases).whole();
    }

    private Document whole() {
        text.subject("Balance weight from runs "
                + (answer.method() == BalanceAnswer.Method.WITH_PHASE ? "with phase" : "without phase"));
        job.ifPresent(this::runs);
        if (answer.refused()) {
            text.say(Tone.ANSWER, "NO CORRECTION IS GIVEN:");
        }
        text.facts(
                Tone.ITEM,
                phrases,
                answer.refusals().stream().map(Objection::fact).toList());
        answer.advice().ifPresent(advice -> {
            correction(advice);
            text.say(job.map(BalanceDocument::sense).orElseGet(this::typedSense));
            advice.split().ifPresent(this::split);
            outlook(advice);
        });
        job.ifPresent(runs -> {
            runs.checks().forEach(this::check);
            addNow(runs);
        });
        text.facts(
                Tone.ITEM,
                phrases,
                answer.warnings().stream().map(Objection::fact).toList());
        job.ifPresent(runs -> text.warnings(Tone.CAUTION, phrases, runs.warnings()));
        text.handsOff()
                .say(
                        Tone.CAUTION,
                        "Weights only where and as the maker of propeller or spinner allows; torque and locking as the"
                                + " maker says. No weight on the face of a wooden blade.")
                .say(Tone.CAUTION, "A licensed person signs for it.");
        return text.picture(PictureSlot.Shows.BALANCE).done();
    }

    private void runs(JobBalance runs) {
        Document.TableBuilder table = text.table("")
                .left("run")
                .right("propeller rpm")
                .right("1×" + unit)
                .right("± 95 %")
                .right("phase °")
                .left("weights on");
        for (JobBalance.Run run : runs.runs()) {
            Optional<WeightedReading> reading = run.reading();
            table.row(
                    run.name(),
                    FigureFormat.rpm(run.conditions().propellerRpm()),
                    reading.map(r -> FigureFormat.value(r.amplitude(), FigureFormat.NINETY_FIVE * r.standardError()))
                            .orElse("–"),
                    reading.map(r -> FigureFormat.error(r.amplitude(), FigureFormat.NINETY_FIVE * r.standardError()))
                            .orElse("–"),
                    reading.filter(r -> r.phaseDeg().isPresent())
                            .map(r -> FigureFormat.fixed(r.phaseDeg().getAsDouble(), 0))
                            .orElse("–"),
                    reading.map(r -> weights(r.weights())).orElse("–"));
        }
        table.end();
    }

    private String weights(List<Weight> weights) {
        return weights.isEmpty()
                ? "none"
                : weights.stream()
                        .map(w -> figures.shortMass(w.massG()) + " " + figures.massUnit() + " at "
                                + angle(w.angleDeg(), 0))
                        .collect(Collectors.joining("; "));
    }

    private String angle(double degrees, int decimals) {
        return FigureFormat.fixed(counted.applyAsDouble(degrees), decimals) + "°";
    }

    private static String unbalance(Unbalance value) {
        return gmm(value.gmm()) + " (" + FigureFormat.fixed(value.ounceInches(), 3) + " oz·in)";
    }

    private static String gmm(double value) {
        return FigureFormat.fixed(value, 0) + " g·mm";
    }

    private void correction(Advice advice) {
        Correction c = advice.correction();
        boolean mirrored = counted.applyAsDouble(90) != 90;
        double below = c.value().angleDeg() - (mirrored ? -c.aboveDeg() : c.belowDeg());
        double above = c.value().angleDeg() + (mirrored ? -c.belowDeg() : c.aboveDeg());
        text.say(
                Tone.ANSWER,
                "With all trial weights off, put on " + figures.massAt(advice.massG(), advice.radiusMm()) + ", at "
                        + angle(c.value().angleDeg(), 1) + ".");
        text.say("That is " + figures.bothUnbalances(c.value().gmm()) + ". The mass is between "
                + figures.massNumber(c.lowGmm() / advice.radiusMm()) + " and "
                + figures.mass(c.highGmm() / advice.radiusMm()) + ", the angle between " + angle(below, 0)
                + " and " + angle(above, 0) + " (95 of 100 such cases).");
    }

    private String typedSense() {
        return answer.method() == BalanceAnswer.Method.WITH_PHASE
                ? "Angles turn as the phases do: against the rotation."
                : "Angles are counted as those of the trial weights were.";
    }

    private static String sense(JobBalance job) {
        return job.counted()
                .map(c -> "Angles count from hub position 1, " + (c == HubCounting.WITH_ROTATION ? "with" : "against")
                        + " the rotation.")
                .orElse("Angles are as you counted them; write down which way that was.");
    }

    private void split(Split split) {
        Document.TableBuilder table = text.table("Over the places:")
                .left("place")
                .right("angle °")
                .right("radius " + phrases.figures().unit().sign())
                .right("mass " + figures.massUnit())
                .left("made of");
        for (Share share : split.shares()) {
            table.row(
                    share.place().name(),
                    FigureFormat.fixed(counted.applyAsDouble(share.place().angleDeg()), 1),
                    figures.radiusNumber(share.place().radiusMm()),
                    figures.massNumber(share.massG()),
                    share.piecesG().stream().map(figures::shortMass).collect(Collectors.joining(" + ")));
        }
        table.end();
    }

    private void outlook(Advice advice) {
        Residual left = advice.residual();
        advice.split().ifPresent(split -> text.say("Left over: " + figures.unbalance(split.leftGmm()) + "."));
        text.say("The 1× line was " + FigureFormat.plain(advice.influence().restAmplitude()) + unit
                + ". Predicted with " + (advice.split().isPresent() ? "these weights" : "this weight") + ": about "
                + FigureFormat.rough(left.amplitude()) + ", between " + FigureFormat.rough(left.low()) + " and "
                + FigureFormat.rough(left.high()) + unit + ".");
        answer.closure()
                .ifPresent(c -> text.say("Closure " + FigureFormat.fixed(c, 3) + ": 1 where all readings agree."));
        if (advice.influence().scatterMeasured()) {
            text.say("From run to run the line scatters by "
                    + FigureFormat.fixed(100 * advice.influence().scatterShare(), 1) + " %.");
        }
    }

    private void check(JobBalance.CheckRun check) {
        text.say("Check run '" + check.run().name() + "': the runs before it predicted "
                + FigureFormat.rough(check.predicted().low()) + " to "
                + FigureFormat.rough(check.predicted().high()) + unit + ", measured were "
                + FigureFormat.plain(check.run().reading().orElseThrow().amplitude()) + unit + ". "
                + (check.check().fits()
                        ? "It fits."
                        : "It doesn't fit (chance "
                                + FigureFormat.fixed(100 * check.check().chance(), 1)
                                + " %): look for what changed, and whether each weight is where it was written down,"
                                + " before you add more."));
    }

    private void addNow(JobBalance runs) {
        if (runs.addNow().isEmpty() || runs.on().isEmpty()) {
            return;
        }
        text.say("On the hub now: " + weights(runs.on()) + ".");
        if (runs.leaveAsItIs()) {
            text.say("What is on agrees with the correction within its error. Leave it as it is.");
            return;
        }
        Unbalance add = runs.addNow().get();
        double at = answer.advice().orElseThrow().radiusMm();
        text.say("Or leave that on and add " + figures.massAt(add.gramsAt(at), at) + ", at " + angle(add.angleDeg(), 1)
                + ".");
        runs.addSplit()
                .ifPresent(split -> text.say("Over the places that is "
                        + split.shares().stream()
                                .map(s -> figures.mass(s.massG()) + " at place "
                                        + s.place().name())
                                .collect(Collectors.joining(" and "))
                        + "."));
    }

    /** The answer to readings without a run. */
    public static Document of(BalanceAtRest rest, Phrases phrases) {
        Document.Builder text = Document.begin();
        if (rest instanceof BalanceAtRest.Bench bench) {
            bench(bench, text);
        } else {
            scale((BalanceAtRest.Scale) rest, text, phrases.figures());
        }
        return text.handsOff().done();
    }

    private static void bench(BalanceAtRest.Bench bench, Document.Builder text) {
        Unbalance correction = bench.readings().correction();
        text.subject("Balance by test masses, the engine standing");
        text.say(
                Tone.ANSWER,
                "The test masses ask for " + unbalance(correction) + " at "
                        + FigureFormat.fixed(correction.angleDeg(), 0) + "°. Friction: "
                        + gmm(bench.readings().frictionGmm()) + ".");
        if (bench.readings().belowFriction()) {
            text.say(
                    Tone.CAUTION,
                    "Below friction: the hub stays wherever it is put. Edges or a spindle that turn more easily show"
                            + " more.");
        }
        text.say(part(
                "Horizontal (0° level)",
                correction.vectorGmm().re(),
                bench.readings().errorAlongGmm(),
                bench.readings().alongSeen()));
        text.say(part(
                "Vertical (0° upright)",
                correction.vectorGmm().im(),
                bench.readings().errorAcrossGmm(),
                bench.readings().acrossSeen()));
    }

    private static String part(String name, double gmm, double error, boolean seen) {
        return name + ": " + FigureFormat.offset(gmm, 0) + " ± " + gmm(error) + (seen ? "." : ", within its error.");
    }

    private static void scale(BalanceAtRest.Scale scale, Document.Builder text, FigureFormat figures) {
        text.subject("Balance by weighed blades");
        Document.TableBuilder blades =
                text.table("").left("blade").right("moment g·mm").right("±");
        scale.moments()
                .forEach(m -> blades.row(
                        m.blade(), FigureFormat.fixed(m.gmm(), 0), FigureFormat.fixed(m.standardErrorGmm(), 0)));
        blades.end();
        Document.TableBuilder layouts = text.table("Layouts, the least unbalance first:")
                .left("layout")
                .right("left g·mm")
                .right("at °");
        if (scale.trackKnown()) {
            layouts.right("track spread " + figures.unit().sign());
        }
        for (HubMoments.Option choice : scale.choices()) {
            List<String> row = new ArrayList<>(List.of(
                    choice.layout().text(),
                    FigureFormat.fixed(choice.unbalance().gmm(), 0),
                    FigureFormat.fixed(choice.unbalance().angleDeg(), 0)));
            if (scale.trackKnown()) {
                row.add(choice.trackSpreadMm().map(figures::number).orElse("–"));
            }
            layouts.row(row.toArray(String[]::new));
        }
        layouts.end();
        text.say(
                Tone.ANSWER,
                "As they sit now: " + gmm(scale.now().gmm()) + " at "
                        + FigureFormat.fixed(scale.now().angleDeg(), 0) + "°. "
                        + (scale.clearlyBetter()
                                ? "The first layout is better by " + gmm(scale.betterGmm()) + "."
                                : "No layout is clearly better: leave the blades where they are."));
        text.say("Each is good to ± " + gmm(scale.errorGmm()) + " (standard error).");
        if (scale.trackKnown()) {
            text.say("Track as the tip marks of this job predict it. Where there is a dash they can't: mark the tips in"
                    + " another layout. Left out is what is worse than another in both.");
        }
        text.say((scale.trackKnown() ? "" : "Track isn't weighed here. ")
                + "A heavy blade and a bent blade move together: what shaking goes with them may come from either. Mark"
                + " the tips again after you move blades.");
    }
}
