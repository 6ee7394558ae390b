package evenblade.keep.practice;

import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonWriter;
import evenblade.base.numeric.Phasor;
import evenblade.keep.practice.Sensor.TrueChannel;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Records a run and writes beside it what is truly in the file: {@code NAME.truth.json} holds the faults, the
 * true mean speed of each dwell and every line's amplitude (peak, in the channel's unit) and phase against the
 * mark, averaged over the dwell as a fit in step with the propeller would.
 */
public final class TruthFile {
    private static final double NOTHING = 1e-12; // rounding of sums
    private static final double SAME_ORDER = OrderTable.COINCIDENT;

    private TruthFile() {}

    /**
     * Writes {@code NAME.wav} or {@code NAME.csv} and its truth.
     *
     * @return the recording
     */
    public static Path record(PracticeRun run, Sensor sensor, Path folder, String name) throws IOException {
        return record(run, sensor, folder, folder, name);
    }

    /** Records it, with the truth in another folder. */
    public static Path record(PracticeRun run, Sensor sensor, Path folder, Path truthFolder, String name)
            throws IOException {
        Path file = folder.resolve(name + sensor.extension());
        List<TrueChannel> channels = sensor.record(run, file);
        JsonFields document = document(run, sensor, file, channels);
        Files.writeString(
                truthFolder.resolve(name + ".truth.json"), JsonWriter.write(document), StandardCharsets.UTF_8);
        return file;
    }

    private static JsonFields document(PracticeRun run, Sensor sensor, Path file, List<TrueChannel> channels) {
        return new JsonFields()
                .put("note", Invention.NOTE)
                .put("recording", file.getFileName().toString())
                .put("sensor", sensor.description())
                .put("seed", run.seed())
                .put("faults", run.faults().stream().map(Fault::word).toList())
                .put("machine", machine(run.machine()))
                .put(
                        "dwells",
                        run.speed().dwells().stream()
                                .map(dwell -> dwell(run, dwell, channels))
                                .toList());
    }

    private static JsonFields machine(Machine machine) {
        List<JsonFields> blades = new ArrayList<>();
        for (int position = 1; position <= machine.blades().size(); position++) {
            Blade blade = machine.blades().get(position - 1);
            blades.add(new JsonFields()
                    .put("position", position)
                    .put("blade", blade.name())
                    .put("massKg", rounded(blade.massKg()))
                    .put("centreOfGravityMm", rounded(1000 * blade.centreOfGravityM()))
                    .put("ownTrackMm", rounded(1000 * blade.trackM()))
                    .put("trackMm", rounded(1000 * machine.trackAtM(position)))
                    .put("pitchDeg", rounded(blade.pitchDeg())));
        }
        List<JsonFields> weights = machine.hubWeights().stream()
                .map(weight -> new JsonFields()
                        .put("gramMm", rounded(1e6 * weight.kgM()))
                        .put("againstRotationDeg", rounded(weight.againstRotationDeg())))
                .toList();
        JsonFields json = weights.isEmpty() ? new JsonFields() : new JsonFields().put("hubWeights", weights);
        return json.put("blades", blades)
                .put("faceRunOutMm", rounded(1000 * machine.runOut().totalM()))
                .put("dialRadiusMm", rounded(1000 * machine.runOut().dialRadiusM()))
                .put("faceHighDeg", rounded(machine.runOut().highDeg()))
                .put(
                        "cylinderStrength",
                        machine.drive().cylinderStrength().stream()
                                .map(TruthFile::rounded)
                                .toList())
                .put("crankImbalanceGramMm", rounded(1e6 * machine.drive().crankImbalanceKgM()));
    }

    private static JsonFields dwell(PracticeRun run, SpeedProfile.Stretch dwell, List<TrueChannel> channels) {
        double hz = run.trueSpeed().meanHz(dwell.fromS(), dwell.toS());
        double ratio = run.machine().installation().reduction().ratio();
        return new JsonFields()
                .put("fromS", dwell.fromS())
                .put("toS", dwell.toS())
                .put("engineRpm", rounded(60 * hz * ratio))
                .put("propellerRpm", rounded(60 * hz))
                .put(
                        "channels",
                        channels.stream()
                                .map(channel -> channel(run, dwell, hz, channel))
                                .toList());
    }

    private static JsonFields channel(PracticeRun run, SpeedProfile.Stretch dwell, double hz, TrueChannel channel) {
        return new JsonFields()
                .put("number", channel.number())
                .put("channel", channel.name())
                .put("unit", channel.unit())
                .put("fullScale", rounded(channel.fullScale()))
                .put("samplesBeyondRange", channel.beyondRange())
                .put("orders", orders(run, dwell, hz, channel.signal()))
                .put(
                        "standing",
                        channel.signal().tones().stream()
                                .map(tone -> new JsonFields()
                                        .put("frequencyHz", tone.frequencyHz())
                                        .put("amplitude", tone.amplitude()))
                                .toList());
    }

    private static List<JsonFields> orders(
            PracticeRun run, SpeedProfile.Stretch dwell, double hz, SyntheticRun signal) {
        List<OrderLine> table = run.machine().installation().orders().lines();
        List<JsonFields> orders = new ArrayList<>();
        for (OrderLine line : table) {
            JsonFields named = new JsonFields()
                    .put("of", line.of().word())
                    .put("order", rounded(line.order()))
                    .put("name", line.name());
            orders.add(withLevel(named, signal, dwell, hz, line.propellerOrder()));
        }
        signal.lines().stream()
                .mapToDouble(Line::propellerOrder)
                .distinct()
                .filter(order -> table.stream().noneMatch(line -> same(line.propellerOrder(), order)))
                .mapToObj(order -> withLevel(
                        new JsonFields().put("name", "none of the installation's orders"), signal, dwell, hz, order))
                .forEach(orders::add);
        return orders;
    }

    private static JsonFields withLevel(
            JsonFields fields, SyntheticRun signal, SpeedProfile.Stretch dwell, double hz, double order) {
        Phasor mean = signal.truth(order, dwell.fromS(), dwell.toS());
        boolean silent = mean.magnitude() < NOTHING;
        return fields.put("propellerOrder", rounded(order))
                .put("frequencyHz", rounded(order * hz))
                .put("amplitude", rounded(mean.magnitude()))
                .put("phaseDeg", silent ? Optional.empty() : Optional.of(rounded(mean.degrees())));
    }

    /** Nine significant digits; what is only rounding error is nothing. */
    private static double rounded(double value) {
        return Math.abs(value) < NOTHING
                ? 0
                : new BigDecimal(value).round(new MathContext(9)).doubleValue();
    }

    private static boolean same(double a, double b) {
        return Math.abs(a - b) <= SAME_ORDER * a;
    }
}
