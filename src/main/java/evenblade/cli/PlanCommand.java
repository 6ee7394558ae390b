package evenblade.cli;

import evenblade.app.PlanRun;
import evenblade.json.JsonWriter;
import evenblade.plan.RunPlan;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "plan",
        description = "Tell where each order will lie, what coincides, what the sensor misses; print the run card.",
        mixinStandardHelpOptions = true)
final class PlanCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(names = "--installation", required = true, paramLabel = "FILE", description = "The installation file.")
    private Path installation;

    @Option(
            names = "--engine-rpm",
            paramLabel = "RPM",
            description = "A speed to hold; may be repeated. Left out: five from idle upwards.")
    private List<Double> engineRpms = new ArrayList<>();

    @Option(
            names = "--sample-rate",
            paramLabel = "HZ",
            description = "Samples per second of the sensor: shows what it can't see.")
    private Double sampleRate;

    @Option(names = "--json", description = "Print one JSON document.")
    private boolean json;

    @Override
    public Integer call() {
        OptionalDouble rate = sampleRate == null ? OptionalDouble.empty() : OptionalDouble.of(sampleRate);
        RunPlan plan = PlanRun.answer(installation, engineRpms, rate);
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.print(JsonWriter.write(PlanJson.of(plan)));
        } else {
            PlanText.lines(plan).forEach(out::println);
        }
        return ExitStatus.DONE;
    }
}
