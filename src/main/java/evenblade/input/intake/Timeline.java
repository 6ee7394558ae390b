package evenblade.input.intake;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.Warning;
import evenblade.input.recording.StampQuality;
import evenblade.input.recording.Stretch;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntUnaryOperator;

/**
 * The times of a table: one stretch per clock that was followed, laid one behind the other.
 *
 * <p>Not a record, because it holds arrays; nobody changes them after {@link #of}.
 */
final class Timeline {
    /** Between two stretches of which nobody knows how far they lie apart. */
    private static final double UNKNOWN_GAP_S = 1;
    /** A clock that jumps ahead further than this was set; the time between isn't believed. */
    private static final double MOST_BELIEVED_S = 60;
    /** Fewer rows make no stretch. */
    private static final int LEAST_ROWS = 32;
    /** Steps of the clock that are told one by one. */
    private static final int MOST_TOLD = 3;

    private final double[] seconds;
    private final int[] rows;
    private final double rateHz;
    private final StampQuality quality;
    private final List<Stretch> stretches;
    private final List<Warning> warnings;

    private Timeline(
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
     * @throws BadInput where no clock can be made out, or none for a second
     */
    static Timeline of(
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
        List<Warning> warnings = new ArrayList<>(ClockWarnings.of(found, kept.size(), lineOf));
        return laid(kept, stamps, found, warnings);
    }

    private static BadInput tooShort(ClockTrack.Found found, BadInput.Place place, IntUnaryOperator lineOf) {
        double longest = found.runs().stream()
                .mapToDouble(ClockTrack.Run::durationS)
                .max()
                .orElse(0);
        List<ClockTrack.Step> ends =
                found.steps().stream().filter(step -> !step.carriedOn()).toList();
        String longestText = String.format(Locale.ROOT, longest < 0.1 || longest >= 0.95 ? "%.3f s" : "%.1f s", longest);
        return ends.isEmpty()
                ? place.found(longestText + " of signal", "at least 1 s")
                : place.line(lineOf.applyAsInt(ends.get(0).row()))
                        .found(
                                "a clock that steps " + ends.size() + " times, with " + longestText
                                        + " between at most",
                                "at least 1 s of signal with one clock");
    }

    private static Timeline laid(
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
        warnings.addAll(ClockWarnings.counted(quality));
        warnings.addAll(main.warnings());
        return new Timeline(seconds, rows, main.rateHz(), quality, stretches, warnings);
    }

    private static double durationS(Stamps stamps) {
        return stamps.seconds()[stamps.seconds().length - 1];
    }

    /** What happened to the clock, for the reader of a result. */
    static final class ClockWarnings {
        private ClockWarnings() {}

        static List<Warning> of(ClockTrack.Found found, int kept, IntUnaryOperator lineOf) {
            List<Warning> warnings = new ArrayList<>();
            found.wrapS()
                    .ifPresent(length -> warnings.add(new Warning(
                            "counter-wraps",
                            String.format(
                                    Locale.ROOT,
                                    "the counter of time begins anew every %s s; it was taken to go on",
                                    length == Math.rint(length)
                                            ? String.format(Locale.ROOT, "%.0f", length)
                                            : String.valueOf((float) length)))));
            if (!found.leftOut().isEmpty()) {
                warnings.add(new Warning(
                        "stamps-left-out",
                        String.format(
                                Locale.ROOT,
                                "%d stamps fit neither the rows before nor those behind and were left out; the first is"
                                        + " in line %d",
                                found.leftOut().size(),
                                lineOf.applyAsInt(found.leftOut().get(0)))));
            }
            if (!found.standing().isEmpty()) {
                warnings.add(new Warning(
                        "clock-stands",
                        String.format(
                                Locale.ROOT,
                                "the time stands still in %d rows from line %d on; they were left out",
                                found.standing().size(),
                                lineOf.applyAsInt(found.standing().get(0)))));
            }
            List<ClockTrack.Step> carried =
                    found.steps().stream().filter(ClockTrack.Step::carriedOn).toList();
            if (!carried.isEmpty()) {
                warnings.add(new Warning(
                        "clock-stepped",
                        "the clock steps by " + listed(carried, lineOf)
                                + "; the signal goes on without a break there, so the time was carried on"));
            }
            List<ClockTrack.Step> breaks =
                    found.steps().stream().filter(step -> !step.carriedOn()).toList();
            if (!breaks.isEmpty()) {
                warnings.add(new Warning(
                        "clock-broken",
                        "the clock steps by " + listed(breaks, lineOf) + "; the recording falls into " + kept
                                + (kept == 1 ? " stretch" : " stretches") + " of at least 1 s there"));
            }
            return warnings;
        }

        static List<Warning> counted(StampQuality quality) {
            List<Warning> warnings = new ArrayList<>();
            if (quality.doubled() > 0) {
                warnings.add(new Warning(
                        "stamps-doubled", quality.doubled() + " rows repeat a stamp and were left out"));
            }
            if (quality.gaps() > 0) {
                warnings.add(new Warning(
                        "gaps",
                        String.format(
                                Locale.ROOT,
                                "%d gaps of more than three steps, %.2f s missing in all",
                                quality.gaps(),
                                quality.lostS())));
            }
            return warnings;
        }

        private static String listed(List<ClockTrack.Step> steps, IntUnaryOperator lineOf) {
            List<String> words = new ArrayList<>();
            for (ClockTrack.Step step : steps.subList(0, Math.min(MOST_TOLD, steps.size()))) {
                words.add(String.format(
                        Locale.ROOT, "%+.4g s at line %d", step.stepS(), lineOf.applyAsInt(step.row())));
            }
            int more = steps.size() - words.size();
            return String.join(", ", words) + (more > 0 ? " and " + more + " times more" : "");
        }
    }
}
