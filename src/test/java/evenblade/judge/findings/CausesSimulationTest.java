package evenblade.judge.findings;

import evenblade.rig.Fault;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The rules on machines of a rig whose makers didn't see them. */
@Tag("long")
class CausesSimulationTest {
    static final Map<Fault.Kind, Cause> MEANT = Map.of(
            Fault.Kind.PROPELLER_MASS, Cause.MASS,
            Fault.Kind.TRACK, Cause.TRACK,
            Fault.Kind.PITCH, Cause.PITCH,
            Fault.Kind.FLANGE_RUN_OUT, Cause.FLANGE,
            Fault.Kind.WEAK_CYLINDER, Cause.WEAK_CYLINDER,
            Fault.Kind.CRANK_MASS, Cause.CRANK,
            Fault.Kind.CARBURETTORS, Cause.CARBURETTORS,
            Fault.Kind.DRIVE, Cause.DRIVE,
            Fault.Kind.MOUNT_RESONANCE, Cause.RESONANCE,
            Fault.Kind.LOOSE_MOUNT, Cause.LOOSE_MOUNT);

    @Test
    void look() {
        long from = Long.getLong("rig.from", 1);
        long to = Long.getLong("rig.to", 30);
        boolean loud = Boolean.getBoolean("rig.loud");
        for (boolean still : List.of(true, false)) {
            int all = 0;
            int allRight = 0;
            int allWrong = 0;
            for (Fault.Kind kind : Fault.Kind.values()) {
                int n = 0;
                int right = 0;
                int wrong = 0;
                List<String> told = new ArrayList<>();
                for (long seed = from; seed <= to; seed++) {
                    if (!RigCase.possible(seed, kind)) {
                        continue;
                    }
                    RigCase one = RigCase.of(seed, List.of(kind));
                    List<Finding> findings = one.findings(still);
                    n++;
                    boolean ok = !findings.isEmpty() && findings.get(0).cause() == MEANT.get(kind);
                    right += ok ? 1 : 0;
                    boolean bad = findings.stream()
                            .anyMatch(f -> f.sureness().confident()
                                    && f.cause() != MEANT.get(kind)
                                    && f.cause() != Cause.INSEPARABLE
                                    && f.cause() != Cause.UNTOLD);
                    wrong += bad ? 1 : 0;
                    if (!ok || bad) {
                        StringBuilder line = new StringBuilder("   " + seed + " " + one.installation().engine().cycle() + one.installation().engine().cylinders() + " " + one.faults().get(0).size());
                        for (Finding f : findings) {
                            line.append(" ").append(f.cause()).append(Math.round(100 * f.sureness().share())).append(f.carried().map(c -> String.format(Locale.ROOT, "(%.1f)", c.mmS())).orElse(""));
                        }
                        told.add(line.toString());
                    }
                }
                System.out.printf(Locale.ROOT, "%s %s %d: right %d wrong %d%n", still ? "still" : "run", kind, n, right, wrong);
                if (loud) {
                    told.forEach(System.out::println);
                }
                all += n;
                allRight += right;
                allWrong += wrong;
            }
            System.out.printf(Locale.ROOT, "%s ALL %d: right %d wrong %d%n", still ? "still" : "run", all, allRight, allWrong);
        }
    }
}
