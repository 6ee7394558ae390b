package evenblade.keep.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A program of its own that writes into a job and says on standard output what was confirmed, one
 * entry a line: {@code e12 text}. Every fourth entry is a run with a recording.
 */
final class EntryWriter {
    private EntryWriter() {}

    /** Folder of the job, word to mark the entries with, number of entries, folder for raw files. */
    public static void main(String[] args) throws IOException {
        JobFolder job = JobFolder.open(Path.of(args[0]));
        int entries = Integer.parseInt(args[2]);
        for (int i = 0; i < entries; i++) {
            String text = args[1] + " " + i;
            Event event;
            if (i % 4 == 3) {
                Path raw = InventedJobs.recording(Path.of(args[3]), text + ".wav", 300_000 + i);
                NewRun run = NewRun.labelled(text, RunSettings.NONE);
                event = job.addRecording(raw, run);
            } else {
                event = job.append(Entry.note(text));
            }
            System.out.println(event.id() + " " + text);
            System.out.flush();
        }
    }

    static Process start(Path job, String word, int entries, Path rawFolder, ProcessBuilder.Redirect output)
            throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-Xshare:auto",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                EntryWriter.class.getName()));
        command.addAll(List.of(job.toString(), word, String.valueOf(entries), rawFolder.toString()));
        return new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .redirectOutput(output)
                .start();
    }

    /** Whether the record holds what a line of output confirmed. */
    static boolean holds(JobRecord record, String confirmed) {
        int blank = confirmed.indexOf(' ');
        String id = confirmed.substring(0, blank);
        String text = confirmed.substring(blank + 1);
        return record.events().stream()
                .anyMatch(e -> e.id().equals(id)
                        && (e.text().equals(text)
                                || e.label().filter(text::equals).isPresent()));
    }

    static List<String> linesOf(byte[] output) {
        String text = new String(output, StandardCharsets.UTF_8);
        // What comes after the last line end was cut off by the kill and is no confirmation.
        int end = text.lastIndexOf('\n');
        return end < 0 ? List.of() : text.substring(0, end).lines().toList();
    }
}
