package evenblade.tell.report;

import evenblade.judge.findings.Finding;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;

/** How often a cause shakes, as a customer would say it, and which line shows it. */
enum HowOften {
    PROPELLER_ONCE("once per propeller turn") {
        @Override
        boolean shownBy(OrderLine line) {
            return line.propellerOnce();
        }
    },
    CRANK_ONCE("once per turn of the engine") {
        @Override
        boolean shownBy(OrderLine line) {
            return line.of() == Shaft.CRANK && line.role() != OrderLine.Role.MESH && same(line.order(), 1);
        }
    },
    CRANK_HALF("once in two turns of the engine") {
        @Override
        boolean shownBy(OrderLine line) {
            return line.of() == Shaft.CRANK && line.role() == OrderLine.Role.HALF_CRANK && same(line.order(), 0.5);
        }
    },
    MESH("at every tooth of the drive") {
        @Override
        boolean shownBy(OrderLine line) {
            return line.role() == OrderLine.Role.MESH;
        }
    },
    /** A beat that has no line of its own in the table. */
    OTHER("at several beats at once") {
        @Override
        boolean shownBy(OrderLine line) {
            return false;
        }
    };

    /** Orders are multiples of a quarter at most: nearer than this they are the same. */
    private static final double SAME_ORDER = 1e-9;

    private final String words;

    HowOften(String words) {
        this.words = words;
    }

    /** Goes on after "it shakes". */
    String words() {
        return words;
    }

    /** Whether a line shows this beat. */
    abstract boolean shownBy(OrderLine line);

    private static boolean same(double a, double b) {
        return Math.abs(a - b) < SAME_ORDER;
    }

    /** The beat of what a finding is about. */
    static HowOften of(Finding finding, Engine engine) {
        return switch (finding.cause()) {
            case MASS, TRACK, PITCH, FLANGE, BLADE, RESONANCE -> PROPELLER_ONCE;
            case WEAK_CYLINDER -> engine.cycle() == Engine.Cycle.FOUR_STROKE ? CRANK_HALF : CRANK_ONCE;
            case CRANK, CARBURETTORS -> CRANK_ONCE;
            case DRIVE -> MESH;
            case LOOSE_MOUNT, RECORDING, INSEPARABLE, THROB, UNTOLD, NOTHING -> OTHER;
        };
    }
}
