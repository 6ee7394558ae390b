package evenblade.fuzz;

import evenblade.base.problem.BadInput;
import evenblade.face.cli.Program;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.StreamSummary;
import evenblade.keep.job.EvidenceCheck;
import evenblade.keep.job.JobFolder;
import evenblade.machine.installation.InstallationFile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * Feeds changed files and words to everything that reads them, with a fixed seed, and notes what no input may do: throw
 * anything but a refusal, answer with what is no number, or take more processor time than a file of its size can need.
 * A changed file that is answered in a new way joins those that are changed further.
 *
 * <p>Words: folder of seeds, folder to work in, seed, seconds of processor time.
 */
public final class Fuzz {
    /** Ten times what the slowest seed needs. */
    private static final long MOST_CPU_NANOS = 10_000_000_000L;

    private static final int MOST_IN_CORPUS = 400;

    /** Questions that cost a hundred times what reading a job costs are asked of every twentieth job. */
    private static final int CASES_TO_A_QUESTION = 20;

    /** A plan costs ten times what reading an installation does. */
    private static final int CASES_TO_A_PLAN = 10;

    /** A report takes seconds. */
    private static final int CASES_TO_A_REPORT = 500;

    /** Kept results of changed jobs fill the folder; it is emptied after so many. */
    private static final int CASES_TO_A_SWEEP = 300;

    /** What is fed, and how often of a hundred: what costs a hundredfold comes seldom. */
    private enum Door {
        RECORDING(60),
        INSTALLATION(15),
        JOB(13),
        /** What is kept of a run's measuring: however it is changed, the answer stays. */
        KEPT(1),
        WORDS(11);

        private final int share;

        Door(int share) {
            this.share = share;
        }

        static Door at(int percent) {
            int left = percent;
            for (Door door : values()) {
                left -= door.share;
                if (left < 0) {
                    return door;
                }
            }
            throw new IllegalStateException("shares make 100");
        }
    }

    /**
     * One thing that must not happen.
     *
     * @param trace of what was thrown, in short
     * @param file the input that does it
     */
    public record Find(String trace, Path file) {}

    private final Path work;
    private final Random chance;
    private final Mutator mutator;
    private final Map<Door, List<byte[]>> corpus = new EnumMap<>(Door.class);
    private final Set<String> answers = new HashSet<>();
    private final Set<String> traces = new HashSet<>();
    private final List<Find> finds = new ArrayList<>();
    private final Map<Door, Long> counts = new EnumMap<>(Door.class);
    private final Path whole;
    private final List<Path> kept;
    private final String wholeAnswer;
    private int grown;
    private long jobs;

    public Fuzz(Path seeds, Path work, long seed) throws IOException {
        this.work = Files.createDirectories(work);
        this.chance = new Random(seed);
        this.mutator = new Mutator(chance);
        Files.createDirectories(work.resolve("job"));
        copyRecordings(seeds, work.resolve("job"));
        whole = Files.createDirectories(work.resolve("whole"));
        copyRecordings(seeds, whole);
        Files.copy(seeds.resolve("job/runs.json"), whole.resolve("job.json"), StandardCopyOption.REPLACE_EXISTING);
        wholeAnswer = said("trend", whole.toString(), "--json").text();
        require(wholeAnswer.contains("before"), "no trend of the whole job: " + wholeAnswer);
        kept = filesOf(whole.resolve("cache"));
        for (Door door : Door.values()) {
            List<byte[]> all = new ArrayList<>();
            for (Path file :
                    door == Door.KEPT ? kept : filesOf(seeds.resolve(door.name().toLowerCase(Locale.ROOT)))) {
                all.add(Files.readAllBytes(file));
            }
            corpus.put(door, all);
            counts.put(door, 0L);
        }
    }

    private static void copyRecordings(Path seeds, Path job) throws IOException {
        Path folder = Files.createDirectories(job.resolve("recordings"));
        for (Path file : filesOf(seeds.resolve("job-files/recordings"))) {
            Files.copy(file, folder.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static List<Path> filesOf(Path folder) throws IOException {
        try (var files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }

    /** What was found. */
    public List<Find> finds() {
        return List.copyOf(finds);
    }

    /** Cases by what was fed, and how the corpus grew. */
    public String figures() {
        return counts + ", corpus grown by " + grown + ", finds " + finds.size();
    }

    /** Runs for so much processor time of this thread and of decoders. */
    public void run(double seconds) throws IOException {
        long end = System.nanoTime() + (long) (seconds * 1e9);
        while (System.nanoTime() < end) {
            Door door = Door.at(chance.nextInt(100));
            List<byte[]> all = corpus.get(door);
            byte[] changed = mutator.of(all.get(chance.nextInt(all.size())), all.get(chance.nextInt(all.size())));
            counts.merge(door, 1L, Long::sum);
            one(door, changed);
        }
    }

    private void one(Door door, byte[] input) throws IOException {
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        String answer;
        try {
            answer = switch (door) {
                case RECORDING -> recording(input);
                case INSTALLATION -> installation(input);
                case JOB -> job(input);
                case KEPT -> kept(input);
                case WORDS -> words(input);
            };
        } catch (BadInput e) {
            answer = "refused " + e.getMessage().replaceAll("^.*?: ", "").replaceAll("[0-9]+|\"[^\"]*\"|'[^']*'", "#");
        } catch (Throwable e) {
            found(door, input, e);
            return;
        }
        long spent = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before;
        if (spent > MOST_CPU_NANOS) {
            found(door, input, new IllegalStateException("took " + spent / 1_000_000_000 + " s"));
        }
        if (answers.add(door + answer) && corpus.get(door).size() < MOST_IN_CORPUS && input.length < 200_000) {
            corpus.get(door).add(input);
            grown++;
        }
    }

    private String recording(byte[] input) throws IOException {
        Path file = Files.write(work.resolve("input"), input);
        Intake intake = RecordingReader.open(file, IntakeOptions.NONE);
        if (intake instanceof Intake.Whole whole) {
            var recording = whole.recording();
            require(Double.isFinite(recording.time().rateHz()), "rate");
            recording
                    .quality()
                    .forEach(q -> require(
                            Double.isFinite(q.mean()) && Double.isFinite(q.peak()) && Double.isFinite(q.clippedShare()),
                            "quality of a table"));
            return "table "
                    + recording.warnings().stream()
                            .map(w -> w.code().word())
                            .sorted()
                            .toList();
        }
        var sound = ((Intake.Streamed) intake).sound();
        StreamSummary summary = sound.deliverTo((samples, frames) -> {
            int count = frames * sound.header().channels().size();
            for (int i = 0; i < count; i++) {
                require(Float.isFinite(samples[i]), "sample");
            }
        });
        summary.quality()
                .forEach(q -> require(
                        Double.isFinite(q.mean()) && Double.isFinite(q.peak()) && Double.isFinite(q.clippedShare()),
                        "quality"));
        return sound.header().kind()
                + summary.warnings().stream().map(w -> w.code().word()).sorted().toList();
    }

    private String installation(byte[] input) throws IOException {
        Path file = Files.write(work.resolve("installation.json"), input);
        InstallationFile.read(file);
        return chance.nextInt(CASES_TO_A_PLAN) == 0
                ? program("plan", "--installation", file.toString(), "--json")
                : "read";
    }

    private String job(byte[] input) throws IOException {
        Path folder = Files.createDirectories(work.resolve("job"));
        Files.write(folder.resolve("job.json"), input);
        JobFolder job = JobFolder.open(folder);
        job.check(EvidenceCheck.Thoroughness.QUICK);
        String dir = folder.toString();
        jobs++;
        if (jobs % CASES_TO_A_SWEEP == 0) {
            sweep(folder.resolve("cache"));
        }
        String answer = program("job", "show", dir, "--json");
        if (jobs % CASES_TO_A_QUESTION == 0) {
            answer += program("job", "show", dir)
                    + program("tracking", dir, "--json")
                    + program("trend", dir, "--json")
                    + program("compare", dir, "e1", "e3", "--json")
                    + program("findings", dir, "--json")
                    + program("balance", dir, "--json")
                    + program("job", "next", dir);
        }
        return jobs % CASES_TO_A_REPORT == 0 ? answer + program("report", dir) : answer;
    }

    /** One kept result is put in the place of one that the program wrote; the trend must come out as it was. */
    private String kept(byte[] input) throws IOException {
        Path one = kept.get(chance.nextInt(kept.size()));
        byte[] own = Files.readAllBytes(one);
        Files.write(one, input);
        Said said = said("trend", whole.toString(), "--json");
        Files.write(one, own);
        require(said.text().equals(wholeAnswer), "another trend from a changed kept result: " + said.text());
        return "same";
    }

    private static void sweep(Path folder) throws IOException {
        if (Files.isDirectory(folder)) {
            for (Path file : filesOf(folder)) {
                Files.deleteIfExists(file);
            }
        }
    }

    /** Words stand in a file, one in a line. */
    private String words(byte[] input) {
        String[] words =
                new String(input, StandardCharsets.UTF_8).lines().limit(30).toArray(String[]::new);
        // What writes, waits or plays isn't fed, and no path leads out.
        for (int i = 0; i < words.length; i++) {
            boolean does = List.of("record", "listen", "devices", "practice", "add", "new", "attach")
                    .contains(words[i]);
            words[i] = does ? "show" : words[i].replace("/", "").replace("..", "");
        }
        return words.length == 0 ? "" : program(words);
    }

    private record Said(int status, String text) {}

    private static Said said(String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Program.run(
                words,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Said(status, out.toString(StandardCharsets.UTF_8) + err.toString(StandardCharsets.UTF_8));
    }

    private static String program(String... words) {
        Said answer = said(words);
        int status = answer.status();
        String said = answer.text();
        require(status >= 0 && status <= 2, said);
        boolean quoted = Arrays.stream(words).anyMatch(word -> word.contains("NaN") || word.contains("Infinity"));
        require(!said.contains("\u001b"), "a control character got through");
        if (!quoted && words.length > 1 && words[words.length - 1].equals("--json") && status == 0) {
            require(!said.contains(": NaN") && !said.contains("Infinity,"), "no number in JSON");
        }
        return words[0]
                + status
                + (status == 0
                        ? ""
                        : said.replaceAll("[0-9]+|\"[^\"]*\"|'[^']*'", "#")
                                .lines()
                                .findFirst()
                                .orElse(""));
    }

    private static void require(boolean holds, String what) {
        if (!holds) {
            throw new IllegalStateException(what);
        }
    }

    private void found(Door door, byte[] input, Throwable e) throws IOException {
        StringBuilder trace = new StringBuilder(e.getClass().getSimpleName());
        String message = String.valueOf(e.getMessage());
        trace.append(' ').append(message, 0, Math.min(900, message.length()));
        Arrays.stream(e.getStackTrace()).limit(6).forEach(at -> trace.append("\n   ")
                .append(at));
        String key = trace.toString()
                .replaceAll("[0-9]+", "#")
                .lines()
                .filter(l -> l.contains("at ") || l.contains("("))
                .limit(3)
                .toList()
                .toString();
        if (!traces.add(key)) {
            return;
        }
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(input);
            Path kept = Files.write(
                    work.resolve("find-" + door + "-" + HexFormat.of().formatHex(hash, 0, 6)), input);
            finds.add(new Find(trace.toString(), kept));
        } catch (java.security.NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** See the class. */
    public static void main(String[] words) throws IOException {
        System.setOut(new PrintStream(java.io.OutputStream.nullOutputStream()));
        Fuzz fuzz = new Fuzz(Path.of(words[0]), Path.of(words[1]), Long.parseLong(words[2]));
        fuzz.run(Double.parseDouble(words[3]));
        PrintStream out =
                new PrintStream(new java.io.FileOutputStream(java.io.FileDescriptor.out), true, StandardCharsets.UTF_8);
        out.println(fuzz.figures());
        fuzz.finds().forEach(find -> out.println(find.file() + "\n" + find.trace()));
    }
}
