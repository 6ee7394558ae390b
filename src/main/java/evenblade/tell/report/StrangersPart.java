package evenblade.tell.report;

import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.machine.installation.OrderLine;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.tell.chart.Caption;
import evenblade.tell.document.Block.Tone;
import evenblade.tell.document.Block.Weight;
import evenblade.tell.document.Document;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.InstallationDocument;
import evenblade.tell.document.OnePlace;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.PictureSlot;
import evenblade.tell.document.PictureSlot.Shows;
import evenblade.tell.document.TrackingDocument;
import evenblade.tell.document.VelocityFigures;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a stranger needs to judge the first page: trend, tip marks, balance, orders, what was measured with what. */
final class StrangersPart {
    private static final String NOT_NOTED = "–";

    private final ReportInput input;
    private final FigureFormat lengths;
    private final Phrases phrases;
    private final VelocityFigures velocities;

    private StrangersPart(ReportInput input) {
        this.input = input;
        this.lengths = new FigureFormat(input.units());
        this.phrases = new Phrases(Face.PAPER, lengths);
        this.velocities = new VelocityFigures(lengths);
    }

    static List<Section> of(ReportInput input) {
        StrangersPart part = new StrangersPart(input);
        List<Section> sections = new ArrayList<>();
        part.trend().ifPresent(sections::add);
        part.tips().ifPresent(sections::add);
        input.answers().stream()
                .filter(answer -> answer.figures().containsKey(PictureSlot.of(Shows.BALANCE)))
                .forEach(sections::add);
        part.orders().ifPresent(sections::add);
        part.measured().ifPresent(sections::add);
        sections.add(new Section(
                Document.begin()
                        .subject("The installation")
                        .addAll(InstallationDocument.of(input.record().installation(), part.phrases))
                        .addAll(InstallationDocument.limits(input.record().installation(), part.phrases))
                        .done(),
                Map.of()));
        return sections;
    }

    private Optional<Section> trend() {
        Document.Builder text = Document.begin().subject("Over the whole job").picture(Shows.RUN);
        int number = 1;
        for (Event change : new Story(input).changes()) {
            text.known(number + ".", change.text());
            number++;
        }
        return input.trend().stream()
                .findFirst()
                .map(figure -> new Section(text.done(), Map.of(PictureSlot.of(Shows.RUN), List.of(figure))));
    }

    private Optional<Section> tips() {
        List<Event> marked = input.record().standing(Kind.TRACKING);
        if (marked.isEmpty()) {
            return Optional.empty();
        }
        Event first = marked.get(0);
        Event last = marked.get(marked.size() - 1);
        boolean twice = marked.size() > 1
                && TipsPicture.session(first).layout().positions()
                        == TipsPicture.session(last).layout().positions();
        String unit = input.units().sign();
        Document.Builder text =
                Document.begin().subject(twice ? "Tracking before and after" : "Tracking as it was marked");
        Document.TableBuilder table = text.table(
                        "Tips above the lowest one, " + unit + ", and the hub position of each blade")
                .left("blade")
                .left("hub, first")
                .point("first");
        if (twice) {
            table.left("hub, last").point("last");
        }
        for (String blade :
                TipsPicture.session(first).layout().blades().stream().sorted().toList()) {
            List<String> cells = new ArrayList<>(List.of(blade));
            cells.addAll(tip(first, blade));
            if (twice) {
                cells.addAll(tip(last, blade));
            }
            table.row(cells.toArray(String[]::new));
        }
        table.end();
        text.say("First: " + spread(first));
        if (marked.size() > 1) {
            text.say("Last: " + spread(last));
        }
        return Optional.of(new Section(text.done(), Map.of()));
    }

    /** Where a blade sat and how far its tip stood above the lowest; two dashes for a blade that wasn't there. */
    private List<String> tip(Event event, String blade) {
        TrackingSession session = TipsPicture.session(event);
        int place = session.layout().blades().indexOf(blade);
        if (place < 0) {
            return List.of("–", "–");
        }
        List<Double> marks = session.marksMm();
        return List.of(String.valueOf(place + 1), lengths.number(marks.get(place) - Collections.min(marks)));
    }

    private String spread(Event event) {
        TrackingSession session = TipsPicture.session(event);
        List<LimitCheck> checks = LimitCheck.track(input.record().installation().limits(), session.marksMm());
        return FigureFormat.minute(event.at()) + " (" + event.id() + "), spread " + lengths.both(session.spreadMm())
                + ", " + TrackingDocument.againstLimits(checks, phrases) + ", error of one mark "
                + lengths.both(session.sigma()) + ".";
    }

    private Optional<Section> orders() {
        List<ReportedRun> answered =
                input.runs().stream().filter(run -> run.measured().isPresent()).toList();
        if (answered.isEmpty()) {
            return Optional.empty();
        }
        Optional<DwellComparison> pair = input.comparisons().stream()
                .findFirst()
                .flatMap(compared -> ComparisonPictures.mainPair(compared.outcome()));
        List<Measured> shown = new ArrayList<>();
        Document.Builder text = Document.begin().subject("Orders of the first run and of the last");
        measured(answered.get(0), pair.map(DwellComparison::engineRpmBefore), text)
                .ifPresent(shown::add);
        if (answered.size() > 1) {
            measured(answered.get(answered.size() - 1), pair.map(DwellComparison::engineRpmAfter), text)
                    .ifPresent(shown::add);
        }
        shown.forEach(each -> text.say(each.about()));
        orders(shown, text);
        text.say(
                Tone.NOTE,
                "Peak values in one dwell (a steady stretch at one speed). ± holds 95 %. Left out: lines that stand out of the"
                        + " noise in neither run.");
        return Optional.of(new Section(text.done(), Map.of()));
    }

    /** One run at one steady speed. */
    private record Measured(String about, DwellOrders dwell, SignalUnit unit) {
        Optional<OrderReading> reading(OrderLine line) {
            return dwell.readings().stream()
                    .filter(reading -> reading.line().equals(line) && reading.level() instanceof Level.Measured)
                    .findFirst();
        }

        String hertz(OrderLine line) {
            return reading(line)
                    .map(reading -> FigureFormat.fixed(reading.frequencyHz(), 2))
                    .orElse("–");
        }

        String amplitude(OrderLine line) {
            return reading(line)
                    .map(reading -> FigureFormat.level((Level.Measured) reading.level()))
                    .orElse("–");
        }

        String velocity(OrderLine line, VelocityFigures velocities) {
            return reading(line)
                    .map(reading -> StrangersPart.velocity(reading, (Level.Measured) reading.level(), unit, velocities))
                    .orElse("–");
        }
    }

    /** One run at the speed that was compared, else at its longest dwell. */
    private Optional<Measured> measured(ReportedRun run, Optional<Double> engineRpm, Document.Builder text) {
        MeasuredRun measured = run.measured().orElseThrow();
        Optional<ChannelOrders> channel = LastRun.channel(measured, new Story(input).channel());
        Optional<DwellOrders> dwell = channel.flatMap(each -> engineRpm.isPresent()
                ? each.dwells().stream()
                        .min(Comparator.comparingDouble(d -> Math.abs(measured.engineRpm(d.dwell()) - engineRpm.get())))
                : LastRun.longest(each));
        if (dwell.isEmpty()) {
            text.say("Run '" + run.name() + "': no steady speed known, so no order could be measured.");
            return Optional.empty();
        }
        String about = "Run '" + run.name() + "', "
                + Caption.channel(channel.get().channel()) + ", engine "
                + FigureFormat.rpm(measured.engineRpm(dwell.get().dwell())) + " rpm";
        return Optional.of(new Measured(about, dwell.get(), channel.get().unit()));
    }

    private void orders(List<Measured> shown, Document.Builder text) {
        if (shown.isEmpty()) {
            return;
        }
        Document.TableBuilder table =
                text.table(shown.size() > 1 ? "First and last" : "").left("line");
        for (Measured each : shown) {
            String which = shown.size() == 1 ? "" : each.equals(shown.get(0)) ? ", first" : ", last";
            table.point("Hz" + which).point(each.unit().display() + which).point(velocities.unit() + which);
        }
        for (OnePlace<OrderReading> place : OnePlace.of(shown.get(0).dwell().readings(), OrderReading::line)) {
            OrderLine line = place.first().line();
            boolean detected = shown.stream()
                    .anyMatch(each ->
                            each.reading(line).filter(OrderReading::detected).isPresent());
            if (detected || line.propellerOnce()) {
                List<String> cells = new ArrayList<>(List.of(place.name()));
                shown.forEach(each ->
                        cells.addAll(List.of(each.hertz(line), each.amplitude(line), each.velocity(line, velocities))));
                table.row(detected ? Weight.PLAIN : Weight.FAINT, cells.toArray(String[]::new));
            }
        }
        table.end();
    }

    private static String velocity(
            OrderReading reading, Level.Measured level, SignalUnit unit, VelocityFigures velocities) {
        double amplitude = level.detected() ? level.amplitude() : FigureFormat.limit(level);
        OptionalDouble velocity = Velocity.mmS(amplitude, unit, reading.frequencyHz());
        return velocity.isEmpty()
                ? "not known"
                : level.detected()
                        ? velocities.plain(velocity.getAsDouble())
                        : velocities.below(velocity.getAsDouble());
    }

    private Optional<Section> measured() {
        if (input.runs().isEmpty()) {
            return Optional.empty();
        }
        Document.Builder text = Document.begin().subject("What was measured with what");
        List<Condition> differing = new ArrayList<>();
        for (Condition condition : Condition.NOTED) {
            List<String> said = input.runs().stream()
                    .map(run -> noted(run, condition))
                    .distinct()
                    .toList();
            if (said.size() > 1) {
                differing.add(condition);
            } else if (!said.get(0).equals(NOT_NOTED)) {
                text.known(condition.word() + ", all runs", said.get(0));
            }
        }
        Document.TableBuilder table = text.table("Ground runs").left("run").left("when");
        differing.forEach(condition -> table.left(condition.word()));
        for (ReportedRun run : input.runs()) {
            List<String> cells = new ArrayList<>(List.of(
                    run.name() + " (" + run.event().id() + ")" + speed(run),
                    FigureFormat.minute(run.event().at())));
            differing.forEach(condition -> cells.add(noted(run, condition)));
            table.row(cells.toArray(String[]::new));
        }
        table.end();
        input.runs().stream()
                .filter(ReportedRun::troubled)
                .forEach(run -> text.say(Tone.CAUTION, "Run '" + run.name() + "': " + run.trouble()));
        return Optional.of(new Section(text.done(), Map.of()));
    }

    private static String speed(ReportedRun run) {
        return run.measured()
                .map(measured -> measured.speedDoubt().isEmpty() ? "" : ", speed NOT confirmed")
                .orElse(", no result");
    }

    private static String noted(ReportedRun run, Condition condition) {
        return ((Detail.Run) run.event().detail()).conditions().get(condition).orElse(NOT_NOTED);
    }
}
