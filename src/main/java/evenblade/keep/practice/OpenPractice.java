package evenblade.keep.practice;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import evenblade.base.units.Mass;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.HubWeight;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.job.NewJob;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.keep.job.WeightsOn;
import evenblade.machine.installation.HubCounting;
import evenblade.machine.installation.HubWeights;
import evenblade.machine.installation.Installation;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * An invented job that goes on: it begins with one run, and each further run is made with the weights that the record
 * says are on the hub by then. So it can be balanced to the end.
 *
 * @param faults what is wrong
 * @param seed same seed and same weights, same runs
 * @param mark whether the propeller has a mark
 */
public record OpenPractice(List<Fault> faults, long seed, boolean mark) {
    private static final String MACHINE_FILE = "machine.json";
    /** Long enough for a line good to a percent, short enough to be made in a second. */
    private static final double DWELL_S = 10;

    private static final int RATE_HZ = 2000; // orders up to some 800 Hz
    private static final double KGM_PER_GMM = 1e-6; // exact

    public OpenPractice {
        faults = List.copyOf(faults);
    }

    /** The aircraft of practice with six holes in a plate behind the hub. */
    static Installation installation() {
        Installation usual = PracticeInstallation.geared();
        List<HubWeights.Place> holes = new ArrayList<>();
        for (int hole = 1; hole <= 6; hole++) {
            holes.add(
                    new HubWeights.Place(String.valueOf(hole), new Angle(60.0 * (hole - 1)), Length.ofMillimetres(60)));
        }
        Installation.Propeller propeller = usual.propeller();
        return new Installation(
                usual.name(),
                usual.engine(),
                usual.reduction(),
                new Installation.Propeller(
                        propeller.blades(),
                        propeller.diameter(),
                        Optional.of(Installation.Rotation.CLOCKWISE),
                        propeller.bladeMass(),
                        propeller.centreOfGravity()),
                usual.limits(),
                usual.pitchLimits(),
                new HubWeights(
                        holes,
                        Optional.of(new Mass(0.040)),
                        List.of(new Mass(0.001), new Mass(0.002), new Mass(0.005), new Mass(0.010)),
                        Optional.empty()),
                usual.sensor());
    }

    /**
     * Writes the job with its first run.
     *
     * @throws BadInput where something is in the folder already, or the machine can't have a fault
     */
    public Event begin(Path folder) throws IOException {
        Installation installation = installation();
        spoilt(installation);
        String name = "Invented practice job to balance " + (mark ? "with" : "without") + " a mark (seed " + seed + ")";
        JobFolder record = JobFolder.create(folder, NewJob.of(name, true, installation));
        Path truth = Files.createDirectories(folder.resolve(PracticeJob.TRUTH_FOLDER));
        Files.writeString(
                truth.resolve(MACHINE_FILE),
                JsonWriter.write(new JsonFields()
                        .put("note", Invention.NOTE)
                        .put("faults", faults.stream().map(Fault::word).toList())
                        .put("seed", seed)
                        .put("mark", String.valueOf(mark))),
                StandardCharsets.UTF_8);
        record.append(Entry.note(Invention.NOTE + " The truth is in the folder '" + PracticeJob.TRUTH_FOLDER + "'."));
        return run(folder, Optional.of("no weights"));
    }

    /** Whether a folder holds such a job. */
    public static boolean goesOn(Path folder) {
        return Files.isRegularFile(machine(folder));
    }

    private static Path machine(Path folder) {
        return folder.resolve(PracticeJob.TRUTH_FOLDER).resolve(MACHINE_FILE);
    }

    /**
     * Makes the next run, with the weights that are on.
     *
     * @throws BadInput where the folder isn't such a job, or weights are on and nobody has said how angles are counted
     */
    public static Event nextRun(Path folder, Optional<String> label) throws IOException {
        if (!goesOn(folder)) {
            throw BadInput.in(folder).found("no invented job that goes on", "the folder of an invented job to balance");
        }
        JsonObject json = JsonDocument.read(machine(folder));
        OpenPractice practice = new OpenPractice(
                json.texts("faults").stream().map(Fault::named).toList(),
                (long) json.number("seed", Long.MIN_VALUE, Long.MAX_VALUE),
                Boolean.parseBoolean(json.text("mark")));
        return practice.run(folder, label);
    }

    private Machine spoilt(Installation installation) {
        Machine machine = Machine.healthy(installation, Seeds.part(seed, 0));
        for (Ailment ailment : Ailment.of(faults, machine, seed)) {
            machine = ailment.in(machine);
        }
        return machine;
    }

    private Event run(Path folder, Optional<String> label) throws IOException {
        JobFolder job = JobFolder.open(folder);
        JobRecord record = job.record();
        Machine machine = spoilt(record.installation()).withHubWeights(weights(record));
        int number = 1
                + (int) record.events().stream()
                        .filter(e -> e.kind() == Kind.RUN)
                        .count();
        long runSeed = Seeds.part(seed, 100 + number);
        Random day = new Random(runSeed);
        PracticeJob usual = new PracticeJob(record.installation(), faults, seed, DWELL_S, RATE_HZ);
        PracticeRun run = PracticeRun.of(PracticeJob.inWind(machine, day))
                .knownToHave(faults)
                .following(usual.profile(day))
                .wandering(PracticeJob.WANDER_SHARE)
                .seeded(runSeed);
        AccelerometerWav marked = AccelerometerWav.threeAxesWithMark(RATE_HZ);
        AccelerometerWav sensor = mark
                ? marked
                : new AccelerometerWav(RATE_HZ, marked.bits(), marked.fullScale(), marked.axes(), Optional.empty());
        RunSettings scaled = RunSettings.NONE.withFullScale(PracticeJob.FULL_SCALE);
        RunSettings settings = mark ? scaled.withMarkChannel(String.valueOf(SensorAxis.values().length + 1)) : scaled;
        Path workshop = Files.createTempDirectory("evenblade-practice");
        try {
            Path recording =
                    TruthFile.record(run, sensor, workshop, folder.resolve(PracticeJob.TRUTH_FOLDER), "run-" + number);
            return job.addRecording(
                    recording,
                    new NewRun(
                            Optional.of(after(record)), label, Invention.NOTE, settings, PracticeJob.conditions(day)));
        } finally {
            PracticeJob.clear(workshop);
        }
    }

    /** Now, or where an entry is dated later, at its time: a run comes after all that stands in the record. */
    private static OffsetDateTime after(JobRecord record) {
        OffsetDateTime now = OffsetDateTime.now();
        return record.standing().stream()
                .map(Event::at)
                .filter(at -> at.isAfter(now))
                .reduce((first, second) -> second)
                .orElse(now);
    }

    private static List<Machine.HubMass> weights(JobRecord record) {
        List<HubWeight> on = WeightsOn.now(record).stream()
                .flatMap(event -> WeightsOn.putOn(event).stream())
                .toList();
        Optional<HubCounting> counted = WeightsOn.counted(record);
        if (!on.isEmpty() && counted.isEmpty()) {
            throw BadInput.in("angles of weights")
                    .found(
                            "nobody has said which way they are counted",
                            "once, with a weight: against the rotation, or with it");
        }
        double sign = counted.filter(c -> c == HubCounting.WITH_ROTATION).isPresent() ? -1 : 1;
        return on.stream()
                .map(w -> new Machine.HubMass(KGM_PER_GMM * w.massG() * w.radiusMm(), sign * w.angleDeg()))
                .toList();
    }
}
