package evenblade.face.app;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.judge.balance.BalanceAtRest;
import evenblade.judge.balance.BenchReadings;
import evenblade.judge.balance.HubMoments;
import evenblade.judge.balance.HubMoments.BladeMoment;
import evenblade.judge.balance.Weight;
import evenblade.judge.tracking.Estimate;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.SwapFit;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Readings of blades and hubs at rest, typed into a file. */
public final class BalanceTyped {
    private BalanceTyped() {}

    /**
     * Reads a file of blades on a scale ({@code blades}) or of test masses ({@code bench}).
     *
     * @param job whose tip marks are looked at together with weighed blades
     * @return nothing where the file holds readings of runs
     * @throws evenblade.base.problem.BadInput with the line, where something in the file can't be used; where the blades
     *     aren't those of the job
     */
    public static Optional<BalanceAtRest> atRest(Path file, Optional<Path> job) {
        JsonObject json = JsonDocument.read(file);
        if (json.has("bench")) {
            return Optional.of(bench(json));
        }
        return json.has("blades") ? Optional.of(scale(json, job)) : Optional.empty();
    }

    private static BalanceAtRest bench(JsonObject json) {
        json.requireOnly("bench", "stepGmm");
        List<Weight> tests =
                json.objects("bench").stream().map(BalanceReadings::weight).toList();
        return BenchReadings.of(tests, json.number("stepGmm", 0, 1e6))
                .<BalanceAtRest>map(BalanceAtRest.Bench::new)
                .orElseThrow(() -> json.place("bench")
                        .found(tests.size() + " test masses", "three or more, at angles well spread round the hub"));
    }

    private static BalanceAtRest scale(JsonObject json, Optional<Path> job) {
        json.requireOnly("blades", "errorGmm");
        double error = json.number("errorGmm", 0, 1e9);
        Map<String, BladeMoment> moments = new LinkedHashMap<>();
        for (JsonObject blade : json.objects("blades")) {
            blade.requireOnly("name", "momentsGmm");
            List<Double> weighed = blade.numbers("momentsGmm");
            if (weighed.isEmpty()) {
                throw blade.refuse("momentsGmm", "one weighing or more, in g·mm");
            }
            moments.put(blade.text("name"), BladeMoment.of(blade.text("name"), weighed, error));
        }
        Layout now = new Layout(new ArrayList<>(moments.keySet()));
        return new BalanceAtRest.Scale(
                List.copyOf(moments.values()),
                HubMoments.unbalance(now, moments),
                HubMoments.choices(now, moments, track(json, now, job)),
                HubMoments.standardErrorGmm(moments));
    }

    /** Track spread that the marks since the last change predict for a layout. */
    private static Function<Layout, Optional<Double>> track(JsonObject json, Layout now, Optional<Path> job) {
        if (job.isEmpty()) {
            return layout -> Optional.empty();
        }
        SwapFit fit = SwapFit.of(JudgeTracking.judge(job.get()).now().sessions());
        List<String> marked = fit.latest().layout().blades();
        if (!Set.copyOf(marked).equals(Set.copyOf(now.blades()))) {
            throw json.place("blades")
                    .found(
                            "blades " + String.join(", ", now.blades()),
                            "those that were marked: " + String.join(", ", marked));
        }
        return layout -> fit.predictedTrack(layout).map(tips -> {
            List<Double> marks = tips.stream().map(Estimate::valueMm).toList();
            return Collections.max(marks) - Collections.min(marks);
        });
    }
}
