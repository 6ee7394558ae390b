package evenblade.face.app;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.base.units.LengthUnit;
import evenblade.judge.comparison.RunComparison.ChannelComparison;
import evenblade.judge.comparison.Trend;
import evenblade.judge.comparison.TrendOverJob;
import evenblade.judge.comparison.TrendStage;
import evenblade.keep.job.Event;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.ParticularsFile;
import evenblade.keep.job.PlainName;
import evenblade.machine.plan.RunPlan;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.export.TrendTable;
import evenblade.tell.report.FirstPageFacts;
import evenblade.tell.report.MakersSheet;
import evenblade.tell.report.OneSheet;
import evenblade.tell.report.PaperSize;
import evenblade.tell.report.Report;
import evenblade.tell.report.ReportContent.Photo;
import evenblade.tell.report.ReportExtent;
import evenblade.tell.report.ReportFigure;
import evenblade.tell.report.ReportInput;
import evenblade.tell.report.ReportedComparison;
import evenblade.tell.report.RunCardSheet;
import evenblade.tell.report.SheetImages;
import evenblade.tell.report.TrendPictures;
import java.io.IOException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Future;
import java.util.function.Consumer;

/** Writes the record to hand over: a page for the browser, sheets of paper, and tables for other programs. */
public final class WriteReport {
    /** The page's file name. */
    public static final String HTML = "report.html";
    /** The sheets' file name. */
    public static final String PDF = "report.pdf";

    private static final int WIDTH_PX = 1000; // a page's width at some 150 pixels an inch
    private static final int HEIGHT_PX = 560; // about half the width

    private static final double SHARE_FILES = 0.1; // of the bar: checking the files is quick; ours
    private static final double SHARE_RUNS = 0.7; // of the bar: analysing takes longest; ours

    private final JobFolder folder;
    private final JobRuns jobRuns;
    private final ReportExtent extent;
    private final LengthUnit units;
    private final Workers workers;
    private final Progress progress;
    private final List<Warning> fileWarnings;

    private WriteReport(
            JobFolder folder, Optional<LengthUnit> units, ReportExtent extent, Progress progress, Workers workers) {
        this.folder = folder;
        this.extent = extent;
        this.progress = progress;
        this.workers = workers;
        this.jobRuns = new JobRuns(folder);
        this.units = units.orElseGet(() -> JobParticulars.units(folder.path(), Optional.empty()));
        progress.at(0, "reading the files of the record");
        List<Warning> files = new ArrayList<>(folder.check(Thoroughness.EVERY_BYTE));
        files.addAll(JobTakes.warnings(JobTakes.of(folder.path())));
        this.fileWarnings = List.copyOf(files);
    }

    /**
     * What was written.
     *
     * @param files the page first, then the sheets, then the tables
     * @param warnings what the report had to leave out or to mark
     */
    public record Written(List<Path> files, List<Warning> warnings) {
        public Written {
            files = List.copyOf(files);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Writes the short report of a job.
     *
     * @param job the job's folder
     * @param out where to write; the job's folder, where empty
     * @throws evenblade.base.problem.BadInput where the job can't be read or the folder not be written to; an
     *     earlier report is then as it was
     */
    public static Written write(Path job, Optional<Path> out, PaperSize paper, Progress progress) {
        return write(job, out, paper, Optional.empty(), ReportExtent.SHORT, progress);
    }

    /**
     * Writes it short or in full.
     *
     * @param units which unit of length comes first; the one that the job was worked in, where empty
     */
    public static Written write(
            Path job,
            Optional<Path> out,
            PaperSize paper,
            Optional<LengthUnit> units,
            ReportExtent extent,
            Progress progress) {
        JobFolder folder = JobFolder.open(job);
        OutFolder target = new OutFolder(out.orElse(job));
        try (Workers workers = new Workers()) {
            return new WriteReport(folder, units, extent, progress, workers).write(target, paper);
        }
    }

    /**
     * Writes the sheet that goes with a propeller back to its maker.
     *
     * @param question what is asked of the maker, where it was said
     */
    public static Written forMaker(
            Path job,
            Optional<Path> out,
            PaperSize paper,
            Optional<LengthUnit> units,
            Optional<String> question,
            Progress progress) {
        JobFolder folder = JobFolder.open(job);
        OutFolder target = new OutFolder(out.orElse(job));
        try (Workers workers = new Workers()) {
            Composed composed =
                    new WriteReport(folder, units, ReportExtent.SHORT, progress, workers).compose(runs -> {});
            OneSheet sheet = MakersSheet.of(composed.input(), question);
            return new Written(
                    List.of(
                            target.put("for-maker.html", sheet::writeHtml),
                            target.put("for-maker.pdf", pdf -> sheet.writePdf(paper, pdf))),
                    composed.warnings());
        }
    }

    /**
     * Writes the run card as a page to print; an earlier file of that name is replaced.
     *
     * @throws evenblade.base.problem.BadInput where it can't be written there
     */
    public static void runCard(RunPlan plan, Path file, PaperSize paper) {
        Path whole = file.toAbsolutePath();
        new OutFolder(whole.getParent()).put(whole.getFileName().toString(), pdf -> RunCardSheet.of(plan)
                .writePdf(paper, pdf));
    }

    private record Composed(ReportInput input, ReportRuns runs, List<Trend> trends, List<Warning> warnings) {}

    /**
     * Gathers what the report is made from.
     *
     * @param analysed is told of the runs once they are analysed, while the rest is being worked out
     */
    private Composed compose(Consumer<ReportRuns> analysed) {
        List<Warning> warnings = new ArrayList<>(fileWarnings);
        progress.at(SHARE_FILES, "analysing the runs");
        List<Future<Optional<Photo>>> photos = new ReportPhotos(folder, fileWarnings).begin(workers);
        ReportRuns runs = ReportRuns.of(
                folder,
                jobRuns,
                fileWarnings,
                workers,
                (share, doing) -> progress.at(SHARE_FILES + share * (SHARE_RUNS - SHARE_FILES), doing));
        analysed.accept(runs);
        List<TrendStage> stages = runs.stages();
        List<Future<ReportedComparison>> comparisons = ReportComparisons.begin(runs, stages, workers);
        Future<FindingsForReport> findings =
                workers.begin(() -> FindingsForReport.of(jobRuns, new FigureFormat(units)));
        List<Trend> trends = TrendOverJob.of(stages);
        List<ReportedComparison> compared = Workers.takeAll(comparisons);
        Optional<String> channel = compared.stream()
                .limit(1)
                .flatMap(pair -> pair.outcome().channels().stream())
                .map(ChannelComparison::channel)
                .findFirst();
        ReportInput input = new ReportInput(
                folder.record(),
                OffsetDateTime.now(),
                version(),
                warnings,
                runs.reported(),
                compared,
                trend(runs, trends, compared, channel),
                turn(runs, compared),
                Workers.takeAll(photos).stream().flatMap(Optional::stream).toList(),
                units,
                Workers.take(findings).checks(),
                Workers.take(findings).answers(),
                new FirstPageFacts(
                        ParticularsFile.read(folder.path()),
                        Workers.take(findings).findings()));
        progress.at(SHARE_RUNS, "setting the report");
        return new Composed(input, runs, trends, warnings);
    }

    private Written write(OutFolder target, PaperSize paper) {
        List<Future<Path>> tables = new ArrayList<>();
        Composed composed = compose(runs -> tables.addAll(tables(runs, target)));
        Report report = new Report(composed.input().content(), paper, extent);
        ReportRuns runs = composed.runs();
        Future<Path> page = workers.begin(() -> target.put(HTML, report::writeHtml));
        Path sheets = target.put(PDF, report::writePdf);
        List<Path> files = new ArrayList<>(List.of(Workers.take(page), sheets));
        files.addAll(Workers.takeAll(tables));
        if (!composed.trends().isEmpty()) {
            files.add(target.put("tables/trend.csv", TrendTable.csv(composed.trends())));
        }
        progress.at(1, "done");
        List<Warning> warnings = composed.warnings();
        runs.reported().stream()
                .filter(run -> run.troubled())
                .map(run -> Warning.of(
                        WarningCode.RUN_IN_TROUBLE,
                        new Subject.Entry(run.event().id()),
                        new Quoted(run.name()),
                        new Quoted(run.trouble())))
                .forEach(warnings::add);
        return new Written(files, warnings);
    }

    private List<Future<Path>> tables(ReportRuns runs, OutFolder target) {
        List<Future<Path>> tables = new ArrayList<>();
        for (Event run : runs.answeredRuns()) {
            ReportRuns.ReportRun answer = runs.reported(run).orElseThrow();
            String below = "tables/" + run.id() + slug(run.label().orElse("")) + "/";
            tables.add(workers.begin(() -> target.put(below + "orders.csv", answer.ordersCsv())));
            tables.add(workers.begin(() -> target.put(below + "spectrum.csv", answer.spectrumCsv())));
        }
        return tables;
    }

    private static String version() {
        String version = WriteReport.class.getPackage().getImplementationVersion();
        return version == null ? "(not packaged)" : version;
    }

    private static String slug(String label) {
        String slug = PlainName.of(label).toLowerCase(Locale.ROOT);
        return slug.isEmpty() ? "" : "-" + slug;
    }

    private static List<ReportFigure> trend(
            ReportRuns runs, List<Trend> trends, List<ReportedComparison> compared, Optional<String> channel) {
        List<ReportFigure> figures = new ArrayList<>();
        trends.stream()
                .limit(1)
                .flatMap(trend ->
                        TrendPictures.overJob(
                                trend, compared.stream().findFirst().map(ReportedComparison::outcome))
                                .stream())
                .map(WriteReport::wide)
                .forEach(figures::add);
        List<Event> answered = runs.answeredRuns();
        if (!answered.isEmpty()) {
            runs.reported(answered.get(answered.size() - 1))
                    .flatMap(newest -> TrendPictures.againstRpm(newest.measured(), channel))
                    .map(WriteReport::wide)
                    .ifPresent(figures::add);
        }
        return figures;
    }

    /** One turn in the last run and, where the same channel has one, in the first. */
    private static List<ReportFigure> turn(ReportRuns runs, List<ReportedComparison> compared) {
        List<Event> answered = runs.answeredRuns();
        if (answered.isEmpty()) {
            return List.of();
        }
        ReportRuns.ReportRun first = runs.reported(answered.get(0)).orElseThrow();
        ReportRuns.ReportRun last =
                runs.reported(answered.get(answered.size() - 1)).orElseThrow();
        DrawPair pair = new DrawPair(first.named(), last.named());
        return compared.stream().findFirst().flatMap(whole -> pair.turn(whole.outcome())).or(pair::lastTurn).stream()
                .map(WriteReport::wide)
                .toList();
    }

    static ReportFigure wide(Picture picture) {
        return ReportFigure.drawn(picture, WIDTH_PX, HEIGHT_PX);
    }

    /**
     * The sheets as they would be written now.
     *
     * @param job the job's folder
     * @throws BadInput where the job can't be read
     */
    public static SheetImages preview(Path job, PaperSize paper, ReportExtent extent, Progress progress)
            throws IOException {
        try (Workers workers = new Workers()) {
            return SheetImages.of(
                    new Report(composed(job, extent, progress, workers).input().content(), paper, extent));
        }
    }

    /** The sheet for the maker of the propeller as it would be written now. */
    public static SheetImages previewForMaker(Path job, PaperSize paper, Optional<String> question, Progress progress)
            throws IOException {
        try (Workers workers = new Workers()) {
            ReportInput input =
                    composed(job, ReportExtent.SHORT, progress, workers).input();
            return SheetImages.of(MakersSheet.of(input, question), paper);
        }
    }

    /** The run card as it would be written now. */
    public static SheetImages previewRunCard(RunPlan plan, PaperSize paper) throws IOException {
        return SheetImages.of(RunCardSheet.of(plan), paper);
    }

    private static Composed composed(Path job, ReportExtent extent, Progress progress, Workers workers) {
        return new WriteReport(JobFolder.open(job), Optional.empty(), extent, progress, workers).compose(runs -> {});
    }
}
