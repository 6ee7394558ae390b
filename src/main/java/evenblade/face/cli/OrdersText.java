package evenblade.face.cli;

import evenblade.base.fact.Warning;
import evenblade.base.units.SignalUnit;
import evenblade.face.app.FigureText;
import evenblade.input.recording.Source;
import evenblade.machine.installation.OrderLine;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.orders.UnexplainedLine;
import evenblade.measure.speed.DoubtfulDwell;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.Locale;
import java.util.Optional;

/** The orders of a recording as text for a terminal of 80 columns: the speed first, and how sure. */
final class OrdersText {
    private static final double[] MAINS_HZ = {50, 60};
    private static final double MAINS_OFF_BY = 0.002;
    private static final double LEAST_SHOWN_IN_PER_CENT = 1e-3;
    private static final int LONGEST_NAME = 48;

    private final RunOrders run;
    private final List<String> lines = new ArrayList<>();

    private OrdersText(RunOrders run) {
        this.run = run;
    }

    static List<String> lines(RunOrders run) {
        OrdersText text = new OrdersText(run);
        text.speed();
        text.recording();
        for (ChannelOrders channel : run.channels()) {
            text.channel(channel);
        }
        text.warnings();
        text.caution();
        return text.lines;
    }

    private void speed() {
        SpeedResult speed = run.speed();
        if (speed.main().isEmpty()) {
            add("Speed NOT FOUND, and none was entered: no order can be measured");
            paragraph("  ", speed.doubt().orElse("") + "; enter --engine-rpm or --propeller-rpm if it is known");
            return;
        }
        Dwell main = speed.main().get();
        if (speed.confirmed()) {
            add(
                    speed.origin() == SpeedResult.Origin.MARK
                            ? "Speed CONFIRMED by the mark"
                            : "Speed CONFIRMED by the signal");
            add("  engine     " + FigureText.engineRpm(main, run));
            add("  propeller  " + FigureText.propellerRpm(main, run));
            add(
                    run.clockShare() < LEAST_SHOWN_IN_PER_CENT
                            ? format("  the clock of the recording is taken as good to %.0f ppm", 1e6 * run.clockShare())
                            : format("  the clock of the recording is taken as good to %.1f %%", 100 * run.clockShare()));
            if (run.speed().otherMachine().orElse(false)) {
                add("  another machine's lines stand out too");
            }
            if (!main.confirmedBy().isEmpty()) {
                paragraph(
                        "  ",
                        "by " + main.confirmedBy().stream().map(OrderLine::name).collect(Collectors.joining(", ")));
            }
            for (DoubtfulDwell doubtful : speed.doubtful()) {
                paragraph(
                        "  ",
                        format(
                                "not confirmed from %.1f to %.1f s, nothing measured there: %s",
                                doubtful.fromS(), doubtful.toS(), doubtful.doubt().words()));
            }
        } else {
            add("Speed NOT CONFIRMED: nothing is measured");
            add(format(
                    "  entered: engine %.0f rpm, propeller %.1f rpm",
                    main.propellerRpm() * run.ratio(), main.propellerRpm()));
            speed.doubt().ifPresent(doubt -> paragraph("  ", doubt));
            if (run.speed().otherMachine().orElse(false)) {
                add("  another machine's lines stand out");
            }
        }
    }

    private void recording() {
        Source source = run.source();
        int dwells = run.speed().dwells().size();
        add("");
        add(format(
                "%s: %.1f s at %s Hz, %s",
                shortened(fileName(source.file())),
                source.durationS(),
                AmplitudeText.fixed(source.sampleRateHz(), source.sampleRateHz() % 1 == 0 ? 0 : 2),
                dwells == 0 ? "no dwell" : dwells == 1 ? "1 dwell" : dwells + " dwells"));
    }

    private static String fileName(Path file) {
        return String.valueOf(file.getFileName());
    }

    private static String shortened(String name) {
        return name.length() <= LONGEST_NAME
                ? name
                : name.substring(0, LONGEST_NAME / 2 - 1) + "…" + name.substring(name.length() - LONGEST_NAME / 2);
    }

    private void channel(ChannelOrders channel) {
        for (int i = 0; i < channel.dwells().size(); i++) {
            dwell(channel, channel.dwells().get(i), i + 1);
        }
    }

    private void dwell(ChannelOrders channel, DwellOrders measured, int number) {
        Dwell dwell = measured.dwell();
        add("");
        add("Channel '" + shortened(channel.channel()) + "'");
        add(format(
                "Dwell %d of %d: %.1f to %.1f s, engine %.1f rpm, propeller %.1f rpm%s",
                number,
                channel.dwells().size(),
                dwell.fromS(),
                dwell.toS(),
                dwell.propellerRpm() * run.ratio(),
                dwell.propellerRpm(),
                run.speed().confirmed() ? "" : " (NOT CONFIRMED)"));
        lines.addAll(DwellTable.lines(measured, channel.unit(), run.speed().confirmed()));
        unevenness(measured);
        unexplained(measured, channel.unit());
    }

    private void unevenness(DwellOrders measured) {
        measured.unevenness()
                .ifPresent(each -> paragraph(
                        "  ",
                        format(
                                "Unevenness %s (95 %%: %s to %s): lines that only differing blades or the shaft make,"
                                        + " over blade pass and its multiples.",
                                AmplitudeText.plain(each.value()),
                                AmplitudeText.plain(each.ciLow()),
                                Double.isFinite(each.ciHigh()) ? AmplitudeText.plain(each.ciHigh()) : "no limit")));
    }

    private void unexplained(DwellOrders measured, SignalUnit unit) {
        if (measured.unexplained().isEmpty()) {
            return;
        }
        add("Other steady lines, explained by no order:");
        TextTable table = new TextTable("rrrrl");
        table.row("Hz", unit.display() + " peak", "× propeller", "× crank", "");
        for (UnexplainedLine line : measured.unexplained()) {
            table.row(
                    AmplitudeText.fixed(line.frequencyHz(), 2),
                    AmplitudeText.plain(line.amplitude()),
                    AmplitudeText.fixed(line.propellerOrder(), 3),
                    AmplitudeText.fixed(line.crankOrder(), 3),
                    mains(line.frequencyHz()).orElse(line.followsSpeed() ? "moves with the speed" : ""));
        }
        table.lines().forEach(line -> add("  " + line));
    }

    /** Whether it lies on the mains frequency or a multiple of it, as hum does. */
    private static Optional<String> mains(double hz) {
        for (double mains : MAINS_HZ) {
            double multiple = Math.rint(hz / mains);
            if (multiple >= 1 && multiple <= 20 && Math.abs(hz / (multiple * mains) - 1) < MAINS_OFF_BY) {
                return Optional.of(format("mains hum of %.0f Hz?", mains));
            }
        }
        return Optional.empty();
    }

    private void warnings() {
        if (run.warnings().isEmpty()) {
            return;
        }
        add("");
        add("To know");
        for (Warning warning : run.warnings()) {
            lines.addAll(LineWrapper.lines("- ", "  ", WarningText.of(warning)));
        }
    }

    private void caution() {
        add("");
        paragraph(
                "",
                "Measured, not judged: whether it flies is for the licensed person to say. Ignition off before a"
                        + " hand goes near the propeller.");
    }

    private void add(String line) {
        lines.add(line);
    }

    private void paragraph(String indent, String text) {
        lines.addAll(LineWrapper.lines(indent, indent, text));
    }

    private static String format(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
