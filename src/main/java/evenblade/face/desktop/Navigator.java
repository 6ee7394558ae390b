package evenblade.face.desktop;

import evenblade.face.app.SeeEvidence;
import evenblade.keep.job.Event;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JComponent;

/** What a panel may ask of the window around it. All on the event thread. */
interface Navigator {
    Settings settings();

    Drafts drafts();

    Work work();

    /** Begins a piece of work, as {@link Work#begin} says. */
    default <T> Work.Task begin(String what, Work.Labour<T> labour, Consumer<T> done, Consumer<String> failed) {
        return work().begin(what, labour, done, failed);
    }

    /** Reads a job and shows it. */
    void openJob(Path folder);

    /** Whether what is at hand may be left; says why where it may not. */
    boolean mayLeave();

    /** Puts a panel in front. */
    void show(JComponent panel);

    /** Goes back to what is shown when nothing is being entered. */
    void showNewest();

    /** Shows one entry of the open job. */
    void showEntry(Event event);

    /** Shows one entry where a piece of evidence is seen. */
    void showEntry(Event event, Optional<SeeEvidence.Sight> sight);

    /** Looks at a recording, with a job or without. */
    void look(Path recording);

    /** Something was written into the open job: reads it again and shows the first of it. */
    void entered(List<Event> events);

    /** Says a thing that needs no answer; it stays in sight until it is read. */
    void say(String text);

    /** Says what goes on by itself; gone with the next thing that is done. */
    void passing(String text);

    /** The job in the window. */
    Optional<OpenJob> job();
}
