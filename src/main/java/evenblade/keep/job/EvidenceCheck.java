package evenblade.keep.job;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.keep.job.Detail.StoredFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Whether the stored files still are what they were when they were added. */
public final class EvidenceCheck {
    /** File systems keep a file's time to two seconds or better. */
    private static final Duration TIME_GRAIN = Duration.ofSeconds(2);

    private final Path folder;
    private final Disk disk;

    EvidenceCheck(Path folder, Disk disk) {
        this.folder = folder;
        this.disk = disk;
    }

    /** How closely to look. */
    public enum Thoroughness {
        /** Size and time; a file whose time differs is read. */
        QUICK,
        /** Every file is read. */
        EVERY_BYTE
    }

    /** What is said of a file, by what it is. */
    private record Codes(WarningCode missing, WarningCode changed, WarningCode unreadable) {
        static final Codes RECORDING = new Codes(
                WarningCode.RECORDING_MISSING, WarningCode.RECORDING_CHANGED, WarningCode.RECORDING_UNREADABLE);
        static final Codes ATTACHMENT = new Codes(
                WarningCode.ATTACHMENT_MISSING, WarningCode.ATTACHMENT_CHANGED, WarningCode.ATTACHMENT_UNREADABLE);
    }

    /** Files that a record names, struck out or not. */
    static List<StoredFile> filesOf(JobRecord record) {
        List<StoredFile> files = new ArrayList<>();
        for (Event event : record.events()) {
            if (event.detail() instanceof Detail.Run run) {
                files.add(run.file());
                run.arrivals().ifPresent(files::add);
            } else if (event.detail() instanceof Detail.Attachment attachment) {
                files.add(attachment.file());
            }
        }
        return files;
    }

    List<Warning> of(JobRecord record, Thoroughness thoroughness) {
        Set<String> struck = record.struckOut();
        List<Warning> warnings = new ArrayList<>(record.events().parallelStream()
                .filter(event -> !struck.contains(event.id()))
                .flatMap(event -> look(event, thoroughness).stream())
                .toList());
        lookForStrangers(record, warnings);
        return List.copyOf(warnings);
    }

    private Optional<Warning> look(Event event, Thoroughness thoroughness) {
        if (event.detail() instanceof Detail.Run run) {
            return look(event, Codes.RECORDING, run.file(), thoroughness);
        }
        if (event.detail() instanceof Detail.Attachment attachment) {
            return look(event, Codes.ATTACHMENT, attachment.file(), thoroughness);
        }
        return Optional.empty();
    }

    private Optional<Warning> look(Event event, Codes codes, StoredFile file, Thoroughness thoroughness) {
        Fact entry = event.label()
                .map(label -> Fact.of(JobFact.LABELLED_ENTRY, new Quoted(event.id()), new Quoted(label)))
                .orElseGet(() -> Fact.of(JobFact.ENTRY, new Quoted(event.id())));
        Quoted stored = new Quoted(file.path());
        Subject subject = new Subject.StoredFile(file.path());
        Path path;
        try {
            path = InsideFolder.file(folder, file.path());
        } catch (BadInput e) {
            return Optional.of(Warning.of(codes.unreadable(), subject, entry, stored, new Quoted(e.getMessage())));
        }
        if (!Files.isRegularFile(path)) {
            return Optional.of(Warning.of(codes.missing(), subject, entry, stored, new Quoted(file.originalName())));
        }
        try {
            long bytes = Files.size(path);
            if (bytes != file.stamp().bytes()) {
                return Optional.of(changed(
                        codes,
                        file,
                        entry,
                        Fact.of(
                                JobFact.BYTES_DIFFER,
                                new Count(bytes),
                                new Count(file.stamp().bytes()))));
            }
            Duration moved = Duration.between(
                            file.stamp().modified(),
                            Files.getLastModifiedTime(path).toInstant())
                    .abs();
            if (thoroughness == Thoroughness.QUICK && moved.compareTo(TIME_GRAIN) <= 0) {
                return Optional.empty();
            }
            String sha256 = RealDisk.stamp(path).sha256();
            return sha256.equals(file.stamp().sha256())
                    ? Optional.empty()
                    : Optional.of(changed(
                            codes,
                            file,
                            entry,
                            Fact.of(
                                    JobFact.HASH_DIFFERS,
                                    new Quoted(sha256.substring(0, 12)),
                                    new Quoted(file.stamp().sha256().substring(0, 12)))));
        } catch (IOException e) {
            return Optional.of(
                    Warning.of(codes.unreadable(), subject, entry, stored, new Quoted(String.valueOf(e.getMessage()))));
        }
    }

    private static Warning changed(Codes codes, StoredFile file, Fact entry, Fact how) {
        Fact changed = Fact.of(JobFact.CHANGED, entry, new Quoted(file.path()), how);
        return Warning.of(codes.changed(), new Subject.StoredFile(file.path()), changed);
    }

    private void lookForStrangers(JobRecord record, List<Warning> warnings) {
        Set<String> named = filesOf(record).stream().map(StoredFile::path).collect(Collectors.toSet());
        try {
            for (String below : List.of(StoredFiles.RECORDINGS, StoredFiles.ATTACHMENTS)) {
                for (Path f : disk.list(folder.resolve(below))) {
                    String path = below + "/" + f.getFileName();
                    if (Unfinished.abandoned(f)) {
                        warnings.add(Warning.of(
                                WarningCode.UNFINISHED_COPY, new Subject.StoredFile(path), new Quoted(path)));
                    } else if (!Unfinished.isOne(f) && !named.contains(path)) {
                        warnings.add(Warning.of(
                                WarningCode.FILE_NOT_IN_RECORD, new Subject.StoredFile(path), new Quoted(path)));
                    }
                }
            }
        } catch (IOException e) {
            throw DiskTrouble.reading(folder, e);
        }
    }

    /** What is said of entries and files of a job, beside warnings. */
    public enum JobFact implements Code {
        ENTRY,
        LABELLED_ENTRY,
        CHANGED,
        BYTES_DIFFER,
        HASH_DIFFERS
    }
}
