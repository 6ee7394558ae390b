package evenblade.face.app;

import evenblade.judge.tie.Size;
import evenblade.judge.tie.TieAnswer;
import evenblade.judge.tie.TrackTie;
import evenblade.machine.installation.HubCounting;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** What the tie of propeller 1× to track says, in a technician's words; the same for every face. */
public final class TieWords {
    private final JobTie tie;
    private final List<String> sentences = new ArrayList<>();

    private TieWords(JobTie tie) {
        this.tie = tie;
    }

    /** One sentence or two to each entry: the answer first, then what it rests on. */
    public static List<String> sentences(JobTie tie) {
        TieWords words = new TieWords(tie);
        if (tie.answer() instanceof TieAnswer.NotYet notYet) {
            words.sentences.add("How much of propeller 1× goes with track can't be told yet. " + notYet.why());
            words.sentences.add("What would settle it: " + lowerFirst(notYet.whatWouldSettle()));
        } else {
            words.tied((TieAnswer.Tied) tie.answer());
        }
        words.basis();
        return List.copyOf(words.sentences);
    }

    /** A size with its interval and unit: {@code 0.31 (0.28 to 0.34) m/s²}. */
    public static String size(Size size, String unit) {
        String value = figure(size.value());
        return Double.isFinite(size.high())
                ? value + " (" + figure(size.low()) + " to " + figure(size.high()) + ") " + unit
                : value + " (" + figure(size.low()) + " or more) " + unit;
    }

    private static String figure(double value) {
        return value == 0 ? "0" : FigureText.fixed(value, FigureText.decimals(value / 10));
    }

    private void tied(TieAnswer.Tied tied) {
        if (tied.follows() == TieAnswer.Follows.BLADES) {
            movedOnly(tied.tie());
            return;
        }
        String unit = tie.unit().display();
        TrackTie found = tied.tie();
        if (found.trackMatters()) {
            TrackTie.Share most = found.shares().stream()
                    .max(Comparator.comparingDouble(s -> s.withTrack().value()))
                    .orElseThrow();
            sentences.add("Propeller 1× changes with track. In '" + most.label() + "', of " + figure(most.measured())
                    + " " + unit + " in all, " + size(most.withTrack(), unit) + " goes with track"
                    + percent(most) + ".");
        } else {
            sentences.add("These runs don't show that propeller 1× changes with track at all.");
        }
        sentences.add("At perfect track " + size(found.left(), unit) + " would be left"
                + (found.left().low() > 0 ? ", which points to mass or engine." : ", which may be nothing at all."));
        sentences.add("One mm of track once a turn makes " + size(found.perMillimetre(), unit) + ".");
        found.perDegree()
                .ifPresent(
                        degree -> sentences.add("One degree of pitch once a turn makes " + size(degree, unit) + "."));
        tied.pitchLeftOut().ifPresent(sentences::add);
        if (found.trackMatters()) {
            sentences.add(tie.smoothest()
                    .map(s -> s.layout().text()
                            + " is predicted to shake least at 1×: " + size(s.predicted(), unit) + ", against "
                            + size(s.now(), unit) + " as it stands.")
                    .orElse("Which layout would shake least can't be told yet: since the last change the blades have"
                            + " sat in one order only."));
        }
    }

    /** Moving the blades turns track, mass and angles together: what goes along with that is all three of them. */
    private void movedOnly(TrackTie found) {
        String unit = tie.unit().display();
        if (found.trackMatters()) {
            TrackTie.Share most = found.shares().stream()
                    .max(Comparator.comparingDouble(s -> s.withTrack().value()))
                    .orElseThrow();
            sentences.add("Propeller 1× changes when the blades are moved. In '" + most.label() + "', of "
                    + figure(most.measured()) + " " + unit + " in all, about " + size(most.withTrack(), unit)
                    + " goes with the blades: with their track, their mass and their angles together.");
        } else {
            sentences.add("These runs don't show that propeller 1× changes when the blades are moved.");
        }
        sentences.add("About " + size(found.left(), unit) + " stays with the hub and the engine.");
        sentences.add("How much of it track makes can't be told from moving the blades. Shim or reset the track as the"
                + " maker allows with every blade where it sits, mark the tips, and run again at the same speed.");
    }

    private static String percent(TrackTie.Share share) {
        double percent = 100 * share.withTrack().value() / share.measured();
        return percent <= 100
                ? String.format(Locale.ROOT, ", %.0f %%", percent)
                : ", and what is left works against it";
    }

    private void basis() {
        sentences.add(String.format(
                        Locale.ROOT,
                        "Compared at %.0f engine rpm on channel '%s', peak values with 95 %% intervals, ",
                        tie.engineRpm(),
                        tie.channel())
                + (tie.phase() ? "with the phase from the mark." : "by size alone, for not every run has a mark."));
        if (tie.answer() instanceof TieAnswer.Tied) {
            tiedBasis();
        }
        if (!tie.leftOut().isEmpty()) {
            sentences.add("Left out: " + String.join("; ", tie.leftOut()) + ".");
        }
    }

    private void tiedBasis() {
        if (tie.phase()) {
            String sense = tie.counting() == HubCounting.WITH_ROTATION ? "with" : "against";
            sentences.add("Hub positions are "
                    + (tie.countingEntered()
                            ? "counted " + sense + " the rotation, as entered."
                            : "taken as counted " + sense + " the rotation; if yours run the other way, say so in the"
                                    + " installation, for it changes these answers."));
        }
    }

    private static String lowerFirst(String text) {
        return text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
    }
}
