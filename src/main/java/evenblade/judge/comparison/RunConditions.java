package evenblade.judge.comparison;

import evenblade.base.units.FullScale;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What was noted about how a run was measured; what is empty is unknown, not different.
 *
 * @param sensor which one
 * @param place where it was fixed
 * @param direction which way it pointed
 * @param gain gain or range of the recorder
 * @param device what recorded it
 * @param fullScale what the largest sample stands for, as entered
 * @param wind as noted
 * @param temperature as noted
 * @param fuel as noted
 * @param nothingChanged whether it was looked into and said that nothing was changed since the run before
 */
public record RunConditions(
        Optional<String> sensor,
        Optional<String> place,
        Optional<String> direction,
        Optional<String> gain,
        Optional<String> device,
        Optional<FullScale> fullScale,
        Optional<String> wind,
        Optional<String> temperature,
        Optional<String> fuel,
        boolean nothingChanged) {
    private static final Pattern MICROPHONE = Pattern.compile("(.*\\W)?(mic|microphone|mike)s?(\\W.*)?");
    private static final Pattern BLANKS = Pattern.compile("\\s+");

    /** Nothing noted. */
    public static final RunConditions UNKNOWN = new RunConditions(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            false);

    /** Whether the sensor is noted to be a microphone. */
    public boolean microphone() {
        return mentionsMicrophone(sensor) || mentionsMicrophone(device);
    }

    /** Whether the gain is noted to set itself. */
    boolean automaticGain() {
        return gain.filter(text -> plain(text).startsWith("auto") || plain(text).contains(" auto"))
                .isPresent();
    }

    /** Whether both are noted and say the same, capitals and blanks apart. */
    static boolean same(Optional<String> one, Optional<String> other) {
        return one.isPresent() && other.isPresent() && plain(one.get()).equals(plain(other.get()));
    }

    /** Whether both are noted and don't say the same. */
    static boolean differ(Optional<String> one, Optional<String> other) {
        return one.isPresent() && other.isPresent() && !same(one, other);
    }

    private static boolean mentionsMicrophone(Optional<String> text) {
        return text.filter(t -> MICROPHONE.matcher(plain(t)).matches()).isPresent();
    }

    private static String plain(String text) {
        return BLANKS.matcher(text.strip()).replaceAll(" ").toLowerCase(Locale.ROOT);
    }
}
