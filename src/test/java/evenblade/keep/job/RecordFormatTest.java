package evenblade.keep.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.problem.BadInput;
import evenblade.base.units.SignalUnit;
import evenblade.base.units.ValueScale;
import evenblade.input.recording.TableReading;
import evenblade.input.recording.TableReading.ColumnReading;
import evenblade.input.recording.TableReading.DecimalSign;
import evenblade.input.recording.TableReading.Separator;
import evenblade.input.recording.TableReading.TimeUnit;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.PitchReadings;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail.StoredFile;
import evenblade.machine.installation.HubCounting;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RecordFormatTest {
    private static final OffsetDateTime NOW = OffsetDateTime.parse("2031-05-04T10:30:00.250+02:00");

    @TempDir(factory = MemoryFolder.class)
    Path dir;

    private final RecordFormat format = RecordFormat.current();

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyRecordIsReadAsItWasWritten(long seed) throws IOException {
        Random random = new Random(seed);
        JobRecord record = InventedJobs.NEW_JOB.record();
        for (int i = 0; i < 40; i++) {
            record = record.with(List.of(anyEntry(random)), NOW);
        }

        RecordFormat.Reading reading = format.read(Files.write(dir.resolve("job.json"), format.write(record, false)));

        assertThat(reading).isEqualTo(new RecordFormat.Reading(RecordFormat.VERSION, record, false));
        assertThat(format.write(reading.record(), false)).isEqualTo(format.write(record, false));
    }

    private static Entry anyEntry(Random random) {
        Entry entry = Entry.of(anyDetail(random), anyText(random));
        if (random.nextBoolean()) {
            entry = entry.labelled(anyText(random));
        }
        return random.nextBoolean() ? entry : entry.at(NOW.plusSeconds(random.nextInt()));
    }

    private static Detail anyDetail(Random random) {
        return switch (random.nextInt(9)) {
            case 0 -> new Detail.Run(anyFile("recordings/a.wav", random), anySettings(random), anyConditions(random));
            case 1 -> new Detail.Correction();
            case 2 -> new Detail.Note();
            case 3 ->
                new Detail.Balance(
                        random.nextBoolean()
                                ? Optional.of(new HubWeight("1/4 oz", "60 mm", "120 deg"))
                                : Optional.empty(),
                        maybe(anyText(random), random),
                        random.nextBoolean() ? Optional.of(HubCounting.AGAINST_ROTATION) : Optional.empty());
            case 4 ->
                new Detail.Attachment(
                        anyFile("attachments/b.jpg", random),
                        FileNature.values()[random.nextInt(FileNature.values().length)]);
            case 5 -> new Detail.StruckOut("e1");
            case 6 ->
                new Detail.Tracking(
                        Layout.of("A", anyText(random), "C"),
                        "0 in, -1/16 in, 3 1/32 in; 0 in, 0 in, 3 in",
                        maybe("1/64 in", random));
            case 7 ->
                new Detail.Pitch(
                        Layout.of("C", "A", "B"),
                        "17.4 deg, 17.2 deg, -1e-3 deg",
                        maybe("-0.3 deg", random),
                        PitchReadings.Reference.values()[random.nextInt(2)],
                        maybe("0.6 m", random),
                        maybe("6 arcmin", random));
            default -> new Detail.RunOut("0.05 mm", "2 in", maybe("120 deg", random));
        };
    }

    private static RunSettings anySettings(Random random) {
        RunSettings settings = RunSettings.NONE;
        if (random.nextBoolean()) {
            double rpm = random.nextDouble() * 6000;
            settings = random.nextBoolean() ? settings.withEngineRpm(rpm) : settings.withPropellerRpm(rpm);
        }
        if (random.nextBoolean()) {
            settings = settings.withMarkChannel(anyText(random)).withFullScale("50 m/s2");
        }
        return random.nextBoolean() ? settings.withTable(anyTable(random)) : settings;
    }

    private static TableReading anyTable(Random random) {
        ValueScale scale = new ValueScale(random.nextDouble() * 1e-3 + 1e-9, SignalUnit.STANDARD_GRAVITY);
        return new TableReading(
                Optional.of(Separator.values()[random.nextInt(5)]),
                random.nextBoolean() ? Optional.of(DecimalSign.COMMA) : Optional.empty(),
                maybe(anyText(random), random),
                random.nextBoolean() ? Optional.of(TimeUnit.values()[random.nextInt(4)]) : Optional.empty(),
                List.of(
                        new ColumnReading("2", maybe(anyText(random), random), Optional.of(scale)),
                        new ColumnReading(anyText(random), Optional.empty(), Optional.empty())));
    }

    private static Conditions anyConditions(Random random) {
        Conditions conditions = Conditions.NONE;
        for (Condition condition : Condition.values()) {
            conditions = random.nextBoolean() ? conditions : conditions.with(condition, anyText(random));
        }
        return conditions;
    }

    private static StoredFile anyFile(String path, Random random) {
        return new StoredFile(
                path,
                anyText(random),
                new FileStamp(
                        "ab".repeat(32), random.nextInt(1 << 30) * 4L, Instant.ofEpochMilli(random.nextInt(1 << 30))));
    }

    /** Any characters a user may enter: quotes, line ends, control characters, outside the basic plane. */
    private static String anyText(Random random) {
        StringBuilder text = new StringBuilder("x");
        for (int i = random.nextInt(20); i > 0; i--) {
            int any = random.nextInt(random.nextBoolean() ? 0x80 : 0x1F000);
            text.appendCodePoint(any >= Character.MIN_SURROGATE && any <= Character.MAX_SURROGATE ? '"' : any);
        }
        return text.toString();
    }

    private static Optional<String> maybe(String text, Random random) {
        return random.nextBoolean() ? Optional.of(text) : Optional.empty();
    }

    private Path damaged(String find, String replace) throws IOException {
        JobRecord record = InventedJobs.NEW_JOB
                .record()
                .with(
                        List.of(
                                Entry.note("first"),
                                Entry.of(
                                        new Detail.Run(
                                                anyFile("recordings/a.wav", new Random(1)),
                                                RunSettings.NONE,
                                                Conditions.NONE),
                                        "run")),
                        NOW);
        String text = new String(format.write(record, false), StandardCharsets.UTF_8);
        assertThat(text).contains(find);
        return Files.writeString(dir.resolve("job.json"), text.replace(find, replace));
    }

    private static long lineOf(Path file, String word) throws IOException {
        List<String> lines = Files.readAllLines(file);
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).contains(word)) {
                return i + 1;
            }
        }
        throw new AssertionError("no line with " + word);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"note\"       | \"nothing\"          | nothing    | kind\" is the text \"nothing\"",
                "\"text\" : \"run\" | \"txet\" : \"run\"   | txet       | unknown key \"txet\"",
                "\"e2\"         | \"zwei\"             | zwei       | id\" is the text \"zwei\"",
                "\"e2\"         | \"e1\"               | \"run\"    | an id that no other entry has",
                "\"2031-05-04T10:30:00+02:00\" | \"yesterday\" | yesterday | a time with its offset",
                "recordings/a.wav | ../../a.wav        | ../../a.wav | a file in 'recordings' or 'attachments'",
                "abab           | ABAB                 | ABAB       | 64 hexadecimal digits",
                "\"cylinders\" : 4 | \"cylinders\" : -4 | cylinders | cylinders"
            })
    void damageIsNamedWithItsLine(String find, String replace, String lineWith, String complaint) throws IOException {
        Path file = damaged(find, replace);

        assertThatThrownBy(() -> format.read(file))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining(complaint)
                .message()
                .matches(message -> {
                    String place = message.substring(0, message.indexOf(": "));
                    return place.startsWith(file + ":");
                });
        if (!lineWith.equals("\"run\"")) {
            long line = lineOf(file, lineWith);
            assertThatThrownBy(() -> format.read(file)).hasMessageStartingWith(file + ":" + line + ": ");
        }
    }

    @Test
    void aRecordCutOffIsNamedWithItsLineAndLeftAlone() throws IOException {
        JobFolder job = InventedJobs.in(dir.resolve("job"));
        job.append(Entry.note("first"));
        Path file = job.path().resolve("job.json");
        String text = Files.readString(file);
        String cut = text.substring(0, text.length() - 40);
        Files.writeString(file, cut);

        assertThatThrownBy(() -> job.append(Entry.note("second")))
                .isInstanceOf(BadInput.class)
                .message()
                .startsWith(file + ":" + cut.lines().count() + ": not JSON");
        assertThat(file).hasContent(cut);
    }

    @Test
    void aRecordOfANewerProgramIsRefusedAndLeftAlone() throws IOException {
        JobFolder job = InventedJobs.in(dir.resolve("job"));
        Path file = job.path().resolve("job.json");
        String newer = Files.readString(file).replace("\"version\" : 3", "\"version\" : 4, \"weather\": {}");
        Files.writeString(file, newer);

        assertThatThrownBy(() -> job.append(Entry.note("x")))
                .isInstanceOf(BadInput.class)
                .hasMessage(file + ":3: a record of version 4, written by a newer Evenblade, "
                        + "expected version 3 or older; use the newer program, nothing was changed");
        assertThat(file).hasContent(newer);
    }

    @Test
    void anotherProgramsJobJsonIsNotTakenForARecord() throws IOException {
        Path file = Files.writeString(dir.resolve("job.json"), "{ \"jobs\": [] }");

        assertThatThrownBy(() -> format.read(file)).hasMessageContaining("no key \"format\"");
    }

    @Test
    void aRecordOfVersionOneIsReadAsItWasWritten() throws IOException {
        JobFolder made = InventedJobs.in(dir.resolve("job"));
        made.append(Entry.note("old entry"));
        Path file = made.path().resolve("job.json");
        String old = Files.readString(file).replace("\"version\" : 3", "\"version\" : 1");
        Files.writeString(file, old);

        JobFolder job = JobFolder.open(made.path());
        job.append(Entry.note("new entry"));

        assertThat(made.path().resolve("job.json.version-1")).hasContent(old);
        assertThat(JobFolder.open(made.path()).record().events())
                .extracting(Event::text)
                .containsExactlyInAnyOrder("old entry", "new entry");
    }

    /** A version 0 that only this test knows: names under another key, nothing said of invention. */
    private static final Migration FROM_ZERO = older -> {
        Map<String, Object> next = new LinkedHashMap<>(older);
        next.put("version", 1);
        next.put("name", next.remove("title"));
        next.put("invented", false);
        return next;
    };

    @Test
    void anOlderRecordIsReadAsItIsAndKeptBesideTheFirstNewOne() throws IOException {
        JobFolder made = InventedJobs.in(dir.resolve("job"));
        made.append(Entry.note("old entry"));
        Path file = made.path().resolve("job.json");
        String old = Files.readString(file)
                .replace("\"version\" : 3", "\"version\" : 0")
                .replace("\"name\" : \"Invented job\"", "\"title\" : \"Old job\"")
                .replace("  \"invented\" : true,\n", "");
        Files.writeString(file, old);
        JobFolder job = new JobFolder(
                made.path(),
                InventedJobs.CLOCK,
                new RealDisk(),
                new RecordFormat(Map.of(0, FROM_ZERO, 1, one -> one, 2, two -> two)));

        assertThat(job.record().name()).isEqualTo("Old job");
        assertThat(file).as("reading changes nothing").hasContent(old);

        job.append(Entry.note("new entry"));

        assertThat(made.path().resolve("job.json.version-0")).hasContent(old);
        JobRecord now = JobFolder.open(made.path()).record();
        assertThat(now.name()).isEqualTo("Old job");
        assertThat(now.events()).extracting(Event::text).containsExactly("old entry", "new entry");

        job.append(Entry.note("one more"));
        assertThat(made.path().resolve("job.json.version-0")).hasContent(old);
    }

    @Test
    void anOlderRecordThatNoStepLeadsFromIsRefused() throws IOException {
        Path file = damaged("\"version\" : 3", "\"version\" : 0");

        assertThatThrownBy(() -> format.read(file)).hasMessageContaining("\"version\" is the number 0");
    }
}
