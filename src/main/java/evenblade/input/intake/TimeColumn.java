package evenblade.input.intake;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The column that tells when each row was sampled, in seconds.
 *
 * @param column which of the table's columns it is
 * @param unit seconds per unit of its numbers
 * @param warnings what had to be assumed
 */
record TimeColumn(int column, double unit, List<Warning> warnings) {
    /** Rates that a vibration logger may have; a factor of a thousand, so one unit of time fits. */
    private static final double LOWEST_HZ = 20;

    private static final double HIGHEST_HZ = 20_000; // no table is written faster
    /** Rows further apart than this show no vibration; such numbers are no dates. */
    private static final double LONGEST_STEP_S = 10 / LOWEST_HZ;
    /** Least share of steps that rise for a column to tell time. */
    private static final double MOSTLY = 0.9;

    private static final int JUDGED_ROWS = 20_000; // ours: a minute or so of a fast logger

    /**
     * What is said about the time.
     *
     * @param column which of the table's columns it is, counted from 0
     * @param unit seconds per unit of its numbers
     */
    record Said(Optional<Integer> column, Optional<Double> unit) {}

    /** A column that may be the time. */
    private record Candidate(int column, ColumnHeading heading, CellText.Type type, double[] numbers, int distinct) {}

    TimeColumn {
        warnings = List.copyOf(warnings);
    }

    /**
     * Finds the time among the columns.
     *
     * @param headings per column of the table
     * @param types per column of the table
     * @param columns which of the table's columns were read
     * @param numbers their numbers
     * @param said overrides what headings and numbers tell
     * @return empty where no column tells time
     */
    static Optional<TimeColumn> find(
            List<ColumnHeading> headings,
            List<CellText.Type> types,
            List<Integer> columns,
            List<double[]> numbers,
            Said said) {
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            int column = columns.get(i);
            if (said.column().isPresent() && said.column().get() != column) {
                continue;
            }
            ColumnHeading heading = headings.get(column);
            boolean named = heading.role() == ColumnHeading.Role.TIME;
            boolean unnamed = heading.role() == ColumnHeading.Role.UNKNOWN;
            double[] values = numbers.get(i);
            if (types.get(column).stamp() || named || unnamed && rises(values) && !counts(values)) {
                int distinct = (int) Arrays.stream(values, 0, Math.min(values.length, JUDGED_ROWS))
                        .distinct()
                        .count();
                if (distinct > 1) {
                    candidates.add(new Candidate(column, heading, types.get(column), values, distinct));
                }
            }
        }
        boolean anyNamed = candidates.stream().anyMatch(TimeColumn::told);
        Optional<Candidate> best = candidates.stream()
                .filter(candidate -> !anyNamed || told(candidate))
                .max(Comparator.comparingInt(Candidate::distinct)
                        .thenComparing(
                                candidate -> candidate.heading().timeUnit().isPresent()
                                        || candidate.type().stamp())
                        .thenComparing(candidate -> -candidate.column()));
        return best.map(candidate -> of(candidate, candidates, said));
    }

    private static boolean told(Candidate candidate) {
        return candidate.type().stamp() || candidate.heading().role() == ColumnHeading.Role.TIME;
    }

    private static TimeColumn of(Candidate chosen, List<Candidate> candidates, Said said) {
        List<Warning> warnings = new ArrayList<>();
        Fact name = nameOf(chosen);
        if (!told(chosen)) {
            warnings.add(Warning.of(WarningCode.TIME_COLUMN_ASSUMED, Subject.Whole.RECORDING, name));
        }
        List<Value> others = candidates.stream()
                .filter(candidate -> candidate != chosen && told(candidate))
                .<Value>map(TimeColumn::nameOf)
                .toList();
        if (!others.isEmpty()) {
            warnings.add(Warning.of(WarningCode.OTHER_TIME_COLUMN, Subject.Whole.RECORDING, name, new Listed(others)));
        }
        if (chosen.type().stamp()) {
            if (said.unit().isPresent()) {
                warnings.add(Warning.of(WarningCode.TIME_UNIT_UNUSED, Subject.Whole.RECORDING, name));
            }
            return new TimeColumn(chosen.column(), 1, warnings);
        }
        double step = medianStep(chosen.numbers());
        Optional<Double> stated = said.unit().or(() -> chosen.heading().timeUnit());
        if (stated.isEmpty()) {
            double unit = plausibleUnit(median(chosen.numbers()), step);
            warnings.add(Warning.of(
                    WarningCode.TIME_UNIT_ASSUMED,
                    Subject.Whole.RECORDING,
                    name,
                    unitName(unit),
                    Measure.SAMPLE_RATE.of(1 / (step * unit))));
            return new TimeColumn(chosen.column(), unit, warnings);
        }
        double rateHz = 1 / (step * stated.get());
        if (rateHz < LOWEST_HZ / 10 || rateHz > 10 * HIGHEST_HZ) {
            warnings.add(Warning.of(
                    WarningCode.TIME_UNIT_DOUBTFUL,
                    Subject.Whole.RECORDING,
                    name,
                    unitName(stated.get()),
                    Measure.SAMPLE_RATE.of(rateHz)));
        }
        return new TimeColumn(chosen.column(), stated.get(), warnings);
    }

    private static Fact nameOf(Candidate candidate) {
        String name = candidate.heading().name();
        return name.isBlank()
                ? Fact.of(IntakeFact.COLUMN_NUMBER, new Count(candidate.column() + 1))
                : Fact.of(IntakeFact.COLUMN_NAME, new Quoted(name));
    }

    private static Fact unitName(double unit) {
        return Fact.of(
                unit == 1
                        ? IntakeFact.SECONDS
                        : unit == 1e-3
                                ? IntakeFact.MILLISECONDS
                                : unit == 1e-6 ? IntakeFact.MICROSECONDS : IntakeFact.NANOSECONDS);
    }

    /** The unit that makes the stamps a date of our days, else the one that makes the rate plausible. */
    private static double plausibleUnit(double usual, double step) {
        double[] units = {1, 1e-3, 1e-6, 1e-9};
        for (double unit : units) {
            double epochSeconds = Math.abs(usual) * unit;
            if (epochSeconds > 9e8 && epochSeconds < 5e9 && step * unit < LONGEST_STEP_S) {
                return unit;
            }
        }
        double best = 1;
        double least = Double.POSITIVE_INFINITY;
        for (double unit : units) {
            double rateHz = 1 / (step * unit);
            double off = Math.max(0, Math.max(Math.log(LOWEST_HZ / rateHz), Math.log(rateHz / HIGHEST_HZ)));
            if (off < least) {
                least = off;
                best = unit;
            }
        }
        return best;
    }

    /** Median of the steps ahead: those back are no steps of a clock. */
    private static double medianStep(double[] numbers) {
        double[] steps = IntStream.range(1, Math.min(numbers.length, JUDGED_ROWS))
                .mapToDouble(i -> numbers[i] - numbers[i - 1])
                .filter(step -> step > 0)
                .sorted()
                .toArray();
        return steps.length == 0 ? 1 : steps[steps.length / 2];
    }

    private static double median(double[] numbers) {
        double[] sorted = Arrays.stream(numbers, 0, Math.min(numbers.length, JUDGED_ROWS))
                .sorted()
                .toArray();
        return sorted[sorted.length / 2];
    }

    private static boolean rises(double[] numbers) {
        int rising = 0;
        int steps = Math.min(numbers.length, JUDGED_ROWS) - 1;
        for (int i = 1; i <= steps; i++) {
            if (numbers[i] > numbers[i - 1]) {
                rising++;
            }
        }
        return steps > 0 && rising >= MOSTLY * steps;
    }

    /** Whether the numbers are a count of rows: whole, and each one more than the one before. */
    static boolean counts(double[] numbers) {
        for (int i = 1; i < Math.min(numbers.length, JUDGED_ROWS); i++) {
            if (numbers[i] != numbers[i - 1] + 1) {
                return false;
            }
        }
        return numbers.length > 1 && numbers[0] == Math.rint(numbers[0]);
    }
}
