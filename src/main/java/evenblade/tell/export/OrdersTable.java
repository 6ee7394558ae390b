package evenblade.tell.export;

import de.siegmar.fastcsv.writer.CsvWriter;
import evenblade.base.units.SignalUnit;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The orders of one run as CSV: a row for each line in each dwell of each channel. */
public final class OrdersTable {
    private OrdersTable() {}

    /**
     * The table as text, lines ended by CR LF. A cell is empty where nothing was measured.
     *
     * @param ratio engine revolutions per propeller revolution
     */
    public static String csv(List<ChannelOrders> channels, double ratio) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().build(text)) {
            csv.writeRecord(header(channels));
            for (ChannelOrders channel : channels) {
                for (DwellOrders dwell : channel.dwells()) {
                    for (OrderReading reading : dwell.readings()) {
                        csv.writeRecord(row(channel, dwell, reading, ratio));
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static List<String> header(List<ChannelOrders> channels) {
        String unit = channels.stream()
                .map(ChannelOrders::unit)
                .map(SignalUnit::symbol)
                .distinct()
                .collect(Collectors.joining(" or "));
        return List.of(
                "channel",
                "unit of the channel",
                "dwell from (s)",
                "dwell to (s)",
                "engine speed (rpm)",
                "propeller speed (rpm)",
                "shaft",
                "order of that shaft (per revolution)",
                "propeller order (per revolution)",
                "line",
                "frequency (Hz)",
                "peak amplitude (" + unit + ")",
                "standard error (" + unit + ")",
                "95 % from (" + unit + ")",
                "95 % to (" + unit + ")",
                "detected (yes/no)",
                "phase after the mark (deg)",
                "would fold to (Hz)",
                "can't be separated from");
    }

    private static List<String> row(ChannelOrders channel, DwellOrders dwell, OrderReading reading, double ratio) {
        List<String> cells = new ArrayList<>();
        cells.add(Cell.of(channel.channel()));
        cells.add(channel.unit().symbol());
        cells.add(Cell.of(dwell.dwell().fromS()));
        cells.add(Cell.of(dwell.dwell().toS()));
        cells.add(Cell.of(dwell.dwell().propellerRpm() * ratio));
        cells.add(Cell.of(dwell.dwell().propellerRpm()));
        cells.add(reading.line().of() == Shaft.PROPELLER ? "propeller" : "crank");
        cells.add(Cell.of(reading.line().order()));
        cells.add(Cell.of(reading.line().propellerOrder()));
        cells.add(reading.line().name());
        cells.add(Cell.of(reading.frequencyHz()));
        if (reading.level() instanceof Level.Measured level) {
            cells.add(Cell.of(level.amplitude()));
            cells.add(Cell.of(level.standardError()));
            cells.add(Cell.of(level.ciLow()));
            cells.add(Cell.of(level.ciHigh()));
            cells.add(level.detected() ? "yes" : "no");
            cells.add(level.phaseDeg().isPresent() ? Cell.of(level.phaseDeg().getAsDouble()) : "");
            cells.add("");
        } else {
            cells.addAll(List.of("", "", "", "", "no", ""));
            OptionalDouble folds = ((Level.BeyondRange) reading.level()).foldsToHz();
            cells.add(folds.isPresent() ? Cell.of(folds.getAsDouble()) : "");
        }
        cells.add(String.join("; ", reading.inseparableNames()));
        return cells;
    }
}
