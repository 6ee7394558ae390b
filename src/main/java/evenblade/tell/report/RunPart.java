package evenblade.tell.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * One ground run.
 *
 * @param title its label or id, and when it was
 * @param remark what was said of it; may be empty
 * @param trouble why there are no results; empty where there are
 * @param conditions how it was measured
 * @param quality how good the recording is
 * @param speed how fast, and how sure
 * @param tables the orders of each dwell shown
 * @param cautions what to know beside the figures
 * @param figures pictures
 */
public record RunPart(
        String title,
        String remark,
        String trouble,
        List<KnownThing> conditions,
        List<KnownThing> quality,
        List<String> speed,
        List<Table> tables,
        List<String> cautions,
        List<ReportFigure> figures) {
    public RunPart {
        conditions = List.copyOf(conditions);
        quality = List.copyOf(quality);
        speed = List.copyOf(speed);
        tables = List.copyOf(tables);
        cautions = List.copyOf(cautions);
        figures = List.copyOf(figures);
    }

    /**
     * The orders of one dwell.
     *
     * @param title channel, dwell and speed
     * @param unit of the amplitudes
     * @param main whether it is the longest dwell
     * @param rows one per line
     * @param sentences unevenness and lines that no order explains
     */
    public record Table(String title, String unit, boolean main, List<Row> rows, List<String> sentences) {
        public Table {
            rows = List.copyOf(rows);
            sentences = List.copyOf(sentences);
        }

        Table detectedOnly() {
            List<String> all = new ArrayList<>();
            String hidden = rows.stream().filter(Row::hidden).map(Row::name).collect(Collectors.joining(", "));
            if (!hidden.isEmpty()) {
                all.add("Not out of the noise: " + hidden + ".");
            }
            all.addAll(sentences);
            return new Table(
                    title,
                    unit,
                    main,
                    rows.stream().filter(row -> !row.hidden()).toList(),
                    all);
        }
    }

    /**
     * One line.
     *
     * @param name lines that lie on each other are named together
     * @param hz where it lies
     * @param amplitude with its error, or why there is none
     * @param interval 95 % interval
     * @param note what can't be told apart from it
     * @param detected whether it stands out of the noise
     * @param hidden whether it was looked for and lies in the noise; a line beyond the recording wasn't looked for
     */
    public record Row(
            String name, String hz, String amplitude, String interval, String note, boolean detected, boolean hidden) {}

    /** The same without its shorter dwells, and of lines that don't stand out only the names. */
    RunPart mainDwellOnly() {
        return new RunPart(
                title,
                remark,
                trouble,
                conditions,
                quality,
                speed,
                tables.stream().filter(Table::main).map(Table::detectedOnly).toList(),
                cautions,
                figures);
    }

    /** Whether a remark was made. */
    public boolean remarked() {
        return !remark.isBlank();
    }

    /** Whether there are no results. */
    public boolean troubled() {
        return !trouble.isBlank();
    }

    /** Whether there is anything to know beside the figures. */
    public boolean cautioned() {
        return !cautions.isEmpty();
    }
}
