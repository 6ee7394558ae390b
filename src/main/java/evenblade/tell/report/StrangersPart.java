package evenblade.tell.report;

import evenblade.base.units.Length;
import evenblade.base.units.SignalUnit;
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
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** What a stranger needs to judge the first page: trend, tip marks, orders, what was measured with what. */
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
        Document.Builder text = Document.begin().subject("Tracking before and after");
        marks(marked.get(0), marked.size() > 1 ? "First" : "Only", text);
        if (marked.size() > 1) {
            marks(marked.get(marked.size() - 1), "Last", text);
        }
        return Optional.of(new Section(text.done(), Map.of()));
    }

    private void marks(Event event, String which, Document.Builder text) {
        TrackingSession session = TipsPicture.session(event);
        List<Double> marks = session.marksMm();
        double lowest = marks.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
        Document.TableBuilder table = text.table(
                        which + " marks, " + FigureFormat.minute(event.at()) + " (" + event.id() + ")")
                .left("hub position")
                .left("blade")
                .point("mark, " + input.units().sign())
                .point("above the lowest, " + input.units().sign());
        for (int position = 1; position <= session.layout().positions(); position++) {
            double mark = marks.get(position - 1);
            table.row(
                    String.valueOf(position),
                    session.layout().at(position),
                    lengths.number(mark),
                    lengths.number(mark - lowest));
        }
        table.end();
        String limits = input.record().installation().limits().stream()
                .filter(limit -> limit.what() == Limit.Subject.TRACK)
                .map(limit -> LimitCheck.track(limit, marks))
                .filter(check -> check.outcome() != LimitCheck.Outcome.NOT_APPLICABLE)
                .map(check -> (check.outcome() == LimitCheck.Outcome.WITHIN ? "within" : "BEYOND") + " the limit of "
                        + lengths.both(Length.ofMillimetres(check.allowed())) + " (" + check.source() + ")")
                .collect(Collectors.joining(", "));
        text.say("Spread " + lengths.both(session.spreadMm()) + (limits.isEmpty() ? ", no limit entered" : ", " + limits)
                + ". Error of one mark " + lengths.both(session.sigma()) + ".");
    }

    private Optional<Section> orders() {
        List<ReportedRun> answered =
                input.runs().stream().filter(run -> run.measured().isPresent()).toList();
        if (answered.isEmpty()) {
            return Optional.empty();
        }
        Document.Builder text = Document.begin().subject("Orders of the first run and of the last");
        orders(answered.get(0), text);
        if (answered.size() > 1) {
            orders(answered.get(answered.size() - 1), text);
        }
        text.say(
                Tone.NOTE,
                "Peak values, longest dwell of the run; a dwell is a steady stretch at one speed. ± holds 95 %. \"Below\":"
                        + " the line doesn't stand out of the noise.");
        return Optional.of(new Section(text.done(), Map.of()));
    }

    private void orders(ReportedRun run, Document.Builder text) {
        MeasuredRun measured = run.measured().orElseThrow();
        Optional<ChannelOrders> channel = LastRun.channel(measured, new Story(input).channel());
        Optional<DwellOrders> dwell = channel.flatMap(LastRun::longest);
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
            if (reading.level() instanceof Level.Measured level) {
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
                .left("speed")
                .left("sensor, place")
                .left("directions, gain")
                .left("wind, air");
        for (ReportedRun run : input.runs()) {
            Detail.Run detail = (Detail.Run) run.event().detail();
            table.row(
                    run.name() + " (" + run.event().id() + ")",
                    FigureFormat.minute(run.event().at()),
                    speed(run),
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
                .map(measured -> measured.speedDoubt().isEmpty() ? "confirmed" : "NOT confirmed")
                .orElse("no result");
    }

    private static String noted(Detail.Run run, Condition... wanted) {
        String said = List.of(wanted).stream()
                .flatMap(each -> run.conditions().get(each).stream())
                .collect(Collectors.joining(", "));
        return said.isEmpty() ? "not noted" : said;
    }
}
