package evenblade.tell.report;

import evenblade.base.units.Length;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.Change.ChangeVerdict;
import evenblade.judge.tracking.FaceRunOut;
import evenblade.judge.tracking.PitchReadings;
import evenblade.judge.tracking.TrackingSession;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.keep.job.Particulars;
import evenblade.keep.job.Particulars.Item;
import evenblade.tell.chart.Caption;
import evenblade.tell.document.Block.Tone;
import evenblade.tell.document.Document;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.PictureSlot;
import evenblade.tell.document.PictureSlot.Shows;
import evenblade.tell.document.VelocityFigures;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The sheet that goes with a propeller back to its maker: what was read on it, what was tried and what that did, what is
 * asked. It gives readings and judges nobody.
 */
public final class MakersSheet {
    /** Asked where nothing else is. */
    private static final String USUAL_QUESTION =
            "Please check blades, hub and track against your own limits, with these"
                    + " readings in hand, and say what you found, which limits hold, and what may be done.";
    /** Sessions side by side that fit on the sheet; of more the first and the last ones. */
    private static final int SESSIONS = 4;

    private static final List<Item> NAMED = List.of(
            Item.REGISTRATION, Item.PROPELLER_SERIAL, Item.ENGINE_SERIAL, Item.HOURS, Item.WORKSHOP, Item.TECHNICIAN);

    private final ReportInput input;
    private final FigureFormat lengths;
    private final VelocityFigures velocities;
    private final Particulars said;
    private final Document.Builder text = Document.begin();

    private MakersSheet(ReportInput input) {
        this.input = input;
        this.lengths = new FigureFormat(input.units());
        this.velocities = new VelocityFigures(lengths);
        this.said = input.firstPage().particulars();
    }

    /**
     * The sheet.
     *
     * @param question what is asked of the maker; a check against the maker's limits where empty
     */
    public static OneSheet of(ReportInput input, Optional<String> question) {
        MakersSheet sheet = new MakersSheet(input);
        sheet.about();
        sheet.text.subject("What is asked").say(question.orElse(USUAL_QUESTION));
        sheet.blades();
        sheet.flange();
        sheet.tried();
        sheet.text
                .picture(Shows.TIPS)
                .say(
                        Tone.NOTE,
                        "Readings and runs of one aircraft on the ground, by the workshop named above. They don't say what the"
                                + " cause is. The files behind them are in the job's record; its report has their hashes.");
        return new OneSheet(
                "Readings that go with a propeller, for its maker",
                input.record().name(),
                input.record().invented(),
                "Evenblade " + input.version() + ", " + FigureFormat.minute(input.made()),
                List.of(new Section(sheet.text.done(), Map.of(PictureSlot.of(Shows.TIPS), sheet.pictures()))));
    }

    private void about() {
        for (Item item : NAMED) {
            said.get(item).ifPresent(value -> text.known(item.title(), value));
        }
        input.record()
                .installation()
                .propeller()
                .diameter()
                .ifPresent(diameter -> text.known(
                        "Propeller",
                        input.record().installation().propeller().blades() + " blades, " + lengths.large(diameter)));
    }

    /** One row a blade: serial number, mark in each layout, blade angle. */
    private void blades() {
        List<Event> marked = some(input.record().standing(Kind.TRACKING));
        Optional<PitchReadings> pitch = last(Kind.PITCH)
                .map(event -> ((Detail.Pitch) event.detail()).angles(event.at().toInstant()));
        Map<String, String> serials = serials();
        List<String> blades = names(marked, pitch);
        text.subject("The blades");
        if (blades.isEmpty()) {
            text.say("No tip marks and no blade angles were read.");
            return;
        }
        Document.TableBuilder table = text.table("Tip above the lowest one in "
                        + input.units().sign() + ", and the hub position it was at, in each session")
                .left("blade")
                .left("serial");
        marked.forEach(event -> table.right(FigureFormat.day(event.at()) + " (" + event.id() + ")"));
        pitch.ifPresent(read -> table.point("angle, °"));
        for (String blade : blades) {
            List<String> cells = new ArrayList<>(List.of(blade, serials.getOrDefault(blade, "not noted")));
            marked.forEach(event -> cells.add(mark(TipsPicture.session(event), blade)));
            pitch.ifPresent(read -> cells.add(angle(read, blade)));
            table.row(cells.toArray(String[]::new));
        }
        table.end();
        pitch.ifPresent(read -> text.say(
                Tone.NOTE,
                "Blade angles read last, from the " + read.reference().word()
                        + read.station()
                                .map(at -> ", at " + lengths.large(at) + " from the centre")
                                .orElse("") + "."));
    }

    private static List<String> names(List<Event> marked, Optional<PitchReadings> pitch) {
        return marked.isEmpty()
                ? pitch.map(read -> read.layout().blades().stream().sorted().toList())
                        .orElse(List.of())
                : marked.stream()
                        .flatMap(event -> TipsPicture.session(event).layout().blades().stream())
                        .distinct()
                        .sorted()
                        .toList();
    }

    /** The first session and the last ones. */
    private static List<Event> some(List<Event> all) {
        if (all.size() <= SESSIONS) {
            return all;
        }
        List<Event> shown = new ArrayList<>(List.of(all.get(0)));
        shown.addAll(all.subList(all.size() - SESSIONS + 1, all.size()));
        return shown;
    }

    private String mark(TrackingSession session, String blade) {
        int place = session.layout().blades().indexOf(blade);
        return place < 0
                ? "–"
                : lengths.number(session.marksMm().get(place) - Collections.min(session.marksMm())) + " at "
                        + (place + 1);
    }

    private static String angle(PitchReadings read, String blade) {
        int place = read.layout().blades().indexOf(blade);
        return place < 0 ? "–" : FigureFormat.fixed(read.bladeAnglesDeg().get(place), 1);
    }

    /** As the particulars have them: {@code A=123, B=124}; words without a letter before them are left to the reader. */
    private Map<String, String> serials() {
        Map<String, String> serials = new LinkedHashMap<>();
        for (String each : said.get(Item.BLADE_SERIALS).orElse("").split(",")) {
            int sign = each.indexOf('=');
            if (sign > 0) {
                serials.put(
                        each.substring(0, sign).strip(),
                        each.substring(sign + 1).strip());
            }
        }
        return serials;
    }

    private Optional<Event> last(Kind kind) {
        return input.record().standing(kind).stream().reduce((earlier, later) -> later);
    }

    private void flange() {
        text.subject("The flange");
        Optional<FaceRunOut> read = last(Kind.RUN_OUT).map(event -> ((Detail.RunOut) event.detail())
                .reading(event.at().toInstant()));
        if (read.isEmpty()) {
            text.say("Its run-out was not read.");
            return;
        }
        Optional<Length> diameter = input.record().installation().propeller().diameter();
        text.say("Face run-out " + lengths.both(read.get().total()) + " at a dial radius of "
                + lengths.both(read.get().dialRadius())
                + diameter.map(across -> ", which is "
                                + lengths.both(read.get().atTip(Length.ofMetres(across.metres() / 2))) + " at the tips")
                        .orElse("")
                + ".");
    }

    /** Each change with what propeller 1× did, in the order in which they were made. */
    private void tried() {
        List<ReportedComparison> steps = new ArrayList<>(input.comparisons());
        if (steps.size() > 1) {
            steps.remove(0);
            Collections.reverse(steps);
        }
        text.subject("What was tried and what it did");
        if (steps.isEmpty()) {
            text.say("There are not yet two runs to hold against each other.");
            return;
        }
        Optional<Headline> whole = Headline.of(input.comparisons().get(0).outcome(), HowOften.PROPELLER_ONCE);
        String where = whole.map(line -> ", "
                        + Caption.channel(line.channel().channel())
                        + ", at " + FigureFormat.rpm(line.pair().engineRpmBefore()) + " engine rpm")
                .orElse("");
        Document.TableBuilder table = text.table(
                        "Shaking once per propeller turn, " + velocities.unit() + " peak" + where)
                .left("what was done")
                .right("before")
                .right("after")
                .left("change, 95 % interval");
        for (ReportedComparison step : steps) {
            String done = step.between().isEmpty() ? "nothing (a repeat)" : String.join(" ", step.between());
            Optional<Headline> line = whole.flatMap(all -> all.in(step.outcome(), HowOften.PROPELLER_ONCE));
            table.row(
                    done,
                    line.map(each -> size(each.beforeMmS(), each.hiddenBefore()))
                            .orElse("–"),
                    line.map(each -> size(each.afterMmS(), each.hiddenAfter())).orElse("–"),
                    line.map(each -> effect(each.change())).orElse("not comparable"));
        }
        table.end();
    }

    private String size(OptionalDouble mmS, boolean hidden) {
        return mmS.isEmpty() ? "–" : hidden ? velocities.below(mmS.getAsDouble()) : velocities.plain(mmS.getAsDouble());
    }

    private static String effect(Change change) {
        String range = FigureFormat.percentRange(change.ciLowPercent(), change.ciHighPercent());
        return (change.verdict() == ChangeVerdict.NO_CHANGE_SHOWN ? "not shown: " + range : range)
                .replace(" %", "\u00a0%");
    }

    /** The tips first and last, and the shaking over the runs. */
    private List<ReportFigure> pictures() {
        List<ReportFigure> two = new ArrayList<>();
        TipsPicture.of(input.record(), input.units()).ifPresent(two::add);
        input.trend().stream().findFirst().ifPresent(two::add);
        return two;
    }
}
