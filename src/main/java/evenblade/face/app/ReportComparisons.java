package evenblade.face.app;

import evenblade.judge.comparison.BeforeAndAfter;
import evenblade.judge.comparison.Repeats;
import evenblade.judge.comparison.RunComparison;
import evenblade.judge.comparison.TrendStage;
import evenblade.keep.job.Event;
import evenblade.tell.chart.Picture;
import evenblade.tell.report.ComparisonPictures;
import evenblade.tell.report.ReportFigure;
import evenblade.tell.report.ReportedComparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Future;
import java.util.stream.Stream;

/** The runs of a report held against each other: the first against the last, then each against the one before. */
record ReportComparisons(ReportRuns runs, Repeats repeats) {
    /** With more runs than this, the runs one after the other are compared in sentences only. */
    private static final int RUNS_WITH_TABLES = 8;

    /** Begins them all, newest first after the first one. */
    static List<Future<ReportedComparison>> begin(ReportRuns runs, List<TrendStage> stages, Workers workers) {
        return new ReportComparisons(runs, new Repeats(stages)).begin(workers);
    }

    private List<Future<ReportedComparison>> begin(Workers workers) {
        List<Event> answered = runs.answeredRuns();
        List<Future<ReportedComparison>> all = new ArrayList<>();
        if (answered.size() < 2) {
            return all;
        }
        Event first = answered.get(0);
        Event last = answered.get(answered.size() - 1);
        all.add(workers.begin(() -> compared("From the first run to the last: ", first, last, true, true)));
        for (int i = answered.size() > 2 ? answered.size() - 1 : 0; i > 0; i--) {
            boolean newest = i == answered.size() - 1;
            boolean tables = newest || answered.size() <= RUNS_WITH_TABLES;
            Event earlier = answered.get(i - 1);
            Event later = answered.get(i);
            all.add(workers.begin(() -> compared("", earlier, later, newest, tables)));
        }
        return all;
    }

    private ReportedComparison compared(String lead, Event earlier, Event later, boolean drawn, boolean tables) {
        ReportRuns.ReportRun before = runs.reported(earlier).orElseThrow();
        ReportRuns.ReportRun after = runs.reported(later).orElseThrow();
        RunComparison outcome = BeforeAndAfter.compare(before.measured(), after.measured(), repeats);
        return new ReportedComparison(
                lead + "'" + runs.nameOf(later) + "' against '" + runs.nameOf(earlier) + "'",
                runs.changesBetween(earlier, later),
                outcome,
                drawn ? figures(outcome, new DrawPair(before.named(), after.named())) : List.of(),
                tables);
    }

    private static List<ReportFigure> figures(RunComparison outcome, DrawPair pair) {
        return Stream.<Optional<Picture>>of(ComparisonPictures.bars(outcome), pair.spectra(outcome))
                .flatMap(Optional::stream)
                .map(WriteReport::wide)
                .toList();
    }
}
