package evenblade.keep.job;

import evenblade.base.problem.Warning;
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

    /** Files that a record names, struck out or not. */
    static List<StoredFile> filesOf(JobRecord record) {
        List<StoredFile> files = new ArrayList<>();
        for (Event event : record.events()) {
            if (event.detail() instanceof Detail.Run run) {
                files.add(run.file());
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
            return look(event, "recording", run.file(), thoroughness);
        }
        if (event.detail() instanceof Detail.Attachment attachment) {
            return look(event, "attachment", attachment.file(), thoroughness);
        }
        return Optional.empty();
    }

    private Optional<Warning> look(Event event, String what, StoredFile file, Thoroughness thoroughness) {
        Path path = folder.resolve(file.path());
        String named = event.id() + event.label().map(l -> " '" + l + "'").orElse("") + ": '" + file.path() + "'";
        if (!Files.isRegularFile(path)) {
            return Optional.of(
                    new Warning(what + "-missing", named + " is missing; it came from '" + file.originalName() + "'"));
        }
        try {
            long bytes = Files.size(path);
            if (bytes != file.stamp().bytes()) {
                return Optional.of(new Warning(
                        what + "-changed",
                        named + " was changed since it was added: " + bytes + " bytes, were "
                                + file.stamp().bytes()));
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
                    : Optional.of(new Warning(
                            what + "-changed",
                            named + " was changed since it was added: SHA-256 " + sha256.substring(0, 12) + "…, was "
                                    + file.stamp().sha256().substring(0, 12) + "…"));
        } catch (IOException e) {
            return Optional.of(new Warning(what + "-unreadable", named + " can't be read: " + e.getMessage()));
        }
    }

    private void lookForStrangers(JobRecord record, List<Warning> warnings) {
        Set<String> named = filesOf(record).stream().map(StoredFile::path).collect(Collectors.toSet());
        try {
            for (String below : List.of(StoredFiles.RECORDINGS, StoredFiles.ATTACHMENTS)) {
                for (Path f : disk.list(folder.resolve(below))) {
                    String path = below + "/" + f.getFileName();
                    if (Unfinished.abandoned(f)) {
                        warnings.add(new Warning(
                                "unfinished-copy",
                                "'" + path + "' was left by a crash; the next entry clears it away"));
                    } else if (!Unfinished.isOne(f) && !named.contains(path)) {
                        warnings.add(new Warning(
                                "file-not-in-record",
                                "'" + path
                                        + "' lies there but no entry names it: put there by hand or left by a crash"));
                    }
                }
            }
        } catch (IOException e) {
            throw DiskTrouble.reading(folder, e);
        }
    }
}
