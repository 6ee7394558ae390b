package evenblade.tell.document;

import evenblade.judge.tie.JobTie;
import evenblade.judge.tie.JobTie.LeftOutRun;
import evenblade.judge.tie.Size;
import evenblade.judge.tie.TieAnswer;
import evenblade.judge.tie.TieRun;
import evenblade.judge.tie.TrackTie;
import evenblade.machine.installation.HubCounting;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** How much of propeller 1× goes with track over the runs of a job, or what is missing to tell. */
public final class TieDocument {
    private final JobTie tie;
    private final Phrases phrases;
    private final List<String> sentences = new ArrayList<>();

    private TieDocument(JobTie tie, Phrases phrases) {
        this.tie = tie;
        this.phrases = phrases;
    }

    /** The runs in a table, then the answer and what it rests on. */
    public static Document of(JobTie tie, Phrases phrases) {
        Document.Builder text = Document.begin()
                .subject("1× and track over the runs, at " + FigureFormat.rpm(tie.engineRpm()) + " engine rpm");
        if (tie.answer() instanceof TieAnswer.Tied tied) {
            shares(tie, tied, text);
        } else {
            runs(tie, phrases.figures(), text);
        }
        sentences(tie, phrases).forEach(text::say);
        return text.picture(PictureSlot.Shows.TIE).done();
    }

    private static void runs(JobTie tie, FigureFormat figures, Document.Builder text) {
        Document.TableBuilder table = text.table("")
                .left("run")
                .point("track, " + figures.unit().sign())
                .point("1×, " + tie.unit().display())
                .point("± 95 %");
        for (TieRun run : tie.runs()) {
            double error = FigureFormat.NINETY_FIVE * run.standardError();
            table.row(
                    run.label(),
                    figures.number(run.trackSizeMm()),
                    FigureFormat.value(run.amplitude(), error),
                    FigureFormat.error(run.amplitude(), error));
        }
        table.end();
    }

    private static void shares(JobTie tie, TieAnswer.Tied tied, Document.Builder text) {
        Document.TableBuilder table = text.table("")
                .left("run")
                .point("1×, " + tie.unit().display())
                .left("of that with " + (tied.follows() == TieAnswer.Follows.TRACK ? "track" : "the blades")
                        + " (95 % interval)");
        for (TrackTie.Share share : tied.tie().shares()) {
            table.row(share.label(), FigureFormat.plain(share.measured()), size(share.withTrack()));
        }
        table.end();
    }

    /** One sentence or two to each entry: the answer first, then what it rests on. */
    public static List<String> sentences(JobTie tie, Phrases phrases) {
        TieDocument words = new TieDocument(tie, phrases);
        if (tie.answer() instanceof TieAnswer.NotYet notYet) {
            words.sentences.add(
                    "How much of propeller 1× goes with track isn't known yet. " + phrases.text(notYet.why()));
            words.sentences.add("What would settle it: " + phrases.text(notYet.whatWouldSettle()));
        } else {
            words.tied((TieAnswer.Tied) tie.answer());
        }
        words.basis();
        return List.copyOf(words.sentences);
    }

    private static String size(Size size) {
        return FigureFormat.withRange(size.value(), size.low(), size.high());
    }

    private String sizeWithUnit(Size size) {
        return size(size) + " " + tie.unit().display();
    }

    private void tied(TieAnswer.Tied tied) {
        if (tied.follows() == TieAnswer.Follows.BLADES) {
            movedOnly(tied.tie());
            return;
        }
        TrackTie found = tied.tie();
        if (found.trackMatters()) {
            TrackTie.Share most = found.shares().stream()
                    .max(Comparator.comparingDouble(s -> s.withTrack().value()))
                    .orElseThrow();
            sentences.add("Propeller 1× changes with track. In '" + most.label() + "', of "
                    + FigureFormat.plain(most.measured()) + " " + tie.unit().display() + " in all, "
                    + sizeWithUnit(most.withTrack()) + " goes with track" + share(most) + ".");
        } else {
            sentences.add("These runs don't show that propeller 1× changes with track at all.");
        }
        sentences.add("At perfect track " + sizeWithUnit(found.left()) + " would be left"
                + (found.left().low() > 0 ? ", which points to mass or engine." : ", which may be nothing at all."));
        sentences.add("Track of " + phrases.figures().both(1) + " once a turn makes "
                + sizeWithUnit(found.perMillimetre()) + ".");
        found.perDegree()
                .ifPresent(
                        degree -> sentences.add("One degree of pitch once a turn makes " + sizeWithUnit(degree) + "."));
        tied.pitchLeftOut().map(phrases::text).ifPresent(sentences::add);
        if (found.trackMatters()) {
            sentences.add(tie.smoothest()
                    .map(s -> s.layout().text() + " is predicted to shake least at 1×: " + sizeWithUnit(s.predicted())
                            + ", against " + sizeWithUnit(s.now()) + " as it stands.")
                    .orElse("Which layout would shake least isn't known yet: since the last change the blades have"
                            + " sat in one order only."));
        }
    }

    /** Moving the blades turns track, mass and angles together: what goes along with that is all three of them. */
    private void movedOnly(TrackTie found) {
        if (found.trackMatters()) {
            TrackTie.Share most = found.shares().stream()
                    .max(Comparator.comparingDouble(s -> s.withTrack().value()))
                    .orElseThrow();
            sentences.add("Propeller 1× changes when the blades are moved. In '" + most.label() + "', of "
                    + FigureFormat.plain(most.measured()) + " " + tie.unit().display() + " in all, about "
                    + sizeWithUnit(most.withTrack())
                    + " goes with the blades: with their track, their mass and their angles together.");
        } else {
            sentences.add("These runs don't show that propeller 1× changes when the blades are moved.");
        }
        sentences.add("About " + sizeWithUnit(found.left()) + " stays with the hub and the engine.");
        sentences.add("Moving the blades doesn't show how much of it track makes. Shim or reset the track as the maker"
                + " allows with every blade where it sits, mark the tips, and run again at the same speed.");
    }

    private static String share(TrackTie.Share share) {
        double part = share.withTrack().value() / share.measured();
        return part <= 1 ? ", " + FigureFormat.share(part) : ", and what is left works against it";
    }

    private void basis() {
        sentences.add("Compared at " + FigureFormat.rpm(tie.engineRpm()) + " engine rpm on "
                + RunDocument.named(tie.channel()) + ", peak values with 95 % intervals, "
                + (tie.phase() ? "with the phase from the mark." : "by size alone, for not every run has a mark."));
        if (tie.answer() instanceof TieAnswer.Tied && tie.phase()) {
            String sense = tie.counting() == HubCounting.WITH_ROTATION ? "with" : "against";
            sentences.add("Hub positions are "
                    + (tie.countingEntered()
                            ? "counted " + sense + " the rotation, as entered."
                            : "taken as counted " + sense + " the rotation; if yours run the other way, say so in the"
                                    + " installation, for it changes these answers."));
        }
        if (!tie.leftOut().isEmpty()) {
            sentences.add(tie.leftOut().stream()
                    .map(TieDocument::leftOut)
                    .collect(Collectors.joining("; ", "Left out: ", ".")));
        }
    }

    private static String leftOut(LeftOutRun run) {
        return "'" + run.run() + "': "
                + switch (run.why()) {
                    case NO_MARKS -> "no tip marks before or after it without a change in between";
                    case OTHER_WEIGHTS_ON -> "other balance weights were on than in most runs";
                    case NOT_SEEN -> "no propeller 1× seen alone on that channel at that speed";
                };
    }
}
