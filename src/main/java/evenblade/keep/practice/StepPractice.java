package evenblade.keep.practice;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.job.NewJob;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.machine.installation.Installation;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/**
 * An invented job in which nothing is measured until somebody asks for it and nothing changes until somebody does it. What
 * is wrong is sealed; the steps stand in {@code steps.json}, and the machine is made from both again for each step.
 *
 * @param folder of the job
 * @param seed of the machine and of every reading
 * @param steps taken so far
 */
public record StepPractice(Path folder, long seed, List<PracticeStep.Wanted> steps) {
    private static final String STEPS_FILE = "steps.json";
    /** As in a job to be balanced: long enough for a line good to a percent, short enough to be made in a second. */
    private static final double DWELL_S = 10;

    private static final int RATE_HZ = 4000; // gear mesh lies below half of it

    public StepPractice {
        steps = List.copyOf(steps);
    }

    /**
     * How it went.
     *
     * @param changes how many were made
     * @param money spent, invented
     * @param wrong repairs of what was in order, in words
     * @param left what is still wrong, in words
     */
    public record Score(int changes, int money, List<String> wrong, List<String> left) {
        public Score {
            wrong = List.copyOf(wrong);
            left = List.copyOf(left);
        }
    }

    /**
     * Begins such a job.
     *
     * @throws BadInput where something is in the folder already
     */
    public static StepPractice begin(Path folder, Installation installation, long seed) throws IOException {
        Machine healthy = Machine.healthy(installation, Seeds.part(seed, 0));
        List<Ailment> drawn = Ailment.drawn(healthy, seed);
        JobFolder.create(folder, NewJob.of("Invented practice job: step by step", true, installation))
                .append(Entry.note(Invention.NOTE + " What is wrong is sealed."));
        new SealedTruth(
                        drawn.stream().map(each -> each.words(healthy)).toList(),
                        Map.of("seed.json", JsonWriter.write(new JsonFields().put("seed", seed))))
                .write(folder);
        StepPractice practice = new StepPractice(folder, seed, List.of());
        practice.writeSteps();
        return practice;
    }

    /** Whether a folder holds such a job. */
    public static boolean goesOn(Path folder) {
        return Files.isRegularFile(folder.resolve(STEPS_FILE));
    }

    /**
     * Such a job as it stands.
     *
     * @throws BadInput where the folder holds none
     */
    public static StepPractice open(Path folder) throws IOException {
        Path file = folder.resolve(STEPS_FILE);
        if (!goesOn(folder)) {
            throw BadInput.in(folder).found("no practice job that goes step by step", "one that was begun so");
        }
        String sealed = SealedTruth.read(folder).truths().get("seed.json");
        return new StepPractice(
                folder,
                (long) JsonDocument.parse(sealed, folder.toString()).number("seed", Long.MIN_VALUE, Long.MAX_VALUE),
                JsonDocument.read(file).texts("steps").stream()
                        .map(PracticeStep::read)
                        .toList());
    }

    /** Takes the next step; what it brings goes into the record. */
    public Event take(PracticeStep.Wanted wanted) throws IOException {
        requirePlace(wanted);
        List<PracticeStep.Wanted> more = new ArrayList<>(steps);
        more.add(wanted);
        StepPractice next = new StepPractice(folder, seed, more);
        Event event = next.enter(wanted);
        next.writeSteps();
        return event;
    }

    private void requirePlace(PracticeStep.Wanted wanted) {
        if (!wanted.step().placed()) {
            return;
        }
        Machine healthy = healthy();
        List<String> places = new ArrayList<>();
        if (wanted.step() == PracticeStep.OVERHAUL_CYLINDER) {
            for (int i = 1; i <= healthy.drive().cylinderStrength().size(); i++) {
                places.add(String.valueOf(i));
            }
        } else {
            healthy.blades().forEach(blade -> places.add(blade.name()));
        }
        if (!places.contains(wanted.place())) {
            throw BadInput.in("step").found("'" + wanted.place() + "'", "one of " + String.join(", ", places));
        }
    }

    private Event enter(PracticeStep.Wanted wanted) throws IOException {
        JobFolder job = JobFolder.open(folder);
        Machine machine = machine();
        StaticCheck check = new StaticCheck(machine, Seeds.part(seed, 1000 + steps.size()));
        return switch (wanted.step()) {
            case RUN -> run(job, machine);
            case TRACKING -> read(job, check.tracking());
            case PITCH -> read(job, check.pitch());
            case RUN_OUT -> read(job, check.runOut());
            default -> job.append(Entry.correction("Done: " + wanted.step().text(wanted.place()) + "."));
        };
    }

    private static Event read(JobFolder job, Detail readings) {
        return job.append(Entry.of(readings, Invention.NOTE));
    }

    private Event run(JobFolder job, Machine machine) throws IOException {
        JobRecord record = job.record();
        long number = 1
                + record.events().stream()
                        .filter(each -> each.kind() == Kind.RUN)
                        .count();
        long runSeed = Seeds.part(seed, 2000 + steps.size());
        Random day = new Random(runSeed);
        PracticeJob usual = new PracticeJob(record.installation(), List.of(), seed, DWELL_S, RATE_HZ);
        PracticeRun run = PracticeRun.of(PracticeJob.inWind(machine, day))
                .following(usual.profile(day))
                .wandering(PracticeJob.WANDER_SHARE)
                .seeded(runSeed);
        Path workshop = Files.createTempDirectory("evenblade-practice");
        try {
            Path recording = TruthFile.record(
                    run, AccelerometerWav.threeAxesWithMark(RATE_HZ), workshop, workshop, "run-" + number);
            RunSettings settings = RunSettings.NONE
                    .withMarkChannel(String.valueOf(SensorAxis.values().length + 1))
                    .withFullScale(PracticeJob.FULL_SCALE);
            return job.addRecording(
                    recording,
                    new NewRun(
                            Optional.empty(),
                            Optional.of("run " + number),
                            Invention.NOTE,
                            settings,
                            PracticeJob.conditions(day)));
        } finally {
            PracticeJob.clear(workshop);
        }
    }

    private Machine healthy() {
        return Machine.healthy(JobFolder.open(folder).record().installation(), Seeds.part(seed, 0));
    }

    /** As it is after all steps: what is still wrong put into the healthy machine, blades where they were moved. */
    private Machine machine() {
        Machine machine = healthy();
        List<String> names =
                new ArrayList<>(machine.blades().stream().map(Blade::name).toList());
        for (Ailment ailment : left()) {
            machine = ailment.in(machine);
        }
        for (PracticeStep.Wanted each : steps) {
            if (each.step() == PracticeStep.MOVE_BLADES) {
                names.add(0, names.remove(names.size() - 1));
            }
        }
        return machine.withBladesAt(names);
    }

    private List<Ailment> left() {
        Machine healthy = healthy();
        return Ailment.drawn(healthy, seed).stream()
                .filter(ailment -> steps.stream().noneMatch(step -> cures(step, ailment, healthy)))
                .toList();
    }

    private static boolean cures(PracticeStep.Wanted step, Ailment ailment, Machine healthy) {
        if (step.step().cures().filter(fault -> fault == ailment.fault()).isEmpty()) {
            return false;
        }
        String place = step.step() == PracticeStep.OVERHAUL_CYLINDER
                ? String.valueOf(ailment.place())
                : healthy.blades().get(ailment.place() - 1).name();
        return !step.step().placed() || place.equals(step.place());
    }

    /** How it went so far. A repair of what is in order, or was put right before, is a wrong one. */
    public Score score() {
        Machine healthy = healthy();
        List<Ailment> drawn = Ailment.drawn(healthy, seed);
        Set<Ailment> cured = new HashSet<>();
        List<String> wrong = new ArrayList<>();
        int changes = 0;
        int money = 0;
        for (PracticeStep.Wanted step : steps) {
            money += step.step().price();
            changes += step.step().measures() ? 0 : 1;
            boolean helped =
                    drawn.stream().filter(each -> cures(step, each, healthy)).anyMatch(cured::add);
            if (step.step().cures().isPresent() && !helped) {
                wrong.add(step.step().text(step.place()));
            }
        }
        return new Score(
                changes,
                money,
                wrong,
                left().stream().map(each -> each.words(healthy)).toList());
    }

    private void writeSteps() throws IOException {
        Files.writeString(
                folder.resolve(STEPS_FILE),
                JsonWriter.write(new JsonFields()
                        .put("note", Invention.NOTE)
                        .put(
                                "steps",
                                steps.stream()
                                        .map(each -> each.place().isEmpty()
                                                ? each.step().word()
                                                : each.step().word() + "=" + each.place())
                                        .toList())),
                StandardCharsets.UTF_8);
    }
}
