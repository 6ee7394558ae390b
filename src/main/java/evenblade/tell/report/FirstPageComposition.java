package evenblade.tell.report;

import evenblade.keep.job.Event;
import evenblade.keep.job.Particulars;
import evenblade.tell.chart.Caption;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.VelocityFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Puts the page for the customer together. */
final class FirstPageComposition {
    private static final int FULL_PERCENT = 100; // exact
    /** A bar that is there at all is seen. */
    private static final int LEAST_PERCENT = 1;

    private final ReportInput input;
    private final Story story;
    private final VelocityFigures velocities;

    private FirstPageComposition(ReportInput input) {
        this.input = input;
        this.story = new Story(input);
        this.velocities = new VelocityFigures(new FigureFormat(input.units()));
    }

    static FirstPage of(ReportInput input) {
        return new FirstPageComposition(input).page();
    }

    private FirstPage page() {
        Optional<Headline> line = story.headline();
        return new FirstPage(
                who(),
                story.sentences().stream().map(FirstPageComposition::together).toList(),
                line.map(this::bars).orElse(List.of()),
                line.map(FirstPageComposition::about).orElse(""),
                TipsPicture.of(input.record(), input.units()).stream().toList(),
                changes(),
                story.sure());
    }

    /** A number and its unit stay on one line. */
    private static String together(String sentence) {
        return sentence.replace(" %", "\u00a0%").replace(" mm/s", "\u00a0mm/s").replace(" in/s", "\u00a0in/s");
    }

    private List<KnownThing> who() {
        List<KnownThing> who = new ArrayList<>();
        for (Particulars.Item item : Particulars.Item.values()) {
            if (item != Particulars.Item.UNITS) {
                input.firstPage()
                        .particulars()
                        .get(item)
                        .ifPresent(text -> who.add(new KnownThing(item.title(), text)));
            }
        }
        return who;
    }

    private List<FirstPage.Bar> bars(Headline line) {
        OptionalDouble before = line.beforeMmS();
        OptionalDouble after = line.afterMmS();
        if (before.isPresent() && after.isPresent()) {
            double longer = Math.max(before.getAsDouble(), after.getAsDouble());
            return List.of(
                    bar(line, false, size(before.getAsDouble(), line.hiddenBefore()), before.getAsDouble() / longer),
                    bar(line, true, size(after.getAsDouble(), line.hiddenAfter()), after.getAsDouble() / longer));
        }
        if (line.change().percent().isEmpty()) {
            return List.of();
        }
        double left = 1 + line.change().percent().getAsDouble() / FULL_PERCENT;
        double longer = Math.max(1, left);
        return List.of(bar(line, false, "100 %", 1 / longer), bar(line, true, FigureFormat.share(left), left / longer));
    }

    private String size(double mmS, boolean hidden) {
        return (hidden ? "below " : "") + velocities.plain(mmS) + " " + velocities.unit();
    }

    private static FirstPage.Bar bar(Headline line, boolean after, String value, double share) {
        return new FirstPage.Bar(
                after ? "after" : "before",
                after ? line.after() : line.before(),
                value,
                (int) Math.max(LEAST_PERCENT, Math.round(FULL_PERCENT * share)),
                after);
    }

    private static String about(Headline line) {
        String measure = line.beforeMmS().isPresent()
                ? "peak velocity"
                : "the first run set to 100 %, for the scale of the sensor isn't known";
        return FigureFormat.capital(line.change().figure().name()) + ", "
                + Caption.channel(line.channel().channel()) + ", engine "
                + FigureFormat.rpm(line.pair().engineRpmBefore()) + " and "
                + FigureFormat.rpm(line.pair().engineRpmAfter()) + " rpm, " + measure + ".";
    }

    private List<FirstPage.NumberedChange> changes() {
        List<FirstPage.NumberedChange> changes = new ArrayList<>();
        for (Event event : story.changes()) {
            changes.add(new FirstPage.NumberedChange(changes.size() + 1, FigureFormat.day(event.at()), event.text()));
        }
        return changes;
    }
}
