package evenblade.tell.report;

import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.findings.Cause;
import evenblade.judge.findings.Confidence;
import evenblade.judge.findings.Finding;
import evenblade.machine.installation.Engine;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is still open, largest share of the shaking first.
 *
 * <p>The share of a cause is {@code Σv² of its lines / Σv² of all detected lines} in the last run, at its longest dwell, in the
 * channel that the comparison speaks of; {@code v} the peak velocity. Lines that fall on each other count once.
 */
final class Leftovers {
    /** Two lines of the table nearer than this are one line of the spectrum, Hz. */
    private static final double SAME_HZ = 1e-6;

    private Leftovers() {}

    /**
     * One of them.
     *
     * @param finding what it is
     * @param share of the shaking that is left, 0 to 1; empty where it can't be known
     */
    record Leftover(Finding finding, OptionalDouble share) {}

    static List<Leftover> of(
            List<Finding> findings, Optional<MeasuredRun> last, Optional<String> channel, Engine engine) {
        List<Leftover> left = new ArrayList<>();
        for (Finding finding : findings) {
            boolean told = finding.open()
                    && finding.cause() != Cause.NOTHING
                    && finding.sureness().share() >= Confidence.LEANING;
            if (told) {
                left.add(new Leftover(finding, share(HowOften.of(finding, engine), last, channel)));
            }
        }
        left.sort(Comparator.comparingDouble((Leftover each) -> -each.share().orElse(0)));
        return left;
    }

    private static OptionalDouble share(HowOften beat, Optional<MeasuredRun> last, Optional<String> wanted) {
        Optional<ChannelOrders> channel = last.flatMap(run -> LastRun.channel(run, wanted));
        Optional<DwellOrders> dwell = channel.flatMap(LastRun::longest);
        if (dwell.isEmpty() || beat == HowOften.OTHER) {
            return OptionalDouble.empty();
        }
        SignalUnit unit = channel.get().unit();
        double all = 0;
        double its = 0;
        List<Double> counted = new ArrayList<>();
        for (OrderReading reading : dwell.get().readings()) {
            boolean again = counted.stream().anyMatch(hz -> Math.abs(hz - reading.frequencyHz()) < SAME_HZ);
            if (again || !(reading.level() instanceof Level.Measured measured) || !measured.detected()) {
                continue;
            }
            OptionalDouble velocity = Velocity.mmS(measured.amplitude(), unit, reading.frequencyHz());
            if (velocity.isEmpty()) {
                return OptionalDouble.empty();
            }
            counted.add(reading.frequencyHz());
            double power = velocity.getAsDouble() * velocity.getAsDouble();
            all += power;
            its += beat.shownBy(reading.line()) ? power : 0;
        }
        return all > 0 ? OptionalDouble.of(its / all) : OptionalDouble.empty();
    }
}
