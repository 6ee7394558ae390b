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
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Window;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;

/** What a ground run shows while it is made; rpm, 1×, blade pass, level and step in letters that read at two metres. */
final class LiveScreen extends JPanel {
    /** Sixteen minutes of arc are wanted, ours; some more, for a task bar takes from the height of the window. */
    private static final double MINUTES = 16.5;
    /** The rpm is looked for first; as high as the two rows beside it leave. */
    private static final double RPM_MINUTES = 25;

    private static final float MIDDLE = 1.8f; // ours
    /** Ten minutes of waterfall. */
    private static final int MOST_LINES = 600;

    private static final String BLANK = "– – – –";

    private final FarLabel rpm = new FarLabel(BLANK, Font.BOLD);
    private final JLabel rpmWords = new JLabel("engine rpm");
    private final JLabel propeller = new JLabel(" ");
    private final JLabel time = new JLabel("0:00");
    private final DwellProgress dwell = new DwellProgress();
    private final JLabel clipping = new JLabel(" ");
    private final FarLabel once = new FarLabel(" ", Font.PLAIN);
    private final FarLabel bladePass = new FarLabel(" ", Font.PLAIN);
    private final JLabel errors = new JLabel(" ");
    private final FarLevels farLevels = new FarLevels();
    private final LevelBars levels = new LevelBars();
    private final LiveHistory history = new LiveHistory();
    private final PictureView spectrum;
    private final PictureView fall;
    private final transient Work work;
    private final transient List<Series> lines = new ArrayList<>();
    private final MigLayout rows = new MigLayout("insets 0, gap 12 4, hidemode 3");
    private double readAtS;
    private transient Dimension lettersFor = new Dimension();

    LiveScreen(Work work) {
        setLayout(rows);
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
        errors.setName("live errors");
        large(time, MIDDLE);
        large(clipping, 1.1f);
        add(rpm, "spany 2, wmin 0");
        add(once, "wmin 0");
        add(farLevels, "spany 2, wmin 0, aligny top, hidemode 0, wrap");
        add(bladePass, "wmin 0, wrap");
        JPanel small = new JPanel(new MigLayout("insets 0, gap 0 2, wrap 1, hidemode 3", "[grow,fill]"));
        small.add(rpmWords, "split 2, growx 0");
        small.add(propeller, "wmin 0");
        small.add(errors, "wmin 0");
        small.add(clipping, "wmin 0");
        add(small, "span 3, split 3, growx, wmin 0");
        add(time, "growx 0");
        add(levels, "growx 0, gapleft 16, width 220::300, hidemode 0, wrap");
        add(dwell, "span 3, growx, wmin 0, wrap");
        JPanel pictures = new JPanel(
                new MigLayout("insets 0, gap 8", "[grow 40,fill][grow 40,fill][grow 20,fill]", "[grow,fill]"));
        pictures.add(spectrum, "wmin 240px, hmin 160px");
        pictures.add(fall, "wmin 240px, hmin 160px");
        pictures.add(history, "wmin 190px, hmin 100px");
        add(pictures, "span 3, grow");
    }

    /** The letters follow the window, whose size isn't known before. */
    @Override
    public void doLayout() {
        Window window = SwingUtilities.getWindowAncestor(this);
        if (window != null && !window.getSize().equals(lettersFor)) {
            lettersFor = window.getSize();
            letters(FarLabel.figurePx(lettersFor, MINUTES), FarLabel.figurePx(lettersFor, RPM_MINUTES));
        }
        super.doLayout();
    }

    private void letters(double figurePx, double rpmPx) {
        rpm.figures(rpmPx);
        once.figures(figurePx);
        bladePass.figures(figurePx);
        dwell.figures(figurePx);
        // Columns and rows stay where they are, whatever is shown.
        int row = once.room(" ").height;
        rows.setColumnConstraints(
                "[" + rpm.room("0000").width + "px!,fill]14px[grow,fill][" + farLevels.figures(figurePx) + "px!,fill]");
        rows.setRowConstraints("[" + row + "px!][" + row + "px!][][][160px::,grow,fill]");
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
        farLevels.setVisible(sound);
        farLevels.show(view.levels());
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
        once.setText("1× " + amplitude(figures.once(), figures.unit()));
        bladePass.setText("blade pass " + amplitude(figures.bladePass(), figures.unit()));
        Optional<String> unit = figures.once()
                .filter(each -> figures.unit() == SignalUnit.UNSTATED)
                .map(each -> "no unit");
        String both = Stream.of(error("1×", figures.once()), error("blade pass", figures.bladePass()), unit)
                .flatMap(Optional::stream)
                .collect(Collectors.joining(" · "));
        errors.setText(both.isEmpty() ? " " : both);
    }

    private static String amplitude(Optional<LiveFigures.Figure> figure, SignalUnit unit) {
        String after = unit == SignalUnit.UNSTATED ? "" : " " + unit.display();
        return figure.map(each -> each.detected()
                        ? FigureFormat.plain(each.value()) + after
                        : "< " + FigureFormat.rough(each.value()) + after)
                .orElse(BLANK);
    }

    private static Optional<String> error(String line, Optional<LiveFigures.Figure> figure) {
        return figure.map(each -> line + (each.detected() ? " ± " + percent(each) + " %" : " not seen"));
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
