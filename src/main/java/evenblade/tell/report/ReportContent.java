package evenblade.tell.report;

import java.util.List;

/**
 * All that a report says, in words ready to be set.
 *
 * @param heading what it is about
 * @param inShort the answer: a few lines, each with what it answers
 * @param findings what the measurements point to; empty where none are worked out
 * @param timeline what was done, in order of time
 * @param comparisons runs held against each other, the first and last runs first
 * @param trend over all runs; may be empty
 * @param turn one turn of the propeller, before and after; may be empty
 * @param checks static readings with their limits
 * @param answers what they say together, and together with the runs; may be empty
 * @param runs each ground run, newest first
 * @param photos with what was said of them
 * @param notShown pictures that can't be shown here, each with the reason
 * @param installation engine, drive and propeller
 * @param limits limits with their statistic and source
 * @param evidence every stored file with its hash
 * @param brief the short report
 */
public record ReportContent(
        Heading heading,
        List<KnownThing> inShort,
        List<Section> findings,
        List<TimelineEntry> timeline,
        List<Section> comparisons,
        List<ReportFigure> trend,
        List<ReportFigure> turn,
        List<Section> checks,
        List<Section> answers,
        List<Section> runs,
        List<Photo> photos,
        List<String> notShown,
        Section installation,
        Section limits,
        Evidence evidence,
        ShortReport brief) {
    public ReportContent {
        inShort = List.copyOf(inShort);
        findings = List.copyOf(findings);
        timeline = List.copyOf(timeline);
        comparisons = List.copyOf(comparisons);
        trend = List.copyOf(trend);
        turn = List.copyOf(turn);
        checks = List.copyOf(checks);
        answers = List.copyOf(answers);
        runs = List.copyOf(runs);
        photos = List.copyOf(photos);
        notShown = List.copyOf(notShown);
    }

    /**
     * What the report is about and when it was made.
     *
     * @param job name of the job
     * @param aircraft name of the installation as entered; may be empty
     * @param invented whether the job was made up for practice
     * @param made when the report was made
     * @param program its name and version
     */
    public record Heading(String job, String aircraft, boolean invented, String made, String program) {
        /** Whether an aircraft was named. */
        public boolean named() {
            return !aircraft.isBlank();
        }
    }

    /**
     * One entry of the job.
     *
     * @param id in the record
     * @param at when
     * @param what kind of entry, and its label
     * @param lines what was done or seen
     * @param struckOut whether it no longer counts
     * @param change whether something was changed on the machine
     */
    public record TimelineEntry(
            String id, String at, String what, List<String> lines, boolean struckOut, boolean change) {
        public TimelineEntry {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A photo.
     *
     * @param entry of the record that it belongs to
     * @param figure the photo
     * @param caption where it comes from and what was said of it
     */
    public record Photo(String entry, ReportFigure figure, String caption) {}

    /**
     * The stored files.
     *
     * @param troubles files that are missing or changed, and what else is odd
     * @param files each file with its hash
     */
    public record Evidence(List<String> troubles, List<StoredRow> files) {
        public Evidence {
            troubles = List.copyOf(troubles);
            files = List.copyOf(files);
        }

        /** Whether anything is missing, changed or odd. */
        public boolean troubled() {
            return !troubles.isEmpty();
        }
    }

    /**
     * One stored file.
     *
     * @param entry the entry it belongs to
     * @param path below the job folder
     * @param original its name where it came from
     * @param bytes its size when it was added
     * @param sha256 of its bytes when it was added
     * @param state {@code as added}, or what is wrong with it
     */
    public record StoredRow(String entry, String path, String original, String bytes, String sha256, String state) {}

    /** Whether there is a trend. */
    public boolean trending() {
        return !trend.isEmpty();
    }

    /** Whether there is a picture of one turn. */
    public boolean turning() {
        return !turn.isEmpty();
    }

    /** Whether there is a photo, shown or not. */
    public boolean photographed() {
        return !photos.isEmpty() || unshown();
    }

    /** Whether a picture can't be shown. */
    public boolean unshown() {
        return !notShown.isEmpty();
    }
}
