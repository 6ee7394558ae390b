package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.judge.findings.Findings;
import evenblade.judge.findings.JobEvidence;
import evenblade.judge.tie.JobTie;
import evenblade.keep.job.JobFolder;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Answers what a job's measurements point to. */
public final class WeighFindings {
    private WeighFindings() {}

    /**
     * What the measurements point to.
     *
     * @param job its name
     * @param invented whether it was made up for practice
     * @param runs names of the runs that were weighed, in order of time
     * @param findings heaviest first
     * @param tie how much of 1× goes with track, or what is missing to tell; empty where no run has marks before it
     * @param warnings runs that had to be left out
     */
    public record Answer(
            String job,
            boolean invented,
            List<String> runs,
            Findings findings,
            Optional<JobTie> tie,
            List<Warning> warnings) {
        public Answer {
            runs = List.copyOf(runs);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Weighs a job.
     *
     * @throws BadInput where there is no job, or nothing in it that was measured
     */
    public static Answer weigh(Path job) {
        return weigh(job, Progress.SILENT);
    }

    /** Weighs it and tells how far it has come. */
    public static Answer weigh(Path job, Progress progress) {
        return weigh(job, EvidenceOfJob.of(new JobRuns(JobFolder.open(job)), progress));
    }

    /** Weighs what was loaded of it. */
    static Answer weigh(Path job, EvidenceOfJob.Loaded loaded) {
        JobEvidence evidence = loaded.evidence();
        Findings findings = Findings.weigh(evidence);
        if (findings.list().isEmpty()) {
            throw BadInput.in(job)
                    .found(
                            loaded.warnings().isEmpty()
                                    ? "nothing measured in this job"
                                    : Phrases.of(Face.COMMAND_LINE)
                                            .text(loaded.warnings().get(0).fact()),
                            "at least one usable run ('job add'), or tip marks ('job tracking')");
        }
        return new Answer(
                loaded.record().name(),
                loaded.record().invented(),
                evidence.runs().stream().map(run -> run.ref().name()).toList(),
                findings,
                loaded.tie(),
                loaded.warnings());
    }
}
