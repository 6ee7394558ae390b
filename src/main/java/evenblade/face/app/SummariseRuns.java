package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.base.units.SignalUnit;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Answers in a few figures what each run of a job came to: for a list of runs. */
public final class SummariseRuns {
    private SummariseRuns() {}

    /**
     * One run in its longest dwell.
     *
     * @param engineRpm mean speed
     * @param unit of the first channel
     * @param once propeller 1× on it; empty where it isn't detected
     */
    public record Summary(double engineRpm, SignalUnit unit, Optional<Level.Measured> once) {}

    /** By the id of the run; runs that can't be used and runs without a confirmed speed are left out. */
    public static Map<String, Summary> summarise(Path job, Progress progress) {
        JobRuns runs = new JobRuns(JobFolder.open(job));
        Map<String, Summary> summaries = new LinkedHashMap<>();
        for (Event run : runs.record().standing(Kind.RUN)) {
            progress.at(0, "measuring the runs");
            try {
                of(runs.result(run, false).run().orders()).ifPresent(summary -> summaries.put(run.id(), summary));
            } catch (BadInput e) {
                continue; // the page of the run says what is wrong with it
            }
        }
        return summaries;
    }

    private static Optional<Summary> of(RunOrders orders) {
        Optional<Dwell> main =
                orders.speed().main().filter(known -> orders.speed().confirmed());
        ChannelOrders first = orders.channels().get(0);
        return main.map(dwell -> new Summary(
                dwell.propellerRpm() * orders.ratio(),
                first.unit(),
                first.dwells().stream()
                        .filter(each -> each.dwell().equals(dwell))
                        .flatMap(each -> each.readings().stream())
                        .filter(each -> each.line().of() == Shaft.PROPELLER
                                && each.line().order() == 1
                                && each.detected())
                        .map(OrderReading::level)
                        .map(Level.Measured.class::cast)
                        .findFirst()));
    }
}
