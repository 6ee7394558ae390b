package evenblade.tell.report;

import java.util.List;

/**
 * The page for the customer.
 *
 * @param who whose machine it is and who worked on it; may be empty
 * @param story what shook, why, what was done, what it did, what is open: in plain sentences
 * @param bars the shaking before and after; may be empty
 * @param barsAbout what they show, with channel and speed
 * @param tips the tips before and after; may be empty
 * @param changes what was done, in order of time
 * @param sure how sure it is, in plain sentences
 */
public record FirstPage(
        List<KnownThing> who,
        List<String> story,
        List<Bar> bars,
        String barsAbout,
        List<ReportFigure> tips,
        List<NumberedChange> changes,
        List<String> sure) {
    public FirstPage {
        who = List.copyOf(who);
        story = List.copyOf(story);
        bars = List.copyOf(bars);
        tips = List.copyOf(tips);
        changes = List.copyOf(changes);
        sure = List.copyOf(sure);
    }

    /** Whether anything is known of whose machine it is. */
    public boolean whoSaid() {
        return !who.isEmpty();
    }

    /** Whether there are bars to show. */
    public boolean barred() {
        return !bars.isEmpty();
    }

    /** Whether its pictures fill it; what follows an emptier one begins on the same sheet. */
    public boolean full() {
        return barred() || !tips.isEmpty();
    }

    /**
     * One bar.
     *
     * @param when before or after
     * @param run its name
     * @param value with its unit
     * @param widthPercent of the longer of the pair
     * @param after whether it is the later one
     */
    public record Bar(String when, String run, String value, int widthPercent, boolean after) {}

    /**
     * Something that was changed on the machine.
     *
     * @param number from 1
     * @param day when
     * @param text in the words of the record, whole
     */
    public record NumberedChange(int number, String day, String text) {}
}
