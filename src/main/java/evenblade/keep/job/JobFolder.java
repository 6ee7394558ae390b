package evenblade.keep.job;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.keep.job.Detail.StoredFile;
import evenblade.keep.job.Detail.Told;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A job on disk: the record with its recordings, photos and papers.
 *
 * <p>Every change is complete on the disk when the method returns. A crash, a full disk or another
 * program at the same time leaves either the old record or the new one. All methods throw {@link
 * BadInput} where the folder, an entry or the disk is at fault; the record is then as it was.
 */
public final class JobFolder {
    /** Where recordings grow, and stay when something broke them off. */
    public static final String TAKES = "takes";

    /** How long another program may hold the record: writing takes it well below a second, a slow stick some; ours. */
    private static final Duration PATIENCE = Duration.ofSeconds(15);

    private final Path folder;
    private final Clock clock;
    private final Disk disk;
    private final RecordFile file;
    private final StoredFiles stored;

    JobFolder(Path folder, Clock clock, Disk disk, RecordFormat format) {
        this.folder = folder;
        this.clock = clock;
        this.disk = disk;
        this.file = new RecordFile(folder, disk, format);
        this.stored = new StoredFiles(folder, disk);
    }

    /** Makes a job in a folder that is empty or not there yet. */
    public static JobFolder create(Path folder, NewJob job) {
        return create(folder, job, Clock.systemDefaultZone());
    }

    /** Makes a job whose entries are dated by a given clock. */
    public static JobFolder create(Path folder, NewJob job, Clock clock) {
        JobFolder made = new JobFolder(folder, clock, new RealDisk(), RecordFormat.current());
        made.begin(job);
        return made;
    }

    /** Opens a job and reads its record once, so that a damaged one is told at once. */
    public static JobFolder open(Path folder) {
        return open(folder, Clock.systemDefaultZone());
    }

    /** Opens a job whose new entries are dated by a given clock. */
    public static JobFolder open(Path folder, Clock clock) {
        JobFolder opened = new JobFolder(folder, clock, new RealDisk(), RecordFormat.current());
        opened.record();
        return opened;
    }

    /** Whether a folder holds a job record, readable or not. */
    public static boolean isJob(Path folder) {
        return Files.exists(folder.resolve(RecordFile.FILE_NAME));
    }

    public Path path() {
        return folder;
    }

    /** What the record says now. */
    public JobRecord record() {
        return file.read().record();
    }

    /**
     * Where a stored file lies; it may be missing.
     *
     * @throws BadInput where it isn't a plain file inside this folder
     */
    public Path locate(StoredFile storedFile) {
        return InsideFolder.file(folder, storedFile.path());
    }

    /** Whether a stored file still has every byte that was added; reads it whole. */
    public boolean unchanged(StoredFile storedFile) {
        try {
            return RealDisk.stamp(locate(storedFile))
                    .sha256()
                    .equals(storedFile.stamp().sha256());
        } catch (IOException e) {
            return false;
        }
    }

    /** Results computed from the raw files, which may be deleted at any time. */
    public ResultCache cache() {
        return new ResultCache(folder, MachineKey.ofThisUser());
    }

    /** Looks at the stored files; see {@link EvidenceCheck}. */
    public List<Warning> check(EvidenceCheck.Thoroughness thoroughness) {
        RecordFormat.Reading reading = file.read();
        List<Warning> warnings = new ArrayList<>(new EvidenceCheck(folder, disk).of(reading.record(), thoroughness));
        if (reading.changedByHand()) {
            warnings.add(Warning.of(
                    WarningCode.RECORD_CHANGED_BY_HAND,
                    new Subject.StoredFile(RecordFile.FILE_NAME),
                    new Quoted(RecordFile.FILE_NAME)));
        }
        warnings.addAll(clockBehind(reading.record()));
        return List.copyOf(warnings);
    }

    /** Tells of entries that were made while the computer's clock stood behind an earlier one. */
    public List<Warning> clockBehind() {
        return clockBehind(record());
    }

    private static List<Warning> clockBehind(JobRecord record) {
        return record.enteredWithClockBehind().stream()
                .map(behind -> Warning.of(
                        WarningCode.CLOCK_BEHIND_ENTRIES, new Subject.Entry(behind.id()), new Quoted(behind.id())))
                .toList();
    }

    /** Writes one entry that needs no file. */
    public Event append(Entry entry) {
        return appendAll(List.of(entry)).get(0);
    }

    /** Writes several entries in one step: all or none. */
    public List<Event> appendAll(List<Entry> entries) {
        return change(record -> entries);
    }

    /**
     * Strikes out an entry: it stays in the record and no longer counts. Striking out a strike puts the
     * entry back.
     *
     * @param id of the entry
     * @param why in the user's words; may be empty
     */
    public Event strike(String id, String why) {
        return change(record -> List.of(Entry.of(new Detail.StruckOut(id), why)))
                .get(0);
    }

    /** Copies a recording in and writes the run. */
    public Event addRecording(Path recording, NewRun run) {
        return addTake(recording, Optional.empty(), run, List.of());
    }

    /**
     * Adds a take that was recorded here.
     *
     * @param arrivals when each of its lines came in, where it consists of lines
     * @param told what was told while it was recorded
     */
    public Event addTake(Path recording, Optional<Path> arrivals, NewRun run, List<Told> told) {
        List<StoredFiles.Incoming> incoming = new ArrayList<>();
        incoming.add(stored.copyIn(recording, StoredFiles.RECORDINGS));
        try {
            arrivals.ifPresent(file -> incoming.add(stored.copyIn(file, StoredFiles.RECORDINGS)));
        } catch (BadInput e) {
            stored.discard(incoming.get(0).copy());
            throw e;
        }
        return bringIn(
                        incoming,
                        files -> List.of(run.entry(
                                files.get(0), files.size() > 1 ? Optional.of(files.get(1)) : Optional.empty(), told)))
                .get(0);
    }

    /**
     * Copies photos and papers in and writes one entry for each, all or none.
     *
     * @param files each must be what its name says
     * @param text a remark to all of them; may be empty
     * @param at when they were made; now, where empty
     */
    public List<Event> attach(List<Path> files, String text, Optional<OffsetDateTime> at) {
        List<FileNature> natures = files.stream().map(AttachedFiles::natureOf).toList();
        List<StoredFiles.Incoming> incoming = new ArrayList<>();
        try {
            files.forEach(f -> incoming.add(stored.copyIn(f, StoredFiles.ATTACHMENTS)));
        } catch (BadInput e) {
            incoming.forEach(i -> stored.discard(i.copy()));
            throw e;
        }
        return bringIn(incoming, settled -> {
            List<Entry> entries = new ArrayList<>();
            for (int i = 0; i < settled.size(); i++) {
                Detail detail = new Detail.Attachment(settled.get(i), natures.get(i));
                entries.add(new Entry(at, Optional.empty(), text, detail));
            }
            return entries;
        });
    }

    /** Makes entries once the files they speak of have their final names. */
    private interface EntriesOf {
        List<Entry> from(List<StoredFile> files);
    }

    /** Makes entries under the lock, knowing what the record says. */
    private interface Change {
        List<Entry> entries(JobRecord now) throws IOException;
    }

    private List<Event> bringIn(List<StoredFiles.Incoming> incoming, EntriesOf entries) {
        List<Path> created = new ArrayList<>();
        try {
            return change(record -> {
                EntryRules.refuseRepeated(record, incoming);
                List<StoredFile> files = new ArrayList<>();
                for (StoredFiles.Incoming one : incoming) {
                    StoredFiles.Settled settled = stored.settle(one);
                    settled.created().ifPresent(created::add);
                    files.add(settled.file());
                }
                return entries.from(files);
            });
        } catch (BadInput e) {
            incoming.forEach(i -> stored.discard(i.copy()));
            discardUnnamed(created);
            throw e;
        }
    }

    /** Takes away files that got their final name for a record that was not written. */
    private void discardUnnamed(List<Path> created) {
        if (created.isEmpty()) {
            return;
        }
        List<String> named =
                EvidenceCheck.filesOf(record()).stream().map(StoredFile::path).toList();
        created.stream()
                .filter(f -> named.stream().noneMatch(path -> path.endsWith("/" + f.getFileName())))
                .forEach(stored::discard);
    }

    private List<Event> change(Change change) {
        file.read();
        try {
            return FolderLock.holding(folder, PATIENCE, () -> {
                clearLeftovers();
                RecordFormat.Reading old = file.read();
                List<Entry> entries = change.entries(old.record());
                entries.forEach(entry -> EntryRules.check(entry, old.record()));
                JobRecord next = old.record().with(entries, OffsetDateTime.now(clock));
                file.replace(old, next);
                return next.lastEntered(entries.size());
            });
        } catch (IOException e) {
            throw DiskTrouble.writing(folder, e);
        }
    }

    void begin(NewJob job) {
        try {
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                throw BadInput.in(folder).found("a file", "a folder that is empty or not there yet");
            }
            requireEmpty();
            disk.makeFolder(folder);
            FolderLock.holding(folder, PATIENCE, () -> {
                requireEmpty();
                clearLeftovers();
                file.create(job.record());
                disk.syncFolder(folder.toRealPath().getParent());
                return folder;
            });
        } catch (IOException e) {
            throw DiskTrouble.writing(folder, e);
        }
    }

    private void requireEmpty() throws IOException {
        if (isJob(folder)) {
            throw BadInput.in(folder).found("a job is here already", "a folder that is empty or not there yet");
        }
        for (Path f : disk.list(folder)) {
            if (!Unfinished.isOne(f) && !f.getFileName().toString().equals(FolderLock.FILE_NAME)) {
                throw BadInput.in(folder)
                        .found(
                                "a folder with '" + f.getFileName() + "' in it",
                                "a folder that is empty or not there yet");
            }
        }
    }

    private void clearLeftovers() throws IOException {
        for (Path f : disk.list(folder)) {
            // Only the holder of the lock writes here, so whatever is unfinished was left by a crash.
            if (Unfinished.isOne(f)) {
                disk.delete(f);
            }
        }
        for (String below : List.of(StoredFiles.RECORDINGS, StoredFiles.ATTACHMENTS, ResultCache.FOLDER)) {
            if (!InsideFolder.holds(folder, folder.resolve(below))) {
                continue;
            }
            for (Path f : disk.list(folder.resolve(below))) {
                if (Unfinished.abandoned(f)) {
                    disk.delete(f);
                }
            }
        }
    }
}
