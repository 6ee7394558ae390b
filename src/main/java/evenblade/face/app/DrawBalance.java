package evenblade.face.app;

import evenblade.base.numeric.Phasor;
import evenblade.judge.balance.BalanceAnswer;
import evenblade.judge.balance.BalanceAnswer.Advice;
import evenblade.judge.balance.JobBalance;
import evenblade.judge.balance.Split;
import evenblade.judge.balance.Weight;
import evenblade.judge.balance.WeightedReading;
import evenblade.machine.installation.HubCounting;
import evenblade.machine.installation.Installation;
import evenblade.tell.chart.BalanceVectorsPicture;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.HubWeightsPicture;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.WeightFigures;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The pictures of a job's balancing: its runs as vectors where they have phases, and the hub. */
public final class DrawBalance {
    private DrawBalance() {}

    /**
     * By name: the vectors first, where there are any; the hub last.
     *
     * @param lengths of the reader's unit
     */
    public static Map<String, Picture> draw(JobBalance job, FigureFormat lengths) {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        List<BalanceVectorsPicture.Run> runs = runs(job);
        if (!runs.isEmpty()) {
            pictures.put(
                    "vectors",
                    new BalanceVectorsPicture(
                            caption(job),
                            job.channel().orElseThrow().unit().display(),
                            runs,
                            job.answer()
                                    .advice()
                                    .filter(a -> job.answer().method() == BalanceAnswer.Method.WITH_PHASE)
                                    .map(DrawBalance::correction)));
        }
        pictures.put("hub", hub(job, new WeightFigures(lengths)));
        return pictures;
    }

    private static List<BalanceVectorsPicture.Run> runs(JobBalance job) {
        List<BalanceVectorsPicture.Run> runs = new ArrayList<>();
        for (JobBalance.Run run : job.runs()) {
            Optional<WeightedReading> reading =
                    run.reading().filter(r -> r.phaseDeg().isPresent());
            boolean check = job.checks().stream().anyMatch(c -> c.run().equals(run));
            reading.ifPresent(r -> runs.add(new BalanceVectorsPicture.Run(
                    run.name(),
                    check
                            ? BalanceVectorsPicture.Role.CHECK
                            : r.bare()
                                    ? BalanceVectorsPicture.Role.WITHOUT_WEIGHTS
                                    : BalanceVectorsPicture.Role.WITH_WEIGHTS,
                    r.amplitude(),
                    r.phaseDeg().getAsDouble())));
        }
        return runs;
    }

    private static BalanceVectorsPicture.Correction correction(Advice advice) {
        Phasor on = putOn(advice).stream().map(Weight::vectorGmm).reduce(Phasor.ZERO, Phasor::plus);
        Phasor added = advice.influence().perGmm().times(on);
        Phasor left = advice.influence().atRest().plus(added);
        return new BalanceVectorsPicture.Correction(
                added.magnitude(),
                added.degrees(),
                left.magnitude(),
                left.degrees(),
                advice.residual().high());
    }

    private static List<Weight> putOn(Advice advice) {
        return advice.split()
                .map(Split::weights)
                .orElseGet(() -> List.of(Weight.of(
                        Math.max(advice.massG(), Double.MIN_NORMAL),
                        advice.radiusMm(),
                        advice.correction().value().angleDeg())));
    }

    private static Picture hub(JobBalance job, WeightFigures figures) {
        List<HubWeightsPicture.Weight> weights = new ArrayList<>();
        job.on().forEach(w -> weights.add(weight(job, w, true, figures)));
        if (!job.leaveAsItIs()) {
            job.answer().advice().ifPresent(a -> putOn(a).forEach(w -> weights.add(weight(job, w, false, figures))));
        }
        return hub(
                job.installation(),
                caption(job),
                job.counted(),
                job.request().places().stream()
                        .map(place -> new HubWeightsPicture.Spot(place.name(), place.angleDeg()))
                        .toList(),
                weights);
    }

    /** The hub with its positions, and angles counted in one sense: to be held against the real one. */
    public static Picture counted(Installation installation, HubCounting counted) {
        return hub(
                installation,
                new Caption(List.of("angles counted " + counted.word().replace('-', ' '))),
                Optional.of(counted),
                List.of(),
                List.of());
    }

    private static Picture hub(
            Installation installation,
            Caption caption,
            Optional<HubCounting> counted,
            List<HubWeightsPicture.Spot> places,
            List<HubWeightsPicture.Weight> weights) {
        int blades = installation.propeller().blades();
        double sense = installation.hubCounting() == HubCounting.WITH_ROTATION ? -1 : 1;
        List<HubWeightsPicture.Spot> positions = new ArrayList<>();
        for (int p = 1; p <= blades; p++) {
            positions.add(new HubWeightsPicture.Spot("position " + p, sense * 360.0 * (p - 1) / blades));
        }
        Optional<Installation.Rotation> rotation = installation.propeller().rotation();
        return new HubWeightsPicture(
                caption,
                rotation.map(r -> r == Installation.Rotation.CLOCKWISE).orElse(true),
                rotation.isPresent(),
                counted.filter(c -> c == HubCounting.WITH_ROTATION).isPresent(),
                positions,
                places,
                weights);
    }

    private static HubWeightsPicture.Weight weight(
            JobBalance job, Weight weight, boolean onNow, WeightFigures figures) {
        return new HubWeightsPicture.Weight(
                figures.shortMass(weight.massG()) + " " + figures.massUnit() + " at "
                        + figures.radius(weight.radiusMm()) + ", "
                        + FigureFormat.fixed(job.asCounted(weight.angleDeg()), 0) + "°",
                weight.angleDeg(),
                onNow);
    }

    private static Caption caption(JobBalance job) {
        List<String> parts = new ArrayList<>();
        if (job.invented()) {
            parts.add("INVENTED");
        }
        parts.add(job.job());
        job.channel().ifPresent(c -> parts.add(Caption.channel(c.channel())));
        job.engineRpm().ifPresent(rpm -> parts.add(Caption.rpm(rpm)));
        parts.add(speed(job));
        return new Caption(parts);
    }

    private static String speed(JobBalance job) {
        if (job.runs().isEmpty()) {
            return "no run";
        }
        return job.runs().stream().allMatch(r -> r.conditions().speedConfirmed())
                ? "speed confirmed"
                : "speed NOT confirmed";
    }
}
