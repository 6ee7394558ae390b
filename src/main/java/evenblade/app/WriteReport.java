package evenblade.app;

import evenblade.chart.AnglePicture;
import evenblade.chart.Caption;
import evenblade.chart.PhotoScaler;
import evenblade.chart.Picture;
import evenblade.comparison.BeforeAndAfter;
import evenblade.comparison.ChannelComparison;
import evenblade.comparison.MeasuredRun;
import evenblade.comparison.RunComparison;
import evenblade.comparison.Stage;
import evenblade.comparison.Trend;
import evenblade.comparison.TrendOverJob;
import evenblade.export.TrendTable;
import evenblade.job.Detail;
import evenblade.job.Event;
import evenblade.job.EvidenceCheck.Thoroughness;
import evenblade.job.JobFolder;
import evenblade.job.Kind;
import evenblade.orders.AngleAverage;
import evenblade.orders.ChannelOrders;
import evenblade.orders.DwellOrders;
import evenblade.problem.Warning;
import evenblade.report.ComparisonPictures;
import evenblade.report.Figure;
import evenblade.report.PaperSize;
import evenblade.report.Report;
import evenblade.report.ReportContent.Photo;
import evenblade.report.ReportInput;
import evenblade.report.ReportedComparison;
import evenblade.report.TrendPictures;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Writes the record to hand over: a page for the browser, sheets of paper, and tables for other programs. */
public final class WriteReport {
    /** The page's file name. */
    public static final String HTML = "report.html";
    /** The sheets' file name. */
    public static final String PDF = "report.pdf";

    private static final int WIDTH_PX = 1000;
    private static final int HEIGHT_PX = 560;
    private static final int PHOTO_PX = 1200;
    /** All photos together, so that a report of thirty can still be mailed. */
    private static final int PHOTO_BYTES_IN_ALL = 5_000_000;

    private static final int MOST_PHOTO_BYTES = 350_000;
    /** With more runs than this, the runs one after the other are compared in sentences only. */
    private static final int RUNS_WITH_TABLES = 8;

    private static final double SHARE_FILES = 0.1;
    private static final double SHARE_RUNS = 0.7;

    private final JobFolder folder;
    private final Progress progress;
    private final List<Warning> fileWarnings;

    private WriteReport(JobFolder folder, Progress progress) {
        this.folder = folder;
        this.progress = progress;
        progress.at(0, "reading the files of the record");
        this.fileWarnings = folder.check(Thoroughness.EVERY_BYTE);
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
     * Writes the report of a job.
     *
     * @param job the job's folder
     * @param out where to write; the job's folder, where empty
     * @throws evenblade.problem.BadInput where the job can't be read or the folder not be written to; an
     *     earlier report is then as it was
     */
    public static Written answer(Path job, Optional<Path> out, PaperSize paper, Progress progress) {
        JobFolder folder = JobFolder.open(job);
        OutFolder target = new OutFolder(out.orElse(job));
        return new WriteReport(folder, progress).write(target, paper);
    }

    private Written write(OutFolder target, PaperSize paper) {
        List<Warning> warnings = new ArrayList<>(fileWarnings);
        progress.at(SHARE_FILES, "analysing the runs");
        ReportRuns runs = ReportRuns.of(
                folder,
                warnings,
                (share, doing) -> progress.at(SHARE_FILES + share * (SHARE_RUNS - SHARE_FILES), doing));
        List<Stage> stages = runs.stages();
        List<Trend> trends = TrendOverJob.of(stages);
        List<ReportedComparison> comparisons = comparisons(runs, stages);
        Optional<String> channel = comparisons.stream()
                .limit(1)
                .flatMap(compared -> compared.outcome().channels().stream())
                .map(ChannelComparison::channel)
                .findFirst();
        ReportInput input = new ReportInput(
                folder.record(),
                OffsetDateTime.now(),
                version(),
                warnings,
                runs.reported(),
                comparisons,
                trend(runs, trends, channel),
                turn(runs, channel),
                photos(),
                FindingsForReport.of(folder));
        progress.at(SHARE_RUNS, "setting the report");
        Report report = new Report(input.content(), paper);
        List<Path> files = new ArrayList<>();
        files.add(target.put(HTML, report::writeHtml));
        files.add(target.put(PDF, report::writePdf));
        for (Event run : runs.answeredRuns()) {
            ReportRun answer = runs.answer(run).orElseThrow();
            String below = "tables/" + run.id() + slug(run.label().orElse("")) + "/";
            files.add(target.put(below + "orders.csv", answer.ordersCsv()));
            files.add(target.put(below + "spectrum.csv", answer.spectrumCsv()));
        }
        if (!trends.isEmpty()) {
            files.add(target.put("tables/trend.csv", TrendTable.csv(trends)));
        }
        progress.at(1, "done");
        runs.reported().stream()
                .filter(run -> run.part().troubled())
                .map(run -> new Warning(
                        "run-in-trouble", run.name() + ": " + run.part().trouble()))
                .forEach(warnings::add);
        return new Written(files, warnings);
    }

    private static String version() {
        String version = WriteReport.class.getPackage().getImplementationVersion();
        return version == null ? "(not packaged)" : version;
    }

    private static String slug(String label) {
        String slug = label.toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{Nd}]+", "-")
                .replaceAll("^-|-$", "");
        return slug.isEmpty() ? "" : "-" + slug;
    }

    private List<ReportedComparison> comparisons(ReportRuns runs, List<Stage> stages) {
        List<Event> answered = runs.answeredRuns();
        List<ReportedComparison> all = new ArrayList<>();
        if (answered.size() < 2) {
            return all;
        }
        Event first = answered.get(0);
        Event last = answered.get(answered.size() - 1);
        all.add(compared("From the first run to the last: ", first, last, runs, stages, true, true));
        for (int i = answered.size() > 2 ? answered.size() - 1 : 0; i > 0; i--) {
            boolean newest = i == answered.size() - 1;
            boolean tables = newest || answered.size() <= RUNS_WITH_TABLES;
            all.add(compared("", answered.get(i - 1), answered.get(i), runs, stages, newest, tables));
        }
        return all;
    }

    private ReportedComparison compared(
            String lead,
            Event earlier,
            Event later,
            ReportRuns runs,
            List<Stage> stages,
            boolean drawn,
            boolean tables) {
        ReportRun before = runs.answer(earlier).orElseThrow();
        ReportRun after = runs.answer(later).orElseThrow();
        RunComparison outcome = BeforeAndAfter.compare(before.measured(), after.measured(), stages);
        List<Figure> figures = new ArrayList<>();
        if (drawn) {
            ComparisonPictures.bars(outcome).map(WriteReport::wide).ifPresent(figures::add);
            spectra(outcome, before, after).map(WriteReport::wide).ifPresent(figures::add);
        }
        return new ReportedComparison(
                lead + "'" + runs.nameOf(later) + "' against '" + runs.nameOf(earlier) + "'",
                runs.changesBetween(earlier, later),
                outcome,
                figures,
                tables);
    }

    /** Both spectra of the channel compared, where the longest dwells of both runs are the same speed. */
    private static Optional<Picture> spectra(RunComparison outcome, ReportRun before, ReportRun after) {
        if (!outcome.comparable()) {
            return Optional.empty();
        }
        String channel = outcome.channels().get(0).channel();
        Optional<DwellOrders> one = longest(before, channel);
        Optional<DwellOrders> other = longest(after, channel);
        Optional<ReportRun.View> earlier = before.view(channel);
        Optional<ReportRun.View> later = after.view(channel);
        boolean alike = one.isPresent()
                && other.isPresent()
                && earlier.isPresent()
                && later.isPresent()
                && earlier.get().unit() == later.get().unit()
                && Math.abs(one.get().dwell().propellerHz()
                                        / other.get().dwell().propellerHz()
                                - 1)
                        <= MeasuredRun.SAME_SPEED;
        return alike
                ? Optional.of(ComparisonPictures.spectra(
                        outcome,
                        earlier.get().spectrum(),
                        later.get().spectrum(),
                        later.get().unit(),
                        other.get(),
                        after.measured().ratio()))
                : Optional.empty();
    }

    private static Optional<DwellOrders> longest(ReportRun run, String channel) {
        return run.measured().channels().stream()
                .filter(each -> each.channel().equals(channel))
                .map(ChannelOrders::dwells)
                .flatMap(List::stream)
                .max(Comparator.comparingDouble(dwell -> dwell.dwell().durationS()));
    }

    private List<Figure> trend(ReportRuns runs, List<Trend> trends, Optional<String> compared) {
        List<Figure> figures = new ArrayList<>();
        trends.stream()
                .limit(1)
                .flatMap(trend -> TrendPictures.overJob(trend).stream())
                .map(WriteReport::wide)
                .forEach(figures::add);
        List<Event> answered = runs.answeredRuns();
        if (!answered.isEmpty()) {
            runs.answer(answered.get(answered.size() - 1))
                    .flatMap(newest -> TrendPictures.againstRpm(newest.measured(), compared))
                    .map(WriteReport::wide)
                    .ifPresent(figures::add);
        }
        return figures;
    }

    /** One turn in the last run and, where the same channel has one, in the first. */
    private List<Figure> turn(ReportRuns runs, Optional<String> compared) {
        List<Event> answered = runs.answeredRuns();
        if (answered.isEmpty()) {
            return List.of();
        }
        ReportRun first = runs.answer(answered.get(0)).orElseThrow();
        ReportRun last = runs.answer(answered.get(answered.size() - 1)).orElseThrow();
        Optional<ReportRun.View> shown =
                compared.flatMap(last::view).or(() -> last.channels().stream().findFirst());
        return shown.filter(view -> view.turn().isPresent())
                .map(view -> List.of(wide(turn(first, last, view))))
                .orElse(List.of());
    }

    private static Picture turn(ReportRun first, ReportRun last, ReportRun.View view) {
        AngleAverage turn = view.turn().orElseThrow();
        Optional<AngleAverage> earlier = first == last
                ? Optional.empty()
                : first.view(view.channel())
                        .filter(before -> before.unit() == view.unit())
                        .flatMap(ReportRun.View::turn);
        boolean fromMark = last.fromMark() && (earlier.isEmpty() || first.fromMark());
        return new AnglePicture(new AnglePicture.Data(
                Caption.of(
                        view.channel(),
                        "mean of " + turn.turns() + " turns",
                        fromMark ? "angle from the mark" : "no mark: where 0° lies differs from run to run"),
                last.measured().blades(),
                fromMark,
                view.unit(),
                earlier.map(mean -> revolution(first, mean)),
                revolution(last, turn)));
    }

    private static AnglePicture.Revolution revolution(ReportRun run, AngleAverage turn) {
        return new AnglePicture.Revolution(run.measured().name(), turn.mean(), turn.standardError());
    }

    private List<Photo> photos() {
        List<Event> shown = folder.record().standing(Kind.ATTACHMENT).stream()
                .filter(event -> ((Detail.Attachment) event.detail()).type().showable())
                .toList();
        int budget = Math.min(MOST_PHOTO_BYTES, PHOTO_BYTES_IN_ALL / Math.max(1, shown.size()));
        return shown.parallelStream()
                .map(event -> photo(event, budget))
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<Photo> photo(Event event, int mostBytes) {
        Detail.Attachment attachment = (Detail.Attachment) event.detail();
        String words = event.text().isBlank() ? attachment.file().originalName() : event.text();
        return scaled(attachment, mostBytes)
                .map(jpeg -> new Photo(
                        Figure.photo(words, jpeg),
                        event.id() + ", " + attachment.file().originalName()
                                + (event.text().isBlank() ? "" : ": " + event.text())));
    }

    /** Photos are scaled once; one that was changed since it was added is taken as it is now. */
    private Optional<byte[]> scaled(Detail.Attachment attachment, int mostBytes) {
        boolean asAdded = fileWarnings.stream()
                .noneMatch(w -> w.message().contains("'" + attachment.file().path() + "'"));
        String key = String.join(
                "\n", "scaled photo", version(), attachment.file().stamp().sha256(), PHOTO_PX + " " + mostBytes);
        Optional<byte[]> kept = asAdded ? folder.cache().get(key) : Optional.empty();
        if (kept.isPresent()) {
            return kept;
        }
        Optional<byte[]> fresh = PhotoScaler.jpeg(folder.locate(attachment.file()), PHOTO_PX, mostBytes);
        if (asAdded) {
            fresh.ifPresent(jpeg -> folder.cache().put(key, jpeg));
        }
        return fresh;
    }

    private static Figure wide(Picture picture) {
        return Figure.wide(picture.title(), picture.png(WIDTH_PX, HEIGHT_PX));
    }
}
