package evenblade.face.app;

import evenblade.base.units.LengthUnit;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Particulars;
import evenblade.keep.job.ParticularsFile;
import evenblade.tell.report.UnitsOfJob;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/** Answers whose machine a job is about, who works on it, and in which units. */
public final class JobParticulars {
    private JobParticulars() {}

    /** What is said so far. */
    public static Particulars read(Path job) {
        JobFolder.open(job);
        return ParticularsFile.read(job);
    }

    /** Puts texts over those that are there; a blank one takes it away. */
    public static Particulars change(Path job, Map<Particulars.Item, String> texts) {
        JobFolder.open(job);
        return ParticularsFile.change(job, texts);
    }

    /**
     * Which unit of length comes first in answers about a job: the one asked for, which the job then keeps; else the one it
     * keeps; else that of most of its readings.
     */
    public static LengthUnit units(Path job, Optional<LengthUnit> wanted) {
        JobFolder folder = JobFolder.open(job);
        Optional<LengthUnit> kept =
                ParticularsFile.read(job).get(Particulars.Item.UNITS).flatMap(UnitsOfJob::named);
        if (wanted.isPresent() && !wanted.equals(kept)) {
            ParticularsFile.change(job, Map.of(Particulars.Item.UNITS, UnitsOfJob.word(wanted.get())));
        }
        return wanted.or(() -> kept).orElseGet(() -> UnitsOfJob.of(folder.record()));
    }
}
