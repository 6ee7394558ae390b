package evenblade.keep.practice;

import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Entry;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewJob;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.machine.installation.Installation;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A whole invented job, a day of work: five runs, three corrections, three static checks. The first
 * correction changes nothing, the second moves every blade on by one hub position, the third puts right what
 * is wrong; the last run repeats the one before.
 *
 * @param installation what it is about
 * @param faults what is wrong at first; none for a healthy machine
 * @param seed same seed, same job
 * @param dwellS length of each of the three dwells of a run
 * @param rateHz of the recordings
 */
public record PracticeJob(Installation installation, List<Fault> faults, long seed, double dwellS, int rateHz) {
    private static final OffsetDateTime MORNING = OffsetDateTime.of(2026, 3, 2, 9, 0, 0, 0, ZoneOffset.UTC);
    /** When all of it was entered. */
    private static final OffsetDateTime WRITTEN_UP = MORNING.plusDays(1);

    static final String TRUTH_FOLDER = "truth";
    private static final double USUAL_MAX_RPM = 5600; // invented
    /** Invented: three speeds far enough apart to show a law. */
    private static final double[] DWELL_SHARES = {0.71, 0.86, 0.95};

    private static final double RAMP_S = 4; // invented: a calm hand
    static final double WANDER_SHARE = 0.008; // invented: a hand-held throttle in light wind
    /** How well a throttle is set again. */
    private static final double SETTING_SIGMA = 0.002;
    /** What wind does to the load of each blade from run to run, as degrees of pitch. */
    private static final double WIND_SIGMA_DEG = 0.015;

    static final String FULL_SCALE = "50 m/s2";

    public PracticeJob {
        faults = List.copyOf(faults);
    }

    /** A job of usual size: dwells of 15 s at 4 kHz. */
    public static PracticeJob of(Installation installation, List<Fault> faults, long seed) {
        return new PracticeJob(installation, faults, seed, 15, 4000);
    }

    /** With dwells of 6 s at 1 kHz: a sixth of the work and the disk. */
    public PracticeJob brief() {
        return new PracticeJob(installation, faults, seed, 6, 1000);
    }

    /**
     * What was made.
     *
     * @param folder the job record
     * @param truths one file for each run
     */
    public record Made(Path folder, List<Path> truths) {
        public Made {
            truths = List.copyOf(truths);
        }
    }

    /**
     * Writes the job record, with the truth about each run in its folder {@code truth}.
     *
     * @throws evenblade.base.problem.BadInput where something is in the folder already, or the machine can't have a fault
     */
    public Made write(Path folder) throws IOException {
        return write(folder, faults.stream().map(Ailment::usual).toList());
    }

    /**
     * Writes the job record as {@link #write(Path)} does, with place and size of each fault by the seed.
     *
     * @throws evenblade.base.problem.BadInput where something is in the folder already, or the machine can't have a fault
     */
    public Made writeBySeed(Path folder) throws IOException {
        return write(folder, Ailment.of(faults, healthy(), seed));
    }

    private Made write(Path folder, List<Ailment> ailments) throws IOException {
        Machine healthy = healthy();
        Machine found = healthy;
        for (Ailment ailment : ailments) {
            found = ailment.in(found);
        }
        JobFolder record = begun(folder, name());
        Path truths = Files.createDirectories(folder.resolve(TRUTH_FOLDER));
        return play(
                record,
                new Script(
                        healthy,
                        found,
                        faults,
                        Invention.NOTE + " The truth about each run is in the folder '" + TRUTH_FOLDER + "'.",
                        List.of("as found", "cleaned", "blades moved on", "put right", "repeat, nothing changed"),
                        remedies(ailments, healthy)),
                truths);
    }

    /**
     * Writes a job whose faults, with their place and size, come from the seed alone; nothing that is written in the open gives
     * them away. The truth lies sealed in the folder.
     *
     * @throws evenblade.base.problem.BadInput where something is in the folder already
     */
    public static Path writeSurprise(Path folder, PracticeJob size) throws IOException {
        Machine healthy = size.healthy();
        List<Ailment> drawn = Ailment.drawn(healthy, size.seed);
        Machine found = healthy;
        for (Ailment ailment : drawn) {
            found = ailment.in(found);
        }
        PracticeJob job = new PracticeJob(
                size.installation, drawn.stream().map(Ailment::fault).toList(), size.seed, size.dwellS, size.rateHz);
        JobFolder record = job.begun(folder, "Invented practice job: a surprise");
        Path hidden = Files.createTempDirectory("evenblade-truth");
        try {
            Made made = job.play(
                    record,
                    new Script(
                            healthy,
                            found,
                            job.faults,
                            Invention.NOTE + " What is wrong is sealed.",
                            List.of("run 1", "run 2", "run 3", "run 4", "run 5"),
                            "The workshop worked on the machine. What was done is sealed with the answer."),
                    hidden);
            Map<String, String> truths = new TreeMap<>();
            for (Path truth : made.truths()) {
                truths.put(truth.getFileName().toString(), Files.readString(truth, StandardCharsets.UTF_8));
            }
            new SealedTruth(drawn.stream().map(each -> each.words(healthy)).toList(), truths).write(folder);
            return folder;
        } finally {
            clear(hidden);
        }
    }

    /**
     * What is played and how it is written down.
     *
     * @param healthy the machine once it is put right
     * @param found as it is at first
     * @param wrong what is wrong with it then
     * @param opening the first note
     * @param labels of the five runs
     * @param lastCorrection text of the third correction, which puts it right
     */
    private record Script(
            Machine healthy,
            Machine found,
            List<Fault> wrong,
            String opening,
            List<String> labels,
            String lastCorrection) {}

    private Machine healthy() {
        return Machine.healthy(installation, Seeds.part(seed, 0));
    }

    private JobFolder begun(Path folder, String name) {
        NewJob job = NewJob.of(name, true, installation);
        return JobFolder.create(folder, job, Clock.fixed(WRITTEN_UP.toInstant(), ZoneOffset.UTC));
    }

    private Made play(JobFolder record, Script script, Path truthFolder) throws IOException {
        List<String> movedOn = new ArrayList<>(
                script.healthy().blades().stream().map(Blade::name).toList());
        movedOn.add(0, movedOn.remove(movedOn.size() - 1));
        Path workshop = Files.createTempDirectory("evenblade-practice");
        try {
            Story story = new Story(record, workshop, truthFolder);
            story.note(script.opening());
            story.check(script.found(), true);
            story.run(1, script.labels().get(0), script.found(), script.wrong());
            story.correct("Hub, sockets and flange cleaned, blades put back where they were.");
            story.run(2, script.labels().get(1), script.found(), script.wrong());
            story.correct("Every blade moved on by one hub position.");
            Machine moved = script.found().withBladesAt(movedOn);
            story.check(moved, false);
            story.run(3, script.labels().get(2), moved, script.wrong());
            story.correct(script.lastCorrection());
            Machine mended = script.healthy().withBladesAt(movedOn);
            story.check(mended, true);
            story.run(4, script.labels().get(3), mended, List.of(Fault.NONE));
            story.run(5, script.labels().get(4), mended, List.of(Fault.NONE));
            return new Made(record.path(), story.truths);
        } finally {
            clear(workshop);
        }
    }

    private String name() {
        String words = faults.isEmpty()
                ? Fault.NONE.word()
                : faults.stream().map(Fault::word).collect(Collectors.joining(", "));
        return "Invented practice job: " + words + " (seed " + seed + ")";
    }

    private static String remedies(List<Ailment> ailments, Machine machine) {
        return (ailments.isEmpty() ? Ailment.of(List.of(Fault.NONE), machine, 0) : ailments)
                .stream().map(each -> each.remedy(machine)).collect(Collectors.joining(" "));
    }

    static void clear(Path workshop) throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.list(workshop)) {
            files = all.toList();
        }
        for (Path file : files) {
            Files.delete(file);
        }
        Files.delete(workshop);
    }

    /** Enters one thing after the other, an hour apart. */
    private final class Story {
        private final JobFolder record;
        private final Path workshop;
        private final Path truthFolder;
        private final List<Path> truths = new ArrayList<>();
        private OffsetDateTime now = MORNING;
        private int checks;

        Story(JobFolder record, Path workshop, Path truthFolder) {
            this.record = record;
            this.workshop = workshop;
            this.truthFolder = truthFolder;
        }

        void note(String text) {
            record.append(Entry.note(text).at(now));
        }

        void correct(String text) {
            now = now.plusHours(1);
            record.append(Entry.correction(text).at(now));
        }

        void check(Machine machine, boolean withPitchAndFlange) {
            now = now.plusMinutes(20);
            checks++;
            StaticCheck check = new StaticCheck(machine, Seeds.part(seed, 10 + checks));
            List<Entry> entries = new ArrayList<>();
            entries.add(Entry.of(check.tracking(), "Block under the tips, blades pushed back, two rounds.")
                    .at(now));
            if (withPitchAndFlange) {
                entries.add(Entry.of(check.pitch(), "").at(now.plusMinutes(5)));
                entries.add(Entry.of(check.runOut(), "").at(now.plusMinutes(10)));
            }
            record.appendAll(entries);
        }

        void run(int number, String label, Machine machine, List<Fault> wrong) throws IOException {
            now = now.plusHours(1);
            long runSeed = Seeds.part(seed, 100 + number);
            Random day = new Random(runSeed);
            PracticeRun run = PracticeRun.of(inWind(machine, day))
                    .knownToHave(wrong)
                    .following(profile(day))
                    .wandering(WANDER_SHARE)
                    .seeded(runSeed);
            AccelerometerWav sensor = AccelerometerWav.threeAxesWithMark(rateHz);
            String name = "run-" + number;
            Path recording = TruthFile.record(run, sensor, workshop, truthFolder, name);
            truths.add(truthFolder.resolve(name + ".truth.json"));
            RunSettings settings = RunSettings.NONE
                    .withMarkChannel(String.valueOf(SensorAxis.values().length + 1))
                    .withFullScale(FULL_SCALE);
            record.addRecording(
                    recording,
                    new NewRun(Optional.of(now), Optional.of(label), Invention.NOTE, settings, conditions(day)));
        }
    }

    /** The load of each blade as the wind of one run leaves it. */
    static Machine inWind(Machine machine, Random day) {
        return machine.withBlades(machine.blades().stream()
                .map(blade -> blade.coarser(WIND_SIGMA_DEG * day.nextGaussian()))
                .toList());
    }

    /** Three dwells with a throttle that is never set quite alike. */
    SpeedProfile profile(Random day) {
        double maxRpm = installation.engine().maxRpm().orElse(USUAL_MAX_RPM);
        List<Double> hertz = new ArrayList<>();
        for (double share : DWELL_SHARES) {
            double set = share * maxRpm * (1 + SETTING_SIGMA * day.nextGaussian());
            hertz.add(set / 60 / installation.reduction().ratio());
        }
        return SpeedProfile.startingAt(hertz.get(0))
                .thenDwell(dwellS)
                .thenRampTo(hertz.get(1), RAMP_S)
                .thenDwell(dwellS)
                .thenRampTo(hertz.get(2), RAMP_S)
                .thenDwell(dwellS);
    }

    /** Weather and sensor of a run. */
    static Conditions conditions(Random day) {
        return Conditions.NONE
                .with(Condition.WIND, String.format(Locale.ROOT, "%.0f kt from ahead", 3 + 3 * day.nextDouble()))
                .with(Condition.TEMPERATURE, String.format(Locale.ROOT, "%.0f °C", 9 + 6 * day.nextDouble()))
                .with(Condition.SENSOR, "invented three-axis accelerometer")
                .with(Condition.PLACE, "top of the gearbox")
                .with(Condition.DIRECTION, "along, across, up")
                .with(Condition.GAIN, "fixed");
    }
}
