package evenblade.keep.job;

import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Reduction;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** Invented jobs for the tests of this room. */
final class InventedJobs {
    static final Clock CLOCK = Clock.fixed(Instant.parse("2031-05-04T08:30:00.250Z"), ZoneOffset.ofHours(2));

    static final Installation INSTALLATION = new Installation(
            Optional.of("invented test stand"),
            new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.of(1600), OptionalDouble.of(5800)),
            Reduction.ofTeeth(Reduction.Kind.GEAR, new Reduction.Teeth(21, 51)),
            new Installation.Propeller(3, Optional.empty(), Optional.empty()),
            List.of());

    static final NewJob NEW_JOB = NewJob.of("Invented job", true, INSTALLATION);

    private InventedJobs() {}

    static JobFolder in(Path folder) {
        return JobFolder.create(folder, NEW_JOB, CLOCK);
    }

    static JobFolder on(Disk disk, Path folder) {
        return new JobFolder(folder, CLOCK, disk, RecordFormat.current());
    }

    /** A file that stands for a recording; the job folder doesn't look inside. */
    static Path recording(Path folder, String name, int bytes) throws IOException {
        byte[] content = new byte[bytes];
        new Random(bytes + 31L * name.hashCode()).nextBytes(content);
        return Files.write(folder.resolve(name), content);
    }
}
