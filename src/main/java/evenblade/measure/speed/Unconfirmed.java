package evenblade.measure.speed;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Recording;
import java.util.List;
import java.util.Optional;

/** The answer where the signal doesn't bear a speed out. */
final class Unconfirmed {
    private Unconfirmed() {}

    /**
     * The entered speed, constant over the recording and marked as not confirmed; without one, the
     * middle of the range looked at, and no dwell at all.
     */
    static SpeedResult result(Recording recording, SpeedPrior expectation, Fact doubt, SpeedResult.Origin origin) {
        double from = recording.time().at(0);
        double to = from + recording.time().durationS();
        Warning warning = Warning.of(
                WarningCode.SPEED_NOT_CONFIRMED, Subject.Whole.RECORDING, Fact.of(SpeedFact.NOT_CONFIRMED, doubt));
        boolean entered = expectation.enteredPropellerHz().isPresent();
        double hz = expectation.entered().orElse(Math.sqrt(expectation.fromHz() * expectation.toHz()));
        double error = (expectation.toHz() - expectation.fromHz()) / Math.sqrt(12);
        Dwell whole = new Dwell(from, to, hz, error, expectation.fromHz(), expectation.toHz());
        return new SpeedResult(
                origin,
                false,
                Optional.of(doubt),
                KnotTrack.constant(hz, from, to),
                entered ? Optional.of(whole) : Optional.empty(),
                entered ? List.of(whole) : List.of(),
                0,
                List.of(warning));
    }
}
