package evenblade.desktop;

import evenblade.app.NextStep;
import evenblade.job.Event;
import evenblade.job.Kind;
import java.util.Optional;
import java.util.function.BiFunction;
import javax.swing.Action;
import javax.swing.JComponent;

/** What can be done to the open job. */
final class JobCommands {
    private final Bench bench;
    private final OpenJob job;
    final Action addRun;
    final Action correction;
    final Action note;
    final Action attach;
    final Action takeBack;

    JobCommands(Bench bench, OpenJob job) {
        this.bench = bench;
        this.job = job;
        addRun = form("&Run from a recording…", "ctrl I", ImportForm::new);
        correction = form("&Change made…", "ctrl K", RemarkForm::correction);
        note = form("&Note…", "ctrl E", RemarkForm::note);
        attach = form("&Photo or paper…", "ctrl P", AttachForm::new);
        takeBack = new Command("&Take back the last entry", "ctrl Z", this::takeBack);
    }

    private Command form(String words, String keys, BiFunction<Bench, OpenJob, JComponent> form) {
        return new Command(words, keys, () -> bench.show(form.apply(bench, job)));
    }

    private void takeBack() {
        Optional<Event> last = job.newestFirst().stream()
                .filter(each -> each.kind() != Kind.STRUCK_OUT
                        && !job.record().struckOut().contains(each.id()))
                .max(java.util.Comparator.comparing(Event::entered));
        last.ifPresentOrElse(
                each -> EntryHeading.strike(bench, job, each), () -> bench.say("There is no entry to take back."));
    }

    Optional<Action> of(NextStep.Action action) {
        return switch (action) {
            case ADD_RUN -> Optional.of(addRun);
            case WRITE_CORRECTION -> Optional.of(correction);
            case MARK_TIPS, COMPARE -> Optional.empty();
        };
    }
}
