package evenblade.face.cli;

import evenblade.machine.installation.OrderLine;
import evenblade.measure.live.LiveReading;
import evenblade.measure.live.StepProgress;
import evenblade.measure.live.SteppedRun;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Speed, propeller once-per-revolution and blade pass of the latest window, in few letters. */
final class LiveText {
    private LiveText() {}

    static String of(LiveReading reading) {
        if (reading.engineRpm().isEmpty()) {
            return reading.speed().isPresent() ? "no speed found" : "no speed yet";
        }
        String speed =
                String.format(Locale.ROOT, "%.0f rpm", reading.engineRpm().get());
        Optional<DwellOrders> latest =
                reading.channels().stream().findFirst().flatMap(channel -> last(channel.dwells()));
        return speed
                + latest.map(dwell -> " 1x " + amplitude(dwell, OrderLine.Role.UNEVEN_PROPELLER) + " blade "
                                + amplitude(dwell, OrderLine.Role.BLADE_PASS))
                        .orElse(" not steady");
    }

    /** What to do now in a stepped run. */
    static String of(StepProgress step) {
        return switch (step.state()) {
            case GO_THERE -> String.format(Locale.ROOT, "GO TO %.0f:", step.engineRpm());
            case HOLD, DONE, DONE_WEAK ->
                String.format(Locale.ROOT, "HOLD %.0f %.0f/%.0f s:", step.engineRpm(), step.heldS(), until(step));
        };
    }

    /** Past the planned length a weak line is waited for. */
    private static double until(StepProgress step) {
        return step.heldS() < step.wantedS() ? step.wantedS() : SteppedRun.GIVE_UP_AFTER * step.wantedS();
    }

    /** A step that is done, as a line of its own. */
    static String done(StepProgress step) {
        return String.format(
                Locale.ROOT,
                "%.0f engine rpm: 1x %s, blade pass %s, %s after %.0f s",
                step.engineRpm(),
                percent(step.oncePercent()),
                percent(step.bladePassPercent()),
                step.state() == StepProgress.State.DONE ? "done" : "as good as it gets",
                step.heldS());
    }

    private static String percent(Optional<Double> percent) {
        return percent.map(p -> String.format(Locale.ROOT, "± %.1f %%", p)).orElse("too weak");
    }

    private static Optional<DwellOrders> last(List<DwellOrders> dwells) {
        return dwells.isEmpty() ? Optional.empty() : Optional.of(dwells.get(dwells.size() - 1));
    }

    /** Of the lowest line that plays this part. */
    private static String amplitude(DwellOrders dwell, OrderLine.Role role) {
        for (OrderReading reading : dwell.readings()) {
            if (reading.line().role() == role) {
                if (!(reading.level() instanceof Level.Measured measured)) {
                    return "-";
                }
                return measured.detected()
                        ? String.format(Locale.ROOT, "%.3g", measured.amplitude())
                        : String.format(Locale.ROOT, "<%.2g", measured.ciHigh());
            }
        }
        return "-";
    }
}
