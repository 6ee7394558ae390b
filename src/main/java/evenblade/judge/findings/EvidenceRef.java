package evenblade.judge.findings;

import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.machine.installation.OrderLine;
import java.util.Optional;
import java.util.OptionalDouble;

/** Where a piece of evidence can be seen. */
public sealed interface EvidenceRef {
    /** What there is one page of. */
    enum Whole implements EvidenceRef {
        /** All runs, one after the other. */
        ALL_RUNS,
        /** All tip marks together. */
        TIP_MARKS,
        /** The latest reading of blade angles. */
        BLADE_ANGLES,
        /** The latest reading of the flange's face. */
        FACE_RUN_OUT
    }

    /** Which side of a run shows it. */
    enum Side {
        ORDERS,
        SPECTRUM,
        SPEED,
        REMARKS
    }

    /**
     * A run.
     *
     * @param id of its entry
     * @param side that shows it
     * @param engineRpm of the dwell, where it is of one dwell
     * @param direction that the channel feels, where it is of one channel
     * @param line where it is of one line
     */
    record Run(String id, Side side, OptionalDouble engineRpm, Optional<Direction> direction, Optional<OrderLine> line)
            implements EvidenceRef {
        static Run of(String id, Side side) {
            return new Run(id, side, OptionalDouble.empty(), Optional.empty(), Optional.empty());
        }
    }
}
