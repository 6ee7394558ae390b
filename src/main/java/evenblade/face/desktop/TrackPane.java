package evenblade.face.desktop;

import evenblade.base.units.LengthUnit;
import evenblade.face.app.DrawTracking;
import evenblade.face.app.FigureText;
import evenblade.face.app.JudgeTracking.BladeAngles;
import evenblade.face.app.JudgeTracking.DialReading;
import evenblade.face.app.JudgeTracking.MarkedTips;
import evenblade.face.app.JudgeTracking.TrackView;
import evenblade.face.app.JudgeTracking;
import evenblade.face.app.LengthWords;
import evenblade.judge.tracking.BestLayout;
import evenblade.judge.tracking.TrackingAnalysis;
import evenblade.tell.chart.Picture;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import net.miginfocom.swing.MigLayout;

/** What the static checks of a job say together: the verdict, what to try next, what to keep. */
final class TrackPane extends JPanel {
    private final transient Navigator bench;
    private final transient OpenJob job;
    private final Lines lines = new Lines();
    private final PicturePane tips;
    private final PicturePane deviations;
    private final Complaint complaint = new Complaint();

    TrackPane(Navigator bench, OpenJob job) {
        super(new MigLayout("insets 8 18 10 18, hidemode 3", "[46%!,fill]16[grow,fill]", "[][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        setName("track");
        tips = new PicturePane(bench);
        deviations = new PicturePane(bench);
        add(Look.heading("Track: blade or hub"), "span 2, wrap");
        add(complaint, "span 2, wrap");
        add(lines, "pushy, grow, wmin 200, hmin 100");
        JTabbedPane tabs = new JTabbedPane();
        tabs.setName("track tabs");
        tabs.addTab("Tips", tips);
        tabs.addTab("Blade or hub", deviations);
        add(tabs, "pushy, grow, wmin 280, hmin 200");
        LengthUnit unit = bench.settings().lengthUnit();
        bench.work()
                .begin(
                        "Judging the track",
                        progress -> {
                            TrackView view = JudgeTracking.answer(job.folder());
                            return new Answer(view, DrawTracking.tips(view, unit), DrawTracking.deviations(view, unit));
                        },
                        this::show,
                        complaint::show);
    }

    private record Answer(TrackView view, Picture tips, Optional<Picture> deviations) {}

    private void show(Answer answer) {
        tips.show(Optional.of(answer.tips()), "");
        deviations.show(answer.deviations(), "What goes with a blade shows once the blades were moved.");
        TrackView view = answer.view();
        TrackingAnalysis now = view.now();
        lines.strong(words(now.verdict().text())).setName("verdict");
        for (TrackingAnalysis earlier : view.spells().subList(0, view.spells().size() - 1)) {
            say("Before the last change: " + earlier.verdict().text());
        }
        now.warnings().forEach(warning -> say("!  " + Words.warning(warning)));
        MarkedTips last = view.sessions().get(view.sessions().size() - 1);
        heading("Against the limit");
        last.checks().forEach(check -> say(check.text()));
        if (last.checks().isEmpty()) {
            say("No limit for the track is entered: the propeller maker's figure rules.");
        }
        layouts(now);
        heading("Flange face");
        view.runOuts().forEach(this::runOut);
        if (view.runOuts().isEmpty()) {
            say("Not read yet. Read it before the flange is cleared.");
        }
        view.runOutTest().ifPresent(test -> say(test.text()));
        heading("Blade angles");
        view.pitches().forEach(this::pitch);
        if (view.pitches().isEmpty()) {
            say("Not read yet.");
        }
        lines.done();
    }

    private void layouts(TrackingAnalysis now) {
        heading("To learn more");
        say("Mark again with " + now.nextLayout().layout().text() + ".");
        JButton mark =
                new JButton("Enter marks for " + now.nextLayout().layout().text());
        mark.setName("mark next");
        mark.addActionListener(
                e -> bench.show(new MarksForm(bench, job).on(now.nextLayout().layout())));
        lines.put(mark);
        heading("Layout to keep");
        BestLayout best = now.bestLayout();
        say(best.layout().text() + ": predicted spread "
                + FigureText.fixed(best.predictedSpread().valueMm(), 2) + " mm ("
                + FigureText.fixed(best.predictedSpread().lowMm(), 2) + " to "
                + FigureText.fixed(best.predictedSpread().highMm(), 2) + " mm)"
                + (best.blades() == 0
                        ? ", as it stands."
                        : ", against " + FigureText.fixed(best.spreadNow().valueMm(), 2) + " mm now."));
    }

    private void runOut(DialReading dial) {
        say(FigureText.fixed(dial.reading().total().millimetres(), 3) + " mm at a radius of "
                + FigureText.fixed(dial.reading().dialRadius().millimetres(), 0) + " mm"
                + dial.atTip()
                        .map(tip -> " is " + FigureText.fixed(tip.millimetres(), 2) + " mm at the tips.")
                        .orElse("."));
        dial.checks().forEach(check -> say(check.text()));
    }

    private void pitch(BladeAngles angles) {
        say("Spread " + FigureText.fixed(angles.readings().spreadDeg(), 2) + "°, mean "
                + FigureText.fixed(angles.readings().meanDeg(), 2) + "°.");
        angles.checks().forEach(check -> say(check.text()));
    }

    private void heading(String text) {
        lines.strong(text);
    }

    private void say(String text) {
        lines.say(words(text));
    }

    private String words(String text) {
        return LengthWords.in(bench.settings().lengthUnit(), text);
    }
}
