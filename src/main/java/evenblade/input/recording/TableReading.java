package evenblade.input.recording;

import evenblade.base.fact.Worded;
import evenblade.base.units.ValueScale;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How a table of stamps and values is to be read, as far as somebody says so; what isn't said, the reader finds out.
 *
 * @param separator between cells
 * @param decimalSign in its numbers
 * @param timeColumn heading or number, counted from 1, of the column that tells time
 * @param timeUnit of its numbers
 * @param columns what is said of columns of values
 */
public record TableReading(
        Optional<Separator> separator,
        Optional<DecimalSign> decimalSign,
        Optional<String> timeColumn,
        Optional<TimeUnit> timeUnit,
        List<ColumnReading> columns) {
    /** Nothing said: the reader finds out all of it. */
    public static final TableReading UNSAID =
            new TableReading(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of());

    public TableReading {
        columns = List.copyOf(columns);
    }

    /** Whether all is left to the reader. */
    public boolean unsaid() {
        return equals(UNSAID);
    }

    /** In words, for people: what was said, parted by commas; empty where nothing was. */
    public String words() {
        List<String> parts = new ArrayList<>();
        separator.ifPresent(each -> parts.add(each.word() + " between cells"));
        decimalSign.ifPresent(each -> parts.add("decimal " + each.word()));
        timeColumn.ifPresent(each -> parts.add("time in column " + each));
        timeUnit.ifPresent(each -> parts.add("time in " + each.word()));
        for (ColumnReading column : columns) {
            parts.add("column " + column.column()
                    + column.name().map(name -> " called " + name).orElse("")
                    + column.scale().map(scale -> " with 1 = " + scale.text()).orElse(""));
        }
        return String.join(", ", parts);
    }

    /**
     * What is said of one column; that something is said makes it a column of values.
     *
     * @param column heading or number, counted from 1
     * @param name of its channel, such as the direction that it feels; the heading where empty
     * @param scale what a 1 in it stands for; by the heading where empty
     */
    public record ColumnReading(String column, Optional<String> name, Optional<ValueScale> scale) {}

    /** What stands between two cells. */
    public enum Separator implements Worded {
        COMMA(','),
        SEMICOLON(';'),
        TAB('\t'),
        BAR('|'),
        /** Runs of spaces or tabs. */
        SPACES(' ');

        private final char sign;

        Separator(char sign) {
            this.sign = sign;
        }

        public char sign() {
            return sign;
        }

        /** The separator of that sign, where it is one. */
        public static Optional<Separator> of(char sign) {
            return Arrays.stream(values()).filter(each -> each.sign == sign).findFirst();
        }
    }

    /** What stands between the whole and the broken part of a number. */
    public enum DecimalSign implements Worded {
        POINT,
        COMMA
    }

    /** What a time column counts. */
    public enum TimeUnit {
        SECONDS("s", 1),
        MILLISECONDS("ms", 1e-3),
        MICROSECONDS("us", 1e-6),
        NANOSECONDS("ns", 1e-9);

        private final String word;
        private final double seconds;

        TimeUnit(String word, double seconds) {
            this.word = word;
            this.seconds = seconds;
        }

        /** As written in files and said by people. */
        public String word() {
            return word;
        }

        /** Length of one, seconds. */
        public double seconds() {
            return seconds;
        }

        /** The unit of that many seconds, where it is one. */
        public static Optional<TimeUnit> of(double seconds) {
            return Arrays.stream(values())
                    .filter(each -> each.seconds == seconds)
                    .findFirst();
        }
    }
}
