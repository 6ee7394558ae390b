package evenblade.tell.export;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Series;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.speed.Dwell;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("Tables for other programs")
class TablesTest {
    @Test
    @DisplayName("name the unit of every column, quote what needs it, and leave unmeasured cells empty")
    void orders() {
        Dwell dwell = new Dwell(0, 10, 30, 0.01, 29, 31);
        OrderReading measured = new OrderReading(
                new OrderLine(Shaft.PROPELLER, 1, 1, "propeller 1×", OrderLine.Role.UNEVEN_PROPELLER, 1),
                30,
                new Level.Measured(
                        0.25,
                        Double.POSITIVE_INFINITY,
                        0.2,
                        0.3,
                        OptionalDouble.of(90),
                        true,
                        Level.Estimator.COHERENT),
                List.of(
                        new OrderLine(Shaft.CRANK, 0.5, 1.25, "crank ½×", OrderLine.Role.HALF_CRANK, 1),
                        new OrderLine(Shaft.CRANK, 20, 50, "mesh", OrderLine.Role.MESH, 1)));
        OrderReading beyond = new OrderReading(
                new OrderLine(Shaft.CRANK, 2, 5, "firing", OrderLine.Role.FIRING, 1),
                150,
                new Level.Folded(50),
                List.of());
        ChannelOrders channel = new ChannelOrders(
                "up, \"left\"",
                SignalUnit.METRE_PER_SECOND_SQUARED,
                List.of(new DwellOrders(dwell, List.of(measured, beyond), List.of(), Optional.empty())));

        String[] lines = OrdersTable.csv(List.of(channel), 2.5).split("\r\n");

        assertThat(lines).hasSize(3);
        assertThat(lines[0])
                .startsWith("channel,unit of the channel,dwell from (s),dwell to (s),engine speed (rpm)")
                .contains("frequency (Hz),peak amplitude (m/s2),standard error (m/s2)", "phase after the mark (deg)");
        // 30 Hz is 1800 propeller rpm, times 2.5 is 4500 engine rpm.
        assertThat(lines[1])
                .isEqualTo("\"up, \"\"left\"\"\",m/s2,0.0,10.0,4500.0,1800.0,propeller,1.0,1.0,propeller 1×,30.0,0.25,,"
                        + "0.2,0.3,yes,90.0,,crank ½×; mesh");
        assertThat(lines[2]).endsWith(",crank,2.0,5.0,firing,150.0,,,,,no,,50.0,");
    }

    @Test
    @DisplayName("hold the spectra of all channels beside each other")
    void spectra() {
        Series hz = Series.of(0, 0.25);
        String csv = SpectrumTable.csv(List.of(
                new SpectrumTable.Column("across", SignalUnit.STANDARD_GRAVITY, spectrum(hz, Series.of(0.5, 0.125))),
                new SpectrumTable.Column("along", SignalUnit.FULL_SCALE, spectrum(hz, Series.of(1, 2)))));
        assertThat(csv)
                .isEqualTo("frequency (Hz),\"across, peak amplitude (g)\",\"along, peak amplitude (FS)\"\r\n"
                        + "0.0,0.5,1.0\r\n0.25,0.125,2.0\r\n");
    }

    /** As a spreadsheet would run them; the list is common practice, no source. */
    @Test
    @DisplayName("hold no text that another program takes for a formula")
    void noFormulas() {
        for (String evil : List.of("=1+1", "+cmd|x", "@SUM(1)", "-2+3", "\t=1", "\r=1", " =1", "\uff1d1")) {
            String csv = SpectrumTable.csv(List.of(
                    new SpectrumTable.Column(evil, SignalUnit.FULL_SCALE, spectrum(Series.of(0), Series.of(1)))));
            String heading = csv.substring(csv.indexOf(',') + 1).replaceFirst("^\"", "");
            assertThat(heading).startsWith("'").doesNotContain("\t");
        }
        assertThat(Cell.of("before; =1+1;-2"))
                .as("nor where semicolons part cells")
                .isEqualTo("before; '=1+1;'-2");
        assertThat(Cell.of(-2.5)).as("a number stays one").isEqualTo("-2.5");
        assertThat(Cell.of("across")).isEqualTo("across");
    }

    private static Spectrum spectrum(Series hz, Series values) {
        return new Spectrum(hz, values, Spectrum.Scaling.AMPLITUDE, 0.25, 0.375, 1);
    }
}
