package evenblade.face.desktop;

import evenblade.base.units.SignalUnit;
import evenblade.face.app.DrawLive;
import evenblade.face.app.LiveRecording;
import evenblade.input.capture.ChannelLevel;
import evenblade.input.recording.Series;
import evenblade.machine.installation.OrderLine;
import evenblade.measure.live.LiveReading;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
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

    private final int blades;
    private final JLabel rpm = new JLabel("– – – –");
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

    LiveScreen(int blades, Work work) {
        super(new MigLayout(
                "insets 0, gap 8, hidemode 3", "[pref!][grow,fill]16[220::300,fill]", "[][][][160::,grow,fill]"));
        this.blades = blades;
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
        add(levels, "hmin " + 3 * Look.em() + ", wrap");
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
    void began(int steps) {
        readAtS = 0;
        rpm.setText("– – – –");
        once.setText("1×  –");
        bladePass.setText("blade pass  –");
        dwell.began(steps);
        history.clear();
        lines.clear();
    }

    void show(LiveRecording.View view) {
        time.setText(clock(view.seconds()));
        long clipped = view.levels().stream().mapToLong(ChannelLevel::clipped).sum();
        levels.show(view.levels(), clipped > 0);
        clipping.setText(clipped == 0 ? "not clipped" : "✕ CLIPPED: turn gain down");
        clipping.setForeground(Look.ink(clipped == 0 ? Ink.QUIET_TEXT : Ink.LIMIT));
        view.reading().filter(reading -> reading.toS() != readAtS).ifPresent(reading -> show(reading, view));
    }

    private void show(LiveReading reading, LiveRecording.View view) {
        readAtS = reading.toS();
        Optional<Double> engine = reading.engineRpm();
        rpm.setText(engine.map(value -> FigureFormat.fixed(value, 0)).orElse("– – – –"));
        rpm.setForeground(Look.ink(engine.isPresent() ? Ink.TEXT : Ink.QUIET_TEXT));
        propeller.setText(reading.propellerRpm()
                .map(value -> " · propeller " + FigureFormat.fixed(value, 0) + " rpm")
                .orElse(" · speed not found in the sound yet"));
        dwell.show(view);
        Optional<DwellOrders> held = latestDwell(reading);
        String unit = reading.channels().isEmpty()
                ? ""
                : words(reading.channels().get(0).unit());
        Optional<Double> first = held.flatMap(each -> amplitude(each, 1));
        Optional<Double> pass = held.flatMap(each -> amplitude(each, blades));
        once.setText("1×  "
                + first.map(value -> FigureFormat.plain(value) + " " + unit).orElse("not detected"));
        bladePass.setText("blade pass  "
                + pass.map(value -> FigureFormat.plain(value) + " " + unit).orElse("not detected"));
        history.add(reading.toS(), first, pass, unit);
        draw(reading);
    }

    private void draw(LiveReading reading) {
        DrawLive.line(reading).ifPresent(lines::add);
        if (lines.size() > MOST_LINES) {
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

    /** The latest dwell in the window. */
    static Optional<DwellOrders> latestDwell(LiveReading reading) {
        return reading.channels().stream()
                .limit(1)
                .flatMap(channel -> channel.dwells().stream())
                .reduce((one, later) -> later);
    }

    private static String words(SignalUnit unit) {
        return unit == SignalUnit.FULL_SCALE ? "of full scale" : unit.display();
    }

    /** Of a propeller order, where it is detected. */
    private static Optional<Double> amplitude(DwellOrders dwell, int order) {
        return dwell.readings().stream()
                .filter(each -> propellerOrder(each.line(), order) && each.detected())
                .map(OrderReading::level)
                .map(level -> ((Level.Measured) level).amplitude())
                .findFirst();
    }

    private static boolean propellerOrder(OrderLine line, int order) {
        return line.of() == evenblade.machine.installation.Shaft.PROPELLER && line.order() == order;
    }

    private static String clock(double seconds) {
        long whole = (long) seconds;
        return String.format(java.util.Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }
}
