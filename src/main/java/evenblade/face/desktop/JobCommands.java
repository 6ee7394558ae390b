package evenblade.face.desktop;

import evenblade.face.app.JobTakes;
import evenblade.face.app.NextStep;
import evenblade.face.app.WhatNext;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import javax.swing.Action;
import javax.swing.JComponent;

/** What can be done to the open job. */
final class JobCommands {
    /** Under this a page knows the command that opened it. */
    static final String PAGE = "opened by";

    private final Navigator bench;
    private final OpenJob job;
    final Action addRun;
    final Action correction;
    final Action note;
    final Action attach;
    final Action marks;
    final Action pitch;
    final Action runOut;
    final Action weight;
    final Action balance;
    final Action findings;
    final Action live;
    final Action track;
    final Action compare;
    final Action trend;
    final Action runCard;
    final Action report;
    final Action takeBack;
    final Action rescue;
    final Action installation;

    JobCommands(Navigator bench, OpenJob job) {
        this.bench = bench;
        this.job = job;
        addRun = form("&Run from a recording…", "ctrl I", ImportForm::new);
        correction = form("&Change made…", "ctrl K", RemarkForm::correction);
        note = form("&Note…", "ctrl E", RemarkForm::note);
        attach = form("&Photo or paper…", "ctrl P", AttachForm::new);
        marks = form("&Tip marks…", "ctrl T", MarksForm::new);
        pitch = form("&Blade angles…", "ctrl B", PitchForm::new);
        runOut = form("&Flange run-out…", "ctrl U", RunOutForm::new);
        weight = form("&Weight on or off…", "ctrl G", WeightForm::new);
        balance = form("Balance &weights", "ctrl 8", BalancePane::new);
        findings = form("&Findings", "ctrl 1", (b, j) -> new FindingsPane(b, j, this));
        live = form("Record &live", "ctrl 6", LivePane::new);
        track = form("&Track", "ctrl 2", TrackPane::new);
        compare = form("&Before and after", "ctrl 3", ComparePane::new);
        trend = form("&Over all runs", "ctrl 4", TrendPane::new);
        runCard = form("&Run card", "ctrl 5", RunCardPane::new);
        report = form("R&eport", "ctrl 7", ReportPane::new);
        rescue = new MenuCommand("Bring ta&kes into the job", "", this::rescue);
        installation = form("&Installation…", "", InstallationForm::changing);
        takeBack = new MenuCommand("&Take back the last entry", "ctrl Z", this::takeBack);
    }

    private MenuCommand form(String words, String keys, BiFunction<Navigator, OpenJob, JComponent> form) {
        return new MenuCommand(words, keys, asked -> {
            if (bench.mayLeave()) {
                JComponent page = form.apply(bench, job);
                page.putClientProperty(PAGE, asked);
                bench.show(page);
            }
        });
    }

    /** Forms that write, in the order of a day's work. */
    List<Action> adding() {
        return List.of(marks, pitch, runOut, addRun, correction, weight, note, attach, installation);
    }

    /** What can be looked at. */
    List<Action> looking() {
        return List.of(findings, track, balance, compare, trend, runCard, live, report);
    }

    /** Recordings that something broke off, all of them in one step. */
    private void rescue() {
        bench.begin(
                "Bringing takes into the job",
                progress -> JobTakes.rescue(job.folder()),
                rescued -> {
                    bench.entered(rescued.events());
                    rescued.empty().forEach(file -> bench.say(file + " holds not one byte; it stays where it is."));
                    rescued.warnings().forEach(warning -> bench.say(Words.warning(warning)));
                },
                bench::say);
    }

    private void takeBack() {
        Optional<Event> last = job.record().inOrderOfEntering().stream()
                .filter(each -> each.kind() != Kind.STRUCK_OUT
                        && !job.record().struckOut().contains(each.id()))
                .reduce((earlier, later) -> later);
        last.ifPresentOrElse(
                each -> EntryHeading.strike(bench, job, each), () -> bench.say("There is no entry to take back."));
    }

    Action of(NextStep step) {
        return switch (step) {
            case MAKE_FIRST_RUN, RUN_AFTER_CHANGE, REPEAT_RUN -> addRun;
            case MARK_TIPS -> marks;
            case COMPARE -> compare;
            case LOOK_AT_BALANCE -> balance;
        };
    }

    Action of(WhatNext.Action step) {
        return switch (step) {
            case MARK_TIPS -> marks;
            case READ_PITCH -> pitch;
            case READ_RUN_OUT -> runOut;
            case ADD_RUN -> addRun;
            case WRITE_CORRECTION -> findings;
            case ENTER_INSTALLATION -> installation;
            case BALANCE -> balance;
            case WRITE_REPORT -> report;
        };
    }
}
