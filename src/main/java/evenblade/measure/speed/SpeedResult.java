package evenblade.measure.speed;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import java.util.List;
import java.util.Optional;

/**
 * The propeller's speed over a recording and how it is known.
 *
 * @param origin where the speed comes from
 * @param confirmed whether the signal (or the mark) bears it out
 * @param doubt why it isn't confirmed; empty where it is
 * @param track speed and angle over time
 * @param main the longest dwell, or the whole recording where the speed never settles; empty where no
 *     speed is known at all
 * @param dwells in order of time; may be empty
 * @param ratioCorrection share by which the lines show the reduction ratio to be larger than entered
 * @param warnings what to know about it
 */
public record SpeedResult(
        Origin origin,
        boolean confirmed,
        Optional<Fact> doubt,
        SpeedTrack track,
        Optional<Dwell> main,
        List<Dwell> dwells,
        double ratioCorrection,
        List<Warning> warnings) {
    /** Where a speed comes from. */
    public enum Origin {
        SIGNAL("signal"),
        MARK("mark"),
        ENTERED("entered");

        private final String word;

        Origin(String word) {
            this.word = word;
        }

        /** As written in JSON. */
        public String word() {
            return word;
        }
    }

    public SpeedResult {
        dwells = List.copyOf(dwells);
        warnings = List.copyOf(warnings);
    }
}
