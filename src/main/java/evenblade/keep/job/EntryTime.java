package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;

/** Reads the time that a user gives for an entry. */
public final class EntryTime {
    private static final DateTimeFormatter FORM =
            DateTimeFormatter.ofPattern("uuuu-MM-dd[['T'][' ']HH:mm[:ss[.SSS]][XXX]]", Locale.ROOT);

    /** Before any engine of this kind, and beyond anybody who reads this. */
    private static final int EARLIEST_YEAR = 1900;

    private static final int LATEST_YEAR = 2200; // a mistyped year shows

    private EntryTime() {}

    static boolean likely(OffsetDateTime at) {
        return at.getYear() >= EARLIEST_YEAR && at.getYear() <= LATEST_YEAR;
    }

    /** Refuses a year that no entry can have. */
    static void requireLikely(OffsetDateTime at, BadInput.Place place) {
        if (!likely(at)) {
            throw place.found("the year " + at.getYear(), "a year from " + EARLIEST_YEAR + " to " + LATEST_YEAR);
        }
    }

    /**
     * Reads {@code 2026-05-04T10:30:00+02:00}, {@code 2026-05-04T08:30Z}, {@code 2026-05-04 10:30} or
     * {@code 2026-05-04}; a time without an offset is one of the given zone, a day without a time its
     * noon.
     *
     * @throws BadInput at the place, where it is anything else
     */
    public static OffsetDateTime parse(String text, ZoneId zone, BadInput.Place place) {
        try {
            TemporalAccessor read =
                    FORM.parseBest(text.strip(), OffsetDateTime::from, LocalDateTime::from, LocalDate::from);
            if (read instanceof OffsetDateTime time) {
                return time;
            }
            LocalDateTime local = read instanceof LocalDateTime time
                    ? time
                    : LocalDate.from(read).atTime(12, 0);
            return ZonedDateTime.of(local, zone).toOffsetDateTime();
        } catch (DateTimeException e) {
            throw place.found("\"" + text + "\"", "a time like 2026-05-04T10:30:00+02:00");
        }
    }
}
