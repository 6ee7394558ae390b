package evenblade.tell.report;

import evenblade.base.units.Length;
import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.machine.installation.Limit;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.tell.document.Block.Tone;
import evenblade.tell.document.Block.Weight;
import evenblade.tell.document.Document;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.InstallationDocument;
import evenblade.tell.document.PictureSlot;
import evenblade.tell.document.PictureSlot.Shows;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** What a stranger needs to judge the first page: trend, tip marks, balance, orders, what was measured with what. */
final class StrangersPart {
    private final ReportInput input;
    private final FigureFormat lengths;

    private StrangersPart(ReportInput input) {
        this.input = input;
        this.lengths = new FigureFormat(input.units());
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
                        .addAll(InstallationDocument.of(input.record().installation(), part.lengths))
                        .addAll(InstallationDocument.limits(input.record().installation(), part.lengths))
                        .done(),
                Map.of()));
        return sections;
    }

    private Optional<Section> trend() {
        return input.trend().stream()
                .findFirst()
                .map(figure -> new Section(
                        Document.begin()
                                .subject("Over the whole job")
                                .picture(Shows.RUN)
                                .done(),
                        Map.of(PictureSlot.of(Shows.RUN), List.of(figure))));
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
        Document.TableBuilder table = text.table("Tips above the lowest one, " + unit)
                .left("blade")
                .left("hub position, first")
                .point("first");
        if (twice) {
            table.left("hub position, last").point("last");
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
        String limits = input.record().installation().limits().stream()
                .filter(limit -> limit.what() == Limit.Subject.TRACK)
                .map(limit -> LimitCheck.track(limit, session.marksMm()))
                .filter(check -> check.outcome() != LimitCheck.Outcome.NOT_APPLICABLE)
                .map(check -> (check.outcome() == LimitCheck.Outcome.WITHIN ? "within" : "BEYOND") + " the limit of "
                        + lengths.both(Length.ofMillimetres(check.allowed())) + " (" + check.source() + ")")
                .collect(Collectors.joining(", "));
        return FigureFormat.minute(event.at()) + " (" + event.id() + "), spread " + lengths.both(session.spreadMm())
                + (limits.isEmpty() ? ", no limit entered" : ", " + limits) + ", error of one mark "
                + lengths.both(session.sigma()) + ".";
    }

    private Optional<Section> orders() {
        List<ReportedRun> answered =
                input.runs().stream().filter(run -> run.measured().isPresent()).toList();
        if (answered.isEmpty()) {
            return Optional.empty();
        }
        Document.Builder text = Document.begin().subject("Orders of the first run and of the last");
        Optional<DwellComparison> pair = input.comparisons().stream()
                .findFirst()
                .flatMap(compared -> ComparisonPictures.mainPair(compared.outcome()));
        ReportedRun last = answered.get(answered.size() - 1);
        orders(answered.get(0), pair.map(DwellComparison::engineRpmBefore), text);
        if (answered.size() > 1) {
            orders(last, pair.map(DwellComparison::engineRpmAfter), text);
        }
        text.say(
                Tone.NOTE,
                "Peak values in one dwell (a steady stretch at one speed). ± holds 95 %. Left out: lines that don't stand out"
                        + " of the noise.");
        return Optional.of(new Section(text.done(), Map.of()));
    }

    /** One run at the speed that was compared, else at its longest dwell. */
    private void orders(ReportedRun run, Optional<Double> engineRpm, Document.Builder text) {
        MeasuredRun measured = run.measured().orElseThrow();
        Optional<ChannelOrders> channel = LastRun.channel(measured, new Story(input).channel());
        Optional<DwellOrders> dwell = channel.flatMap(each -> engineRpm.isPresent()
                ? each.dwells().stream()
                        .min(Comparator.comparingDouble(d -> Math.abs(measured.engineRpm(d.dwell()) - engineRpm.get())))
                : LastRun.longest(each));
        if (dwell.isEmpty()) {
            text.say("Run '" + run.name() + "': no steady speed known, so no order could be measured.");
            return;
        }
        SignalUnit unit = channel.get().unit();
        Document.TableBuilder table = text.table("Run '" + run.name() + "', "
                        + ChannelName.of(Optional.of(run), channel.get().channel()) + ", engine "
                        + FigureFormat.rpm(measured.engineRpm(dwell.get().dwell())) + " rpm")
                .left("line")
                .point("Hz")
                .point(unit.display())
                .point("mm/s");
        for (OrderReading reading : dwell.get().readings()) {
            boolean shown = reading.detected() || reading.line().propellerOnce();
            if (shown && reading.level() instanceof Level.Measured level) {
                table.row(
                        level.detected() ? Weight.PLAIN : Weight.FAINT,
                        reading.line().name(),
                        FigureFormat.fixed(reading.frequencyHz(), 2),
                        FigureFormat.level(level),
                        velocity(reading, level, unit));
            }
        }
        table.end();
    }

    private static String velocity(OrderReading reading, Level.Measured level, SignalUnit unit) {
        double amplitude = level.detected() ? level.amplitude() : FigureFormat.limit(level);
        OptionalDouble velocity = Velocity.mmS(amplitude, unit, reading.frequencyHz());
        return velocity.isEmpty()
                ? "not known"
                : level.detected()
                        ? FigureFormat.plain(velocity.getAsDouble())
                        : FigureFormat.below(velocity.getAsDouble());
    }

    private Optional<Section> measured() {
        if (input.runs().isEmpty()) {
            return Optional.empty();
        }
        Document.Builder text = Document.begin().subject("What was measured with what");
        Document.TableBuilder table = text.table("Ground runs")
                .left("run")
                .left("when")
                .left("sensor, place")
                .left("directions, gain")
                .left("wind, air");
        for (ReportedRun run : input.runs()) {
            Detail.Run detail = (Detail.Run) run.event().detail();
            table.row(
                    run.name() + " (" + run.event().id() + ")" + speed(run),
                    FigureFormat.minute(run.event().at()),
                    noted(detail, Condition.SENSOR, Condition.DEVICE, Condition.PLACE),
                    noted(detail, Condition.DIRECTION, Condition.GAIN),
                    noted(detail, Condition.WIND, Condition.TEMPERATURE));
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

    private static String noted(Detail.Run run, Condition... wanted) {
        String said = List.of(wanted).stream()
                .flatMap(each -> run.conditions().get(each).stream())
                .collect(Collectors.joining(", "));
        return said.isEmpty() ? "not noted" : said;
    }
}
