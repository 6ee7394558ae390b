package evenblade.input.intake;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.numeric.RobustLine;
import evenblade.base.problem.BadInput;
import evenblade.input.recording.StampQuality;
import evenblade.input.recording.Stretch;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;

/**
 * The times of a table: one stretch per clock that was followed, laid one behind the other.
 *
 * <p>Not a record, because it holds arrays; nobody changes them after {@link #of}.
 */
final class TableTimes {
    /** Between two stretches of which nobody knows how far they lie apart. */
    private static final double UNKNOWN_GAP_S = 1;
    /** A clock that jumps ahead further than this was set; the time between isn't believed. */
    private static final double MOST_BELIEVED_S = 60;
    /** Fewer rows make no stretch. */
    private static final int LEAST_ROWS = 32;

    private final double[] seconds;
    private final int[] rows;
    private final double rateHz;
    private final StampQuality quality;
    private final List<Stretch> stretches;
    private final List<Warning> warnings;

    private TableTimes(
            double[] seconds,
            int[] rows,
            double rateHz,
            StampQuality quality,
            List<Stretch> stretches,
            List<Warning> warnings) {
        this.seconds = seconds;
        this.rows = rows;
        this.rateHz = rateHz;
        this.quality = quality;
        this.stretches = List.copyOf(stretches);
        this.warnings = List.copyOf(warnings);
    }

    /** Rising, in seconds from the first. */
    double[] seconds() {
        return seconds;
    }

    /** For each time, the row it belongs to; rising. */
    int[] rows() {
        return rows;
    }

    /** Of the longest stretch. */
    double rateHz() {
        return rateHz;
    }

    StampQuality quality() {
        return quality;
    }

    List<Stretch> stretches() {
        return stretches;
    }

    List<Warning> warnings() {
        return warnings;
    }

    /**
     * Makes out the times.
     *
     * @param raw stamps in seconds in the order of the file, at least 2
     * @param values the value columns, as long
     * @param clock whether the stamps are times of day
     * @param place what to complain about
     * @param lineOf the line of the file of each row
     * @param arrivals file that tells when each line came in, where it was recorded here
     * @throws BadInput where no clock can be made out, or none for a second
     */
    static TableTimes of(
            double[] raw,
            List<double[]> values,
            boolean clock,
            BadInput.Place place,
            IntUnaryOperator lineOf,
            Optional<Path> arrivals) {
        Optional<RobustLine> came = arrivals.flatMap(file -> ArrivalLine.through(file, raw.length, lineOf));
        try {
            TableTimes own = of(raw, values, clock, place, lineOf);
            return own.stretches.size() == 1
                    ? own
                    : came.map(line -> arrived(line, raw.length, lineOf)).orElse(own);
        } catch (BadInput e) {
            return came.map(line -> arrived(line, raw.length, lineOf)).orElseThrow(() -> e);
        }
    }

    /** Times by the arrivals alone, for stamps that can't be used or break the recording into pieces. */
    private static TableTimes arrived(RobustLine line, int size, IntUnaryOperator lineOf) {
        int[] rows = IntStream.range(0, size).toArray();
        double firstS = line.at(lineOf.applyAsInt(0));
        double[] seconds = Arrays.stream(rows)
                .mapToDouble(row -> line.at(lineOf.applyAsInt(row)) - firstS)
                .toArray();
        StampQuality quality = new StampQuality(line.slope(), 0, 0, 0, 0, 0);
        Warning told = Warning.of(
                WarningCode.TIMES_FROM_ARRIVALS, Subject.Whole.RECORDING, Measure.FREQUENCY.of(1 / line.slope()));
        return new TableTimes(
                seconds, rows, 1 / line.slope(), quality, List.of(new Stretch(0, seconds[size - 1])), List.of(told));
    }

    private static TableTimes of(
            double[] raw, List<double[]> values, boolean clock, BadInput.Place place, IntUnaryOperator lineOf) {
        ClockTrack.Found found = ClockTrack.follow(raw, values, clock, place, lineOf);
        List<ClockTrack.Run> kept = found.runs().stream()
                .filter(run -> run.rows().length >= LEAST_ROWS && run.durationS() >= SignalChecks.LEAST_SECONDS)
                .toList();
        if (kept.isEmpty()) {
            throw tooShort(found, place, lineOf);
        }
        SignalSeam signal = SignalSeam.of(values);
        List<Stamps> stamps = kept.stream()
                .map(run -> Stamps.of(run, values, signal, place, lineOf))
                .toList();
        List<Warning> warnings = new ArrayList<>(ClockWarnings.of(found, kept.size(), raw.length, lineOf));
        return laid(kept, stamps, found, warnings);
    }

    private static BadInput tooShort(ClockTrack.Found found, BadInput.Place place, IntUnaryOperator lineOf) {
        double longest = found.runs().stream()
                .mapToDouble(ClockTrack.Run::durationS)
                .max()
                .orElse(0);
        List<ClockTrack.Step> ends =
                found.steps().stream().filter(step -> !step.carriedOn()).toList();
        String longestText =
                String.format(Locale.ROOT, longest < 0.1 || longest >= 0.95 ? "%.3f s" : "%.1f s", longest);
        return ends.isEmpty()
                ? place.found(longestText + " of signal", "at least 1 s")
                : place.line(lineOf.applyAsInt(ends.get(0).row()))
                        .found(
                                "a clock that steps " + ends.size() + " times, with " + longestText
                                        + " between at most",
                                "at least 1 s of signal with one clock");
    }

    private static TableTimes laid(
            List<ClockTrack.Run> runs, List<Stamps> stamps, ClockTrack.Found found, List<Warning> warnings) {
        int size = stamps.stream().mapToInt(each -> each.rows().length).sum();
        double[] seconds = new double[size];
        int[] rows = new int[size];
        List<Stretch> stretches = new ArrayList<>();
        int at = 0;
        double fromS = 0;
        int longest = 0;
        int left = found.leftOut().size();
        int doubled = 0;
        int gaps = 0;
        double lostS = 0;
        for (int i = 0; i < stamps.size(); i++) {
            Stamps each = stamps.get(i);
            double[] own = each.seconds();
            if (i > 0) {
                double step = runs.get(i).stepBeforeS();
                double between = step > 0 && step <= MOST_BELIEVED_S ? step : UNKNOWN_GAP_S;
                fromS = stretches.get(i - 1).toS() + between;
                lostS += step > 0 && step <= MOST_BELIEVED_S ? step : 0;
                gaps++;
            }
            for (int k = 0; k < own.length; k++) {
                seconds[at + k] = fromS + own[k];
                rows[at + k] = each.rows()[k];
            }
            at += own.length;
            stretches.add(new Stretch(fromS, seconds[at - 1]));
            longest = own[own.length - 1] > durationS(stamps.get(longest)) ? i : longest;
            left += each.quality().unsorted();
            doubled += each.quality().doubled();
            gaps += each.quality().gaps();
            lostS += each.quality().lostS();
        }
        Stamps main = stamps.get(longest);
        StampQuality quality = new StampQuality(
                main.quality().medianStepS(), main.quality().jitterShare(), gaps, lostS, left, doubled);
        warnings.addAll(ClockWarnings.counted(quality, size + left + doubled));
        warnings.addAll(main.warnings());
        return new TableTimes(seconds, rows, main.rateHz(), quality, stretches, warnings);
    }

    private static double durationS(Stamps stamps) {
        return stamps.seconds()[stamps.seconds().length - 1];
    }
}
