package evenblade.tell.document;

import evenblade.input.recording.Source;
import evenblade.measure.lines.ChannelSpectrum;
import evenblade.measure.lines.LineOrders;
import evenblade.measure.lines.LineSpectrum;
import evenblade.measure.lines.SteadyLine;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.tell.document.Block.Tone;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What one recording shows without any speed: how it was looked at, and its steady lines. */
public final class SpectrumDocument {
    /** More don't help at a glance; all of them stand in the tables for other programs. Our own choice. */
    private static final int MOST_LINES = 20;

    private static final String NOT_STEADY = "not steady";

    private final ChannelSpectrum spectrum;
    private final Optional<RunOrders> run;
    private final Optional<DwellOrders> dwell;
    private final Document.Builder text = Document.begin();

    private SpectrumDocument(ChannelSpectrum spectrum, Optional<RunOrders> run, Optional<DwellOrders> dwell) {
        this.spectrum = spectrum;
        this.run = run;
        this.dwell = dwell;
    }

    /**
     * The whole answer.
     *
     * @param run speed and orders, where an installation was given
     * @param dwell the dwell whose orders are named, where there is one
     */
    public static Document of(
            ChannelSpectrum spectrum, Optional<RunOrders> run, Optional<DwellOrders> dwell, Phrases phrases) {
        SpectrumDocument document = new SpectrumDocument(spectrum, run, dwell);
        document.lookedAt();
        document.speed();
        document.lines();
        if (!spectrum.warnings().isEmpty()) {
            document.text.heading("To know");
            document.text.warnings(Tone.ITEM, phrases, spectrum.warnings());
        }
        return document.text.done();
    }

    private void lookedAt() {
        Source source = spectrum.source();
        LineSpectrum measured = spectrum.measured();
        text.known(
                "recording",
                source.file().getFileName() + ": " + source.kind().toUpperCase(Locale.ROOT)
                        + (source.lossy() ? " (lossy: not for comparison)" : "") + ", "
                        + FigureFormat.fixed(source.durationS(), 1) + " s at "
                        + FigureFormat.sampleRate(source.sampleRateHz()) + " Hz");
        text.known(
                "looked at",
                RunDocument.named(spectrum.channel()) + ", " + FigureFormat.fixed(spectrum.fromS(), 1) + " to "
                        + FigureFormat.fixed(spectrum.toS(), 1) + " s, " + FigureFormat.plain(measured.fromHz())
                        + " to "
                        + FigureFormat.plain(measured.upToHz()) + " Hz");
        text.known(
                "spectrum",
                "Hann window, bins of " + FigureFormat.plain(measured.resolutionHz()) + " Hz, mean of "
                        + measured.averages() + " half-overlapped stretches");
        if (!spectrum.others().isEmpty()) {
            text.known(
                    "not shown",
                    spectrum.others().stream().map(RunDocument::named).collect(Collectors.joining(", ")));
        }
    }

    private void speed() {
        run.ifPresent(each -> {
            text.say(Tone.ANSWER, SpeedWords.known(each));
            text.say(
                    Tone.NOTE,
                    dwell.map(known -> "Orders are those of the dwell " + SpeedWords.dwell(each, known.dwell()) + ".")
                            .orElse("No dwell of a confirmed speed is in this stretch, so no order is named."));
        });
    }

    private void lines() {
        List<SteadyLine> lines = spectrum.measured().lines();
        String alarm = FigureFormat.share(LineSpectrum.FALSE_ALARM);
        if (lines.isEmpty()) {
            text.say(
                    Tone.ANSWER,
                    "No line stands out of the noise. In noise alone, one would be seen by chance in " + alarm
                            + " of recordings at most.");
            return;
        }
        Document.TableBuilder table = text.table("Lines out of the noise, strongest first")
                .right("Hz")
                .point(spectrum.unit().display() + " peak")
                .point("± 95 %")
                .left("");
        lines.stream().limit(MOST_LINES).forEach(line -> row(table, line));
        table.end();
        if (lines.size() > MOST_LINES) {
            text.say(
                    Tone.NOTE,
                    FigureFormat.count(lines.size() - MOST_LINES, "weaker line")
                            + " not shown here; the tables for other programs have them all.");
        }
        if (lines.stream().anyMatch(line -> !line.steady())) {
            text.say(
                    Tone.NOTE,
                    "Not steady: it comes and goes, moves with the speed, or is two lines too close to each other. Of such"
                            + " a line the amplitude is only a mean; one that moves may show as several.");
        }
        text.say(
                Tone.NOTE,
                "In noise alone, a line would be seen by chance in " + alarm
                        + " of recordings at most. Lines less than "
                        + FigureFormat.plain(4 * spectrum.measured().resolutionHz())
                        + " Hz apart run into each other. A speed that drifts smears its lines and they read low:"
                        + " 'orders' measures along the speed.");
    }

    private void row(Document.TableBuilder table, SteadyLine line) {
        double half = FigureFormat.NINETY_FIVE * line.standardError();
        table.row(
                FigureFormat.fixed(line.frequencyHz(), 2),
                FigureFormat.value(line.amplitude(), half),
                FigureFormat.error(line.amplitude(), half),
                Stream.of(orders(line), line.steady() ? "" : NOT_STEADY)
                        .filter(word -> !word.isEmpty())
                        .collect(Collectors.joining("; ")));
    }

    /** The orders that it may be; empty where none is known. */
    private String orders(SteadyLine line) {
        return dwell.map(each -> String.join(
                        " = ", LineOrders.names(each, line, spectrum.measured().resolutionHz())))
                .orElse("");
    }
}
