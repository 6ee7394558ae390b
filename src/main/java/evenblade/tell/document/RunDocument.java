package evenblade.tell.document;

import evenblade.base.fact.Fact;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Source;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.DwellOrders.UnexplainedLine;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.tell.document.Block.Tone;
import evenblade.tell.document.Block.Weight;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** One ground run: how fast and how sure, how good the recording is, and what shook. */
public final class RunDocument {
    /** More dwells than this don't help in a summary. Our own choice. */
    private static final int DWELLS_IN_SHORT = 6;

    /** How much of a run is shown. */
    public enum Extent {
        /** Every channel, every dwell, every line. */
        ALL,
        /** The first channel, every dwell, every line. */
        FIRST_CHANNEL,
        /** The first channel in its longest dwell; of lines in the noise only the names. */
        IN_BRIEF
    }

    private final RunOrders run;
    private final Extent extent;
    private final Phrases phrases;
    private final Document.Builder text = Document.begin();

    private RunDocument(RunOrders run, Extent extent, Phrases phrases) {
        this.phrases = phrases;
        this.run = run;
        this.extent = extent;
    }

    /** The whole answer. */
    public static Document of(RunOrders run, Extent extent, Phrases phrases) {
        RunDocument document = new RunDocument(run, extent, phrases);
        document.speed();
        document.recording();
        document.text.picture(PictureSlot.Shows.RUN);
        document.channels();
        document.toKnow();
        return document.text.done();
    }

    /** One dwell of one channel. */
    public static Document dwell(RunOrders run, ChannelOrders channel, DwellOrders dwell, Phrases phrases) {
        RunDocument document = new RunDocument(run, Extent.ALL, phrases);
        document.dwell(channel, dwell);
        return document.text.done();
    }

    /** How fast and how sure. */
    public static Document speed(RunOrders run, Phrases phrases) {
        RunDocument document = new RunDocument(run, Extent.ALL, phrases);
        document.speed();
        return document.text.done();
    }

    /** What is to be known beside the figures. */
    public static Document toKnow(RunOrders run, Phrases phrases) {
        RunDocument document = new RunDocument(run, Extent.ALL, phrases);
        document.recording();
        document.toKnow();
        return document.text.done();
    }

    /** What shook in a few lines: the speed, then propeller 1× and blade pass of the first channel in each dwell. */
    public static Document inShort(RunOrders run, Phrases phrases) {
        RunDocument document = new RunDocument(run, Extent.ALL, phrases);
        document.speed();
        run.channels().stream().limit(1).forEach(document::levels);
        return document.text.done();
    }

    private void speed() {
        text.say(Tone.ANSWER, SpeedWords.known(run));
        run.speed().main().ifPresent(main -> {
            text.known("engine", SpeedWords.engine(run, main));
            text.known("propeller", SpeedWords.propeller(run, main));
        });
        SpeedResult speed = run.speed();
        if (speed.confirmed()) {
            text.known("clock", SpeedWords.clock(run));
            speed.main()
                    .map(Dwell::confirmedBy)
                    .filter(lines -> !lines.isEmpty())
                    .ifPresent(lines ->
                            text.known("by", lines.stream().map(OrderLine::name).collect(Collectors.joining(", "))));
            speed.doubtful()
                    .forEach(dwell -> text.known(
                            "not confirmed",
                            "from " + FigureFormat.fixed(dwell.fromS(), 1) + " to " + FigureFormat.fixed(dwell.toS(), 1)
                                    + " s, nothing measured there: " + phrases.text(Fact.of(dwell.doubt()))));
        } else {
            speed.doubt().ifPresent(doubt -> text.add(new Block.Known("why", phrases.sentence(doubt))));
        }
        if (speed.otherMachine().orElse(false)) {
            text.known("beside", "another machine's lines stand out");
        }
    }

    private void recording() {
        Source source = run.source();
        text.known(
                "recording",
                source.file().getFileName() + ": " + source.kind().toUpperCase(Locale.ROOT)
                        + (source.lossy() ? " (lossy: only to be compared with runs stored alike)" : "") + ", "
                        + FigureFormat.fixed(source.durationS(), 1) + " s at "
                        + FigureFormat.sampleRate(source.sampleRateHz()) + " Hz, " + SpeedWords.dwells(run));
        run.quality().stream()
                .filter(RunDocument::blemished)
                .forEach(channel -> text.known(named(channel.channel()), quality(channel)));
        run.stamps()
                .ifPresent(stamps -> text.known(
                        "time stamps",
                        "jitter " + FigureFormat.plain(100 * stamps.jitterShare()) + " % of a step, "
                                + FigureFormat.count(stamps.gaps(), "gap")
                                + (stamps.gaps() > 0
                                        ? " of " + FigureFormat.plain(stamps.lostS()) + " s in all"
                                        : "")));
    }

    private static boolean blemished(ChannelQuality channel) {
        return channel.clippedShare() > 0 || channel.longestStuckRun() > 1;
    }

    private static String quality(ChannelQuality channel) {
        String clipped = channel.clippedShare() > 0
                ? FigureFormat.plain(100 * channel.clippedShare()) + " % of the samples clipped"
                : "no clipping";
        return clipped
                + (channel.longestStuckRun() > 1
                        ? ", stuck for " + channel.longestStuckRun() + " samples at most"
                        : "");
    }

    private void channels() {
        List<ChannelOrders> shown = run.channels().stream()
                .limit(extent == Extent.ALL ? Long.MAX_VALUE : 1)
                .toList();
        for (ChannelOrders channel : shown) {
            channel.dwells().stream()
                    .filter(each -> extent != Extent.IN_BRIEF || isMain(each.dwell()))
                    .forEach(each -> dwell(channel, each));
        }
        if (shown.size() < run.channels().size()) {
            text.say(
                    Tone.NOTE,
                    "Also measured, and listed in orders.csv: "
                            + run.channels().stream()
                                    .skip(shown.size())
                                    .map(each -> named(each.channel()))
                                    .collect(Collectors.joining(", "))
                            + ".");
        }
    }

    private boolean isMain(Dwell dwell) {
        return run.speed().main().filter(dwell::equals).isPresent();
    }

    private void dwell(ChannelOrders channel, DwellOrders measured) {
        Document.TableBuilder table = text.table(FigureFormat.capital(named(channel.channel())) + ", dwell "
                        + (channel.dwells().indexOf(measured) + 1) + " of "
                        + channel.dwells().size() + ": " + SpeedWords.dwell(run, measured.dwell()))
                .left("order")
                .right("Hz")
                .point(channel.unit().display() + " peak")
                .point("± 95 %")
                .left("");
        List<LineCells> lines = LineCells.of(measured, run.speed().confirmed());
        lines.stream()
                .filter(line -> extent != Extent.IN_BRIEF || !line.hidden())
                .forEach(line -> table.row(
                        line.hidden() || line.amplitude().isEmpty() ? Weight.FAINT : Weight.PLAIN,
                        line.name(),
                        line.hz(),
                        line.amplitude(),
                        line.range(),
                        line.remark()));
        table.end();
        String hidden =
                lines.stream().filter(LineCells::hidden).map(LineCells::name).collect(Collectors.joining(", "));
        if (extent == Extent.IN_BRIEF && !hidden.isEmpty()) {
            text.say(Tone.NOTE, "Not out of the noise: " + hidden + ".");
        }
        measured.unevenness()
                .ifPresent(each -> text.say(
                        Tone.NOTE,
                        "Unevenness " + FigureFormat.withRange(each.value(), each.ciLow(), each.ciHigh())
                                + ": lines that only differing blades or the shaft make, over blade pass and its"
                                + " multiples. No gain can change it."));
        unexplained(measured, channel);
    }

    private void unexplained(DwellOrders measured, ChannelOrders channel) {
        Document.TableBuilder table = text.table("Other steady lines, explained by no order")
                .right("Hz")
                .right(channel.unit().display() + " peak")
                .right("× propeller")
                .right("× crank")
                .left("");
        for (UnexplainedLine line : measured.unexplained()) {
            table.row(
                    FigureFormat.fixed(line.frequencyHz(), 2),
                    FigureFormat.plain(line.amplitude()),
                    FigureFormat.fixed(line.propellerOrder(), 3),
                    FigureFormat.fixed(line.crankOrder(), 3),
                    kin(line));
        }
        table.end();
    }

    /** What a line may belong to; empty where nothing is known. */
    private static String kin(UnexplainedLine line) {
        if (line.hum()) {
            return "mains hum?";
        }
        if (line.followsSpeed()) {
            return "moves with the speed";
        }
        if (line.ofThePropeller()) {
            return "a whole order of the propeller?";
        }
        return line.ofTheCrank() ? "a whole order of the crank?" : "";
    }

    private void levels(ChannelOrders channel) {
        for (DwellOrders dwell :
                channel.dwells().stream().limit(DWELLS_IN_SHORT).toList()) {
            String levels = LineCells.places(dwell).stream()
                    .filter(place -> tellsMost(place.first().line()))
                    .map(place -> LineCells.of(place, run.speed().confirmed()))
                    .map(line -> line.name() + " " + line.level())
                    .collect(Collectors.joining(", "));
            text.say(FigureFormat.rpm(dwell.dwell().propellerRpm() * run.ratio()) + " engine rpm: " + levels + " ("
                    + channel.unit().display() + " peak, " + named(channel.channel()) + ")" + strongest(dwell.dwell()));
        }
        int more = channel.dwells().size() - DWELLS_IN_SHORT;
        if (more > 0) {
            text.say("and " + FigureFormat.count(more, "more dwell"));
        }
    }

    /** The strongest line of either shaft in a dwell, each with the channel that feels it most. */
    private String strongest(Dwell dwell) {
        return Stream.of(Shaft.PROPELLER, Shaft.CRANK)
                .flatMap(shaft -> strongest(dwell, shaft).stream())
                .distinct()
                .collect(Collectors.collectingAndThen(
                        Collectors.joining(", "), lines -> lines.isEmpty() ? "" : "; strongest: " + lines));
    }

    private Optional<String> strongest(Dwell dwell, Shaft shaft) {
        SignalUnit unit = run.channels().get(0).unit();
        double most = 0;
        Optional<String> strongest = Optional.empty();
        for (ChannelOrders channel : run.channels()) {
            for (DwellOrders each : channel.dwells()) {
                for (OnePlace<OrderReading> place : LineCells.places(each)) {
                    OrderReading reading = place.first();
                    if (each.dwell().equals(dwell)
                            && channel.unit().equals(unit)
                            && place.all().stream().anyMatch(one -> one.line().of() == shaft)
                            && reading.detected()
                            && reading.level() instanceof Level.Measured measured
                            && measured.amplitude() > most) {
                        most = measured.amplitude();
                        LineCells line = LineCells.of(place, run.speed().confirmed());
                        strongest =
                                Optional.of(line.name() + " " + line.level() + " (" + named(channel.channel()) + ")");
                    }
                }
            }
        }
        return strongest;
    }

    /** Whether a line is one of the two that say most about a propeller. */
    private static boolean tellsMost(OrderLine line) {
        return line.bladePass() || line.propellerOnce();
    }

    private void toKnow() {
        if (!run.warnings().isEmpty()) {
            text.heading("To know");
            text.warnings(Tone.ITEM, phrases, run.warnings());
        }
        if (extent == Extent.ALL) {
            text.say(
                    Tone.CAUTION,
                    "Measured, not judged: whether it flies is for the licensed person to say. Ignition off before a"
                            + " hand goes near the propeller.");
        }
    }

    /** A channel by its name, whether or not the name says that it is one. */
    public static String named(String channel) {
        return channel.toLowerCase(Locale.ROOT).startsWith("channel") ? channel : "channel '" + channel + "'";
    }
}
