package evenblade.tell.report;

import evenblade.base.units.LengthUnit;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.HubWeight;
import evenblade.keep.job.JobRecord;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Which unit of length a report gives first; the other stands beside it. */
public final class UnitsOfJob {
    private static final String METRIC = "metric";
    private static final String INCH = "inch";
    private static final Pattern IN_INCHES = Pattern.compile("\\d\\s*(in|inch|inches|\")(?![\\p{L}])");

    private UnitsOfJob() {}

    /** The words for both. */
    public static List<String> words() {
        return List.of(METRIC, INCH);
    }

    /** The unit of a word, capitals or not; empty for any other word. */
    public static Optional<LengthUnit> named(String word) {
        return switch (word.toLowerCase(Locale.ROOT)) {
            case METRIC -> Optional.of(LengthUnit.MILLIMETRE);
            case INCH -> Optional.of(LengthUnit.INCH);
            default -> Optional.empty();
        };
    }

    /** The word of a unit. */
    public static String word(LengthUnit unit) {
        return unit == LengthUnit.INCH ? INCH : METRIC;
    }

    /** That in which most static readings and balance weights of a job were entered; millimetres where there are none or as many of each. */
    public static LengthUnit of(JobRecord record) {
        List<String> entered = record.standing().stream()
                .map(Event::detail)
                .flatMap(detail -> entered(detail).stream())
                .toList();
        long inches =
                entered.stream().filter(text -> IN_INCHES.matcher(text).find()).count();
        return 2 * inches > entered.size() ? LengthUnit.INCH : LengthUnit.MILLIMETRE;
    }

    private static Optional<String> entered(Detail detail) {
        if (detail instanceof Detail.Tracking tracking) {
            return Optional.of(tracking.readings());
        }
        if (detail instanceof Detail.Balance balance) {
            return balance.on().map(HubWeight::radius);
        }
        return detail instanceof Detail.RunOut runOut ? Optional.of(runOut.total()) : Optional.empty();
    }
}
