package evenblade.face.cli;

import evenblade.face.app.WriteEntry;
import evenblade.face.app.WritePictures;
import evenblade.keep.job.Event;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** Where the pictures of an answer go: into a folder, into the record of a job, both or nowhere. */
final class Plots {
    private final Optional<Path> folder;
    private final Optional<Path> job;
    private final List<String> said = new ArrayList<>();

    private Plots(Optional<Path> folder, Optional<Path> job) {
        this.folder = folder;
        this.job = job;
    }

    static void addTo(CommandSpec spec) {
        spec.addOption(Options.value(
                "--plots", "DIR", Path.class, "Write pictures (PNG and SVG) into this folder; it is made if need be."));
        spec.addOption(
                Options.value(
                        "--attach",
                        "JOB",
                        Path.class,
                        "Put the pictures into the record of this job; drawn again, they take the place of those drawn before."));
    }

    /**
     * Where they are wanted.
     *
     * @throws evenblade.base.problem.BadInput where a folder can't be one, or the job isn't one: before any work is done
     */
    static Plots wanted(ParseResult words) {
        Plots plots = new Plots(Options.path(words, "--plots"), Options.path(words, "--attach"));
        plots.folder.ifPresent(WritePictures::requireFolder);
        plots.job.ifPresent(WriteEntry::requireJob);
        return plots;
    }

    /** Draws, where they are wanted anywhere. */
    void draw(Function<Path, List<Path>> drawing) {
        folder.ifPresent(into -> {
            List<Path> files = drawing.apply(into);
            files.forEach(file -> said.add("wrote " + file));
            job.ifPresent(record -> attach(record, files));
        });
        if (folder.isEmpty() && job.isPresent()) {
            drawForRecord(job.get(), drawing);
        }
    }

    private void drawForRecord(Path record, Function<Path, List<Path>> drawing) {
        try {
            Path workshop = Files.createTempDirectory("evenblade-pictures");
            List<Path> files = List.of();
            try {
                files = drawing.apply(workshop);
                attach(record, files);
            } finally {
                for (Path file : files) {
                    Files.deleteIfExists(file);
                }
                Files.deleteIfExists(workshop);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void attach(Path record, List<Path> files) {
        List<Path> pictures =
                files.stream().filter(file -> file.toString().endsWith(".png")).toList();
        List<Event> entries = WriteEntry.drawn(record, pictures);
        said.add(entries.isEmpty() ? "the record has these pictures already" : "");
        entries.forEach(entry -> said.addAll(JobText.written(entry)));
        said.removeIf(String::isEmpty);
    }

    /** Says what became of them: on standard output, or beside it where a JSON document stands there. */
    void tell(ParseResult words, PrintWriter out) {
        PrintWriter told = Options.said(words, "--json")
                ? words.commandSpec().commandLine().getErr()
                : out;
        said.forEach(told::println);
    }
}
