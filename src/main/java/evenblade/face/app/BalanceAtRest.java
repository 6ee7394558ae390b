package evenblade.face.app;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.judge.balance.BenchReadings;
import evenblade.judge.balance.BladeMoment;
import evenblade.judge.balance.HubMoments;
import evenblade.judge.balance.Unbalance;
import evenblade.judge.balance.Weight;
import evenblade.judge.tracking.Estimate;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.SwapFit;
import evenblade.tell.document.Block;
import evenblade.tell.document.Document;
import evenblade.tell.document.FigureFormat;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * Balance without a run, from a file: blades on pivot and scale ({@code blades}), or test masses on knife edges or a
 * spindle ({@code bench}).
 */
public sealed interface BalanceAtRest {
    /**
     * In words.
     *
     * @param figures of the reader's unit of length
     */
    Document document(FigureFormat figures);

    /**
     * Test masses that just turned the hub.
     *
     * @param readings friction and correction
     */
    record Bench(BenchReadings readings) implements BalanceAtRest {
        @Override
        public Document document(FigureFormat figures) {
            Document.Builder text = Document.begin().subject("Balance by test masses, the engine standing");
            double gmm = readings.correction().gmm();
            text.say(
                    Block.Tone.ANSWER,
                    form(
                            "The test masses ask for %.0f g·mm (%.3f oz·in) at %.0f°. Friction: %.0f g·mm.",
                            gmm,
                            readings.correction().ounceInches(),
                            readings.correction().angleDeg(),
                            readings.frictionGmm()));
            if (readings.belowFriction()) {
                text.say(
                        Block.Tone.CAUTION,
                        "Below friction: the hub stays wherever it is put. Edges or a spindle that turn more easily show more.");
            }
            text.say(part(
                    "Horizontal (0° level)",
                    readings.correction().vectorGmm().re(),
                    readings.errorAlongGmm(),
                    readings.alongSeen()));
            text.say(part(
                    "Vertical (0° upright)",
                    readings.correction().vectorGmm().im(),
                    readings.errorAcrossGmm(),
                    readings.acrossSeen()));
            return text.handsOff().done();
        }

        private static String part(String name, double gmm, double error, boolean seen) {
            return form("%s: %+.0f ± %.0f g·mm%s", name, gmm, error, seen ? "." : ", within its error.");
        }
    }

    /**
     * Weighed blades.
     *
     * @param moments each blade's, as they sit now from hub position 1 on
     * @param now what they leave as they sit
     * @param choices layouts, the least unbalance first
     * @param errorGmm standard error of each part of an unbalance
     */
    record Scale(List<BladeMoment> moments, Unbalance now, List<HubMoments.Option> choices, double errorGmm)
            implements BalanceAtRest {
        /** Standard errors by which a layout has to be better before blades are moved for it. */
        private static final double CLEARLY = 2;

        @Override
        public Document document(FigureFormat figures) {
            Document.Builder text = Document.begin().subject("Balance by weighed blades");
            Document.TableBuilder blades =
                    text.table("").left("blade").right("moment g·mm").right("±");
            moments.forEach(m -> blades.row(m.blade(), form("%.0f", m.gmm()), form("%.0f", m.standardErrorGmm())));
            blades.end();
            Document.TableBuilder layouts = text.table("Layouts, the least unbalance first:")
                    .left("layout")
                    .right("left g·mm")
                    .right("at °");
            if (trackKnown()) {
                layouts.right("track spread " + figures.unit().sign());
            }
            choices.forEach(c -> {
                List<String> row = new ArrayList<>(List.of(
                        c.layout().text(),
                        form("%.0f", c.unbalance().gmm()),
                        form("%.0f", c.unbalance().angleDeg())));
                if (trackKnown()) {
                    row.add(c.trackSpreadMm().map(figures::number).orElse("–"));
                }
                layouts.row(row.toArray(String[]::new));
            });
            layouts.end();
            double better = now.gmm() - choices.get(0).unbalance().gmm();
            text.say(
                    Block.Tone.ANSWER,
                    form("As they sit now: %.0f g·mm at %.0f°. ", now.gmm(), now.angleDeg())
                            + (better < CLEARLY * errorGmm
                                    ? "No layout is clearly better: leave the blades where they are."
                                    : form("The first layout is better by %.0f g·mm.", better)));
            text.say(form("Each is good to ± %.0f g·mm (standard error).", errorGmm));
            if (trackKnown()) {
                text.say("Track as the tip marks of this job predict it. Where there is a dash they can't: mark the tips in"
                        + " another layout. Left out is what is worse than another in both.");
            }
            text.say((trackKnown() ? "" : "Track isn't weighed here. ")
                    + "A heavy blade and a bent blade move together: what shaking goes with them may come from either. Mark"
                    + " the tips again after you move blades.");
            return text.handsOff().done();
        }

        private boolean trackKnown() {
            return choices.stream().anyMatch(c -> c.trackSpreadMm().isPresent());
        }
    }

    /**
     * Reads a file of such readings.
     *
     * @param job whose tip marks are looked at together with weighed blades
     * @return nothing where the file holds readings of runs
     * @throws evenblade.base.problem.BadInput with the line, where something in the file can't be used; where the blades
     *     aren't those of the job
     */
    static Optional<BalanceAtRest> read(Path file, Optional<Path> job) {
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
                .map(Bench::new)
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
        return new Scale(
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
                    .found("blades " + String.join(", ", now.blades()), "those that were marked: "
                            + String.join(", ", marked));
        }
        return layout -> fit.predictedTrack(layout).map(tips -> {
            List<Double> marks = tips.stream().map(Estimate::valueMm).toList();
            return Collections.max(marks) - Collections.min(marks);
        });
    }

    private static String form(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
