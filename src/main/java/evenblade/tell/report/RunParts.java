package evenblade.tell.report;

import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Source;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.RunSettings;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.orders.UnexplainedLine;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.OrderBar;
import evenblade.tell.chart.OrderRows;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** A ground run in words: how it was measured, how good it is, how fast, and what shook. */
public final class RunParts {
    private static final double NINETY_FIVE = 1.96;
    private static final double SECONDS_PER_MINUTE = 60;
    private static final int UNEXPLAINED_SHOWN = 5;

    private RunParts() {}

    /**
     * A run that was measured.
     *
     * @param trouble why the answer is not to be trusted; empty where all is well
     */
    public static RunPart of(Event event, String name, RunOrders orders, String trouble, List<ReportFigure> figures) {
        return new RunPart(
                title(event, name),
                event.text(),
                trouble,
                conditions(event),
                quality(orders),
                speed(orders),
                tables(orders),
                orders.warnings().stream()
                        .map(Phrases.of(Face.PAPER)::text)
                        .map(RunParts::capital)
                        .toList(),
                figures);
    }

    /** A run without an answer. */
    public static RunPart without(Event event, String name, String trouble) {
        return new RunPart(
                title(event, name),
                event.text(),
                trouble,
                conditions(event),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private static String title(Event event, String name) {
        return name + ", " + Amounts.minute(event.at()) + " (" + event.id() + ")";
    }

    private static List<KnownThing> conditions(Event event) {
        Detail.Run detail = (Detail.Run) event.detail();
        List<KnownThing> conditions = new ArrayList<>();
        detail.conditions()
                .entries()
                .forEach((condition, value) -> conditions.add(new KnownThing(capital(condition.word()), value)));
        if (conditions.isEmpty()) {
            conditions.add(new KnownThing(
                    "Conditions", "none were noted: it can't be known whether like was compared with like"));
        }
        settings(detail.settings(), conditions);
        return conditions;
    }

    private static void settings(RunSettings settings, List<KnownThing> facts) {
        settings.engineRpm()
                .ifPresent(
                        rpm -> facts.add(new KnownThing("Entered speed", "engine " + Amounts.fixed(rpm, 0) + " rpm")));
        settings.propellerRpm()
                .ifPresent(rpm ->
                        facts.add(new KnownThing("Entered speed", "propeller " + Amounts.fixed(rpm, 0) + " rpm")));
        settings.fullScale().ifPresent(value -> facts.add(new KnownThing("Full scale", value)));
        settings.markChannel().ifPresent(value -> facts.add(new KnownThing("Mark on channel", value)));
        if (!settings.table().unsaid()) {
            facts.add(new KnownThing("Table read with", settings.table().words()));
        }
    }

    private static List<KnownThing> quality(RunOrders orders) {
        List<KnownThing> facts = new ArrayList<>();
        Source source = orders.source();
        facts.add(new KnownThing(
                "Recording",
                source.kind().toUpperCase(Locale.ROOT) + (source.lossy() ? " (lossy: only to be compared with runs stored alike)" : "")
                        + ", " + Amounts.fixed(source.durationS(), 1) + " s at "
                        + Amounts.fixed(source.sampleRateHz(), source.sampleRateHz() % 1 == 0 ? 0 : 2)
                        + " samples per second"));
        for (ChannelQuality channel : orders.quality()) {
            String stuck = channel.longestStuckRun() > 1
                    ? ", stuck for " + channel.longestStuckRun() + " samples at most"
                    : "";
            String clipped = channel.clippedShare() > 0
                    ? Amounts.plain(100 * channel.clippedShare()) + " % of the samples clipped"
                    : "no clipping";
            facts.add(new KnownThing(capital(Caption.channel(channel.channel())), clipped + stuck));
        }
        orders.stamps()
                .ifPresent(stamps -> facts.add(new KnownThing(
                        "Time stamps",
                        "jitter " + Amounts.plain(100 * stamps.jitterShare()) + " % of a step, "
                                + Amounts.count(stamps.gaps(), "gap")
                                + (stamps.gaps() > 0 ? " of " + Amounts.plain(stamps.lostS()) + " s in all" : ""))));
        return facts;
    }

    private static List<String> speed(RunOrders orders) {
        SpeedResult speed = orders.speed();
        if (speed.main().isEmpty()) {
            return List.of("Speed not found, and none was entered: no order could be measured. "
                    + capital(speed.doubt().orElse("")));
        }
        Dwell main = speed.main().get();
        if (!speed.confirmed()) {
            return List.of("Speed NOT CONFIRMED: all figures of this run stand on the entered "
                    + Amounts.fixed(main.propellerRpm() * orders.ratio(), 0) + " engine rpm alone. "
                    + capital(speed.doubt().orElse("")));
        }
        String origin = speed.origin() == SpeedResult.Origin.MARK ? "the once-per-turn mark" : "the signal";
        return List.of("Speed confirmed by " + origin + ": engine " + rpm(main, orders.ratio()) + ", propeller "
                + rpm(main, 1) + " (95 %); "
                + Amounts.count(speed.dwells().size(), "dwell") + ".");
    }

    private static String rpm(Dwell dwell, double factor) {
        double error = NINETY_FIVE * SECONDS_PER_MINUTE * dwell.standardErrorHz() * factor;
        int decimals = Math.min(2, error > 0 ? Amounts.decimals(error) : 2);
        double shown = Math.max(error, 0.5 * Math.pow(10, -decimals));
        return Amounts.fixed(dwell.propellerRpm() * factor, decimals) + " ± " + Amounts.fixed(shown, decimals) + " rpm";
    }

    private static List<RunPart.Table> tables(RunOrders orders) {
        List<RunPart.Table> tables = new ArrayList<>();
        if (orders.channels().isEmpty()) {
            return tables;
        }
        ChannelOrders channel = orders.channels().get(0);
        for (DwellOrders dwell : channel.dwells()) {
            boolean main = orders.speed().main().filter(dwell.dwell()::equals).isPresent();
            tables.add(table(orders, channel, dwell, main));
        }
        return tables;
    }

    private static RunPart.Table table(RunOrders orders, ChannelOrders channel, DwellOrders dwell, boolean main) {
        List<String> sentences = new ArrayList<>();
        dwell.unevenness()
                .ifPresent(u -> sentences.add("Unevenness " + Amounts.plain(u.value()) + " (95 %: "
                        + Amounts.plain(u.ciLow()) + " to " + Amounts.plain(u.ciHigh())
                        + "): lines that only differing blades or the shaft make, over blade pass and its multiples."
                        + " No gain can change it."));
        if (!dwell.unexplained().isEmpty()) {
            sentences.add("Steady lines that no order explains: "
                    + dwell.unexplained().stream()
                            .limit(UNEXPLAINED_SHOWN)
                            .map(line -> unexplained(line, channel))
                            .collect(Collectors.joining("; "))
                    + (dwell.unexplained().size() > UNEXPLAINED_SHOWN
                            ? "; and " + (dwell.unexplained().size() - UNEXPLAINED_SHOWN) + " weaker ones"
                            : "")
                    + ".");
        }
        if (orders.channels().size() > 1) {
            sentences.add("Also measured, and listed in orders.csv: "
                    + orders.channels().stream()
                            .skip(1)
                            .map(ChannelOrders::channel)
                            .map(Caption::channel)
                            .collect(Collectors.joining(", "))
                    + ".");
        }
        String title = capital(Caption.channel(channel.channel())) + ", "
                + Amounts.fixed(dwell.dwell().fromS(), 1) + " to "
                + Amounts.fixed(dwell.dwell().toS(), 1) + " s, engine "
                + Amounts.fixed(dwell.dwell().propellerRpm() * orders.ratio(), 0) + " rpm, propeller "
                + Amounts.fixed(dwell.dwell().propellerRpm(), 0) + " rpm"
                + (orders.speed().confirmed() ? "" : ", SPEED NOT CONFIRMED");
        return new RunPart.Table(
                title,
                channel.unit().display(),
                main,
                OrderRows.bars(dwell).stream().map(RunParts::row).toList(),
                sentences);
    }

    private static String unexplained(UnexplainedLine line, ChannelOrders channel) {
        return Amounts.fixed(line.frequencyHz(), 1) + " Hz (" + Amounts.plain(line.amplitude()) + " "
                + channel.unit().display() + ", " + Amounts.fixed(line.propellerOrder(), 2) + "× propeller, "
                + Amounts.fixed(line.crankOrder(), 2) + "× crank)";
    }

    private static RunPart.Row row(OrderBar bar) {
        String near = String.join(", ", bar.notToldApartFrom());
        if (bar.level() instanceof Level.Measured level) {
            String amplitude =
                    level.detected() ? Amounts.withInterval(level) : "below " + Amounts.plain(level.ciHigh());
            String interval =
                    level.detected() ? Amounts.plain(level.ciLow()) + " to " + Amounts.plain(level.ciHigh()) : "";
            return new RunPart.Row(
                    bar.name(),
                    Amounts.fixed(bar.frequencyHz(), 2),
                    amplitude,
                    interval,
                    near,
                    level.detected(),
                    !level.detected());
        }
        Level.BeyondRange beyond = (Level.BeyondRange) bar.level();
        return new RunPart.Row(
                bar.name(),
                Amounts.fixed(bar.frequencyHz(), 2),
                "beyond this recording",
                "",
                "would fold to " + Amounts.fixed(beyond.foldsToHz(), 1) + " Hz",
                false,
                false);
    }

    static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
