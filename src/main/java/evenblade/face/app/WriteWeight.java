package evenblade.face.app;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.HubWeight;
import evenblade.keep.job.JobFolder;
import evenblade.machine.installation.HubCounting;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Optional;

/** Writes down a weight that was put on or taken off, and how angles on the hub are counted. */
public final class WriteWeight {
    private WriteWeight() {}

    /**
     * Writes the entry.
     *
     * @param on what was put on
     * @param off label or id of what was taken off
     * @param counted the sense in which angles on this hub are counted
     * @throws evenblade.base.problem.BadInput where the job can't be used, or no such weight is on
     */
    public static Event answer(
            Path job,
            Optional<HubWeight> on,
            Optional<String> off,
            Optional<HubCounting> counted,
            Optional<String> label,
            Optional<OffsetDateTime> at) {
        return JobFolder.open(job)
                .append(new Entry(at, label, text(on, off, counted), new Detail.Balance(on, off, counted)));
    }

    private static String text(Optional<HubWeight> on, Optional<String> off, Optional<HubCounting> counted) {
        StringBuilder text = new StringBuilder();
        off.ifPresent(name -> text.append("Weight taken off: ").append(name).append(". "));
        on.ifPresent(
                weight -> text.append("Weight put on: ").append(weight.text()).append(". "));
        counted.ifPresent(sense -> text.append("Angles on the hub are counted ")
                .append(sense == HubCounting.WITH_ROTATION ? "with" : "against")
                .append(" the rotation. "));
        return text.toString().strip();
    }
}
