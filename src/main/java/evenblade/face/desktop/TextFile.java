package evenblade.face.desktop;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/**
 * Names and texts kept in a file. Every change reaches the disk a moment later, on a thread of its own;
 * a crash in between leaves the file as it was before.
 */
final class TextFile {
    private static final long REST_MS = 150; // one write for a burst of changes

    private final Path file;
    private final Map<String, String> texts = new TreeMap<>();
    private final ScheduledExecutorService writer = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "evenblade-remember");
        thread.setDaemon(true);
        return thread;
    });
    private final Object writing = new Object();
    private boolean due;

    private TextFile(Path file) {
        this.file = file;
    }

    /** What is in the file; nothing, where it isn't there or can't be read. */
    static TextFile read(Path file) {
        TextFile read = new TextFile(file);
        Properties properties = new Properties();
        if (Files.isRegularFile(file)) {
            try (Reader reader = Files.newBufferedReader(file)) {
                properties.load(reader);
            } catch (IOException | IllegalArgumentException e) {
                properties.clear(); // what can't be read is not remembered
            }
        }
        properties.forEach((key, value) -> read.texts.put(String.valueOf(key), String.valueOf(value)));
        return read;
    }

    synchronized String get(String key, String otherwise) {
        return texts.getOrDefault(key, otherwise);
    }

    synchronized void put(String key, String value) {
        if (value.equals(texts.put(key, value))) {
            return;
        }
        writeSoon();
    }

    synchronized void removeAll(String prefix) {
        if (texts.keySet().removeIf(key -> key.startsWith(prefix))) {
            writeSoon();
        }
    }

    /** A write that is due stays due: whoever types without a rest has the same promise. */
    private void writeSoon() {
        if (!due) {
            due = true;
            writer.schedule(this::write, REST_MS, TimeUnit.MILLISECONDS);
        }
    }

    /** Writes now, on the caller's thread. */
    void write() {
        synchronized (writing) {
            writeOut();
        }
    }

    private void writeOut() {
        Properties properties = new Properties();
        synchronized (this) {
            due = false;
            properties.putAll(texts);
        }
        try {
            Files.createDirectories(file.getParent());
            Path unfinished = file.resolveSibling(file.getFileName() + ".new");
            try (Writer out = Files.newBufferedWriter(unfinished)) {
                properties.store(out, null);
            }
            Files.move(unfinished, file, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            // What can't be kept isn't remembered next time; nothing of a job depends on it.
        }
    }
}
