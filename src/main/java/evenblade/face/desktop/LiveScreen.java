package evenblade.face.desktop;

import evenblade.base.units.SignalUnit;
import evenblade.face.app.DrawLive;
import evenblade.face.app.LiveRecording;
import evenblade.input.recording.Series;
import evenblade.measure.live.LiveChain;
import evenblade.measure.live.LiveFigures;
import evenblade.measure.live.LiveReading;
import evenblade.tell.chart.Ink;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.FigureFormat;
import java.awt.Font;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;

/** What a ground run shows while it is made, the rpm in figures that read at two metres. */
final class LiveScreen extends JPanel {
    private static final float FIGURES = 6.5f; // read from the cockpit's other seat; ours
    private static final float MIDDLE = 1.8f; // ours
    /** Ten minutes of waterfall. */
    private static final int MOST_LINES = 600;

    private static final String BLANK = "– – – –";

    private final JLabel rpm = new JLabel(BLANK);
    private final JLabel rpmWords = new JLabel("engine rpm");
    private final JLabel propeller = new JLabel(" ");
    private final JLabel time = new JLabel("0:00");
    private final DwellProgress dwell = new DwellProgress();
    private final JLabel clipping = new JLabel(" ");
    private final JLabel once = new JLabel(" ");
    private final JLabel bladePass = new JLabel(" ");
    private final LevelBars levels = new LevelBars();
    private final LiveHistory history = new LiveHistory();
    private final PictureView spectrum;
    private final PictureView fall;
    private final transient Work work;
    private final transient List<Series> lines = new ArrayList<>();
    private double readAtS;

    LiveScreen(Work work) {
        super(new MigLayout(
                "insets 0, gap 8, hidemode 3", "[pref!][grow,fill]16[220::300,fill]", "[][][][160::,grow,fill]"));
        this.work = work;
        spectrum = new PictureView(work);
        fall = new PictureView(work);
        spectrum.showInstead("The spectrum appears after the first seconds.");
        fall.showInstead("The waterfall grows from the first seconds on.");
        setName("live screen");
        rpm.setName("live rpm");
        clipping.setName("live clipping");
        once.setName("live once");
        bladePass.setName("live blade pass");
        time.setName("live time");
        large(rpm, FIGURES);
        large(time, MIDDLE);
        large(once, MIDDLE);
        large(bladePass, MIDDLE);
        large(clipping, 1.1f);
        add(rpm, "spany 2, gapright 24");
        add(once, "wmin 0");
        add(time, "wrap");
        add(bladePass, "wmin 0");
        add(levels, "hmin " + 3 * Look.em() + ", hidemode 0, wrap");
        add(rpmWords, "split 2");
        add(propeller);
        add(dwell, "wmin 0");
        add(clipping, "wmin 0, wrap");
        JPanel pictures = new JPanel(
                new MigLayout("insets 0, gap 8", "[grow 40,fill][grow 40,fill][grow 20,fill]", "[grow,fill]"));
        pictures.add(spectrum, "wmin 240, hmin 160");
        pictures.add(fall, "wmin 240, hmin 160");
        pictures.add(history, "wmin 190, hmin 100");
        add(pictures, "span 3, grow");
    }

    private static void large(JLabel label, float times) {
        label.setFont(label.getFont().deriveFont(Font.BOLD, label.getFont().getSize2D() * times));
    }

    /** A recording begins with so many steps to be led through. */
    void began(int steps, LiveRecording run) {
        readAtS = 0;
        show(LiveFigures.NONE, false);
        dwell.began(steps, run);
        history.clear();
        lines.clear();
    }

    void show(LiveRecording.View view) {
        time.setText(clock(view.seconds()));
        boolean sound = !view.levels().isEmpty(); // lines of a sensor have none
        levels.setVisible(sound);
        levels.show(view.levels());
        clipping.setText(sound ? LevelBars.clipText(view.clipping()) : " ");
        clipping.setToolTipText(view.clipping().isEmpty() ? null : LevelBars.clipTip(view.clipping()));
        clipping.setForeground(Look.ink(view.clipping().isEmpty() ? Ink.QUIET_TEXT : Ink.LIMIT));
        show(view.figures(), view.liveStopped());
        dwell.show(view);
        view.reading().filter(reading -> reading.toS() != readAtS).ifPresent(reading -> {
            LiveFigures now = view.figures();
            history.add(reading.toS(), seen(now.once()), seen(now.bladePass()), words(now.unit()));
            draw(reading);
            readAtS = reading.toS();
        });
    }

    private void show(LiveFigures figures, boolean stopped) {
        rpm.setText(figures.engineRpm()
                .map(each -> FigureFormat.fixed(each.value(), 0))
                .orElse(BLANK));
        rpm.setForeground(Look.ink(figures.engineRpm().isPresent() ? Ink.TEXT : Ink.QUIET_TEXT));
        rpmWords.setText(figures.engineRpm()
                .map(each -> "± " + FigureFormat.fixed(each.plusMinus(), 0) + " engine rpm")
                .orElse("engine rpm"));
        propeller.setText(
                stopped
                        ? " · live stopped; the recording goes on"
                        : figures.propellerRpm()
                                .map(each -> " · propeller " + FigureFormat.fixed(each.value(), 0) + " rpm")
                                .orElse(" · speed moves, or isn't found yet"));
        once.setText("1×  " + amplitude(figures.once(), figures.unit()));
        bladePass.setText("blade pass  " + amplitude(figures.bladePass(), figures.unit()));
    }

    private static String amplitude(Optional<LiveFigures.Figure> figure, SignalUnit unit) {
        return figure.map(each -> each.detected()
                        ? FigureFormat.plain(each.value()) + " " + words(unit) + " ± " + percent(each) + " %"
                        : FigureFormat.below(each.value()) + " " + words(unit))
                .orElse(BLANK);
    }

    /** An error is rounded up: none is nought. */
    private static String percent(LiveFigures.Figure figure) {
        return FigureFormat.fixed(Math.ceil(1000 * figure.plusMinus() / figure.value()) / 10, 1);
    }

    private static Optional<Double> seen(Optional<LiveFigures.Figure> figure) {
        return figure.filter(LiveFigures.Figure::detected).map(LiveFigures.Figure::value);
    }

    private void draw(LiveReading reading) {
        // A window that came late stands for the seconds since the one before it.
        int hops = readAtS == 0 ? 1 : Math.max(1, (int) Math.round((reading.toS() - readAtS) / LiveChain.HOP_S));
        for (int i = 0; i < hops; i++) {
            DrawLive.line(reading).ifPresent(lines::add);
        }
        while (lines.size() > MOST_LINES) {
            lines.remove(0);
        }
        List<Series> drawn = List.copyOf(lines);
        work.aside(() -> {
            Optional<Picture> seen = DrawLive.spectrum(reading);
            Optional<Picture> fallen = drawn.isEmpty() ? Optional.empty() : Optional.of(DrawLive.fall(drawn, reading));
            SwingUtilities.invokeLater(() -> {
                seen.ifPresent(spectrum::show);
                fallen.ifPresent(fall::show);
            });
        });
    }

    private static String words(SignalUnit unit) {
        return unit == SignalUnit.UNSTATED ? "(no unit)" : unit.display();
    }

    private static String clock(double seconds) {
        long whole = (long) seconds;
        return String.format(java.util.Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }
}
