package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;
import static evenblade.judge.findings.PropellerOnceFeatures.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Crank 1× alone, with the same size level and upright: mass of crank or flywheel. */
final class CrankRule implements Rule {
    /** Upright over level of crank 1×, over that of firing: from here on it isn't gas torque. */
    private static final double NOT_AS_FIRING = 1.6;

    @Override
    public Cause cause() {
        return Cause.CRANK;
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        EngineFeatures engine = EngineFeatures.of(stage);
        Optional<EvidenceItem> raised = raised(engine);
        if (raised.isEmpty()) {
            return Optional.empty();
        }
        List<EvidenceItem> pieces = new ArrayList<>(List.of(raised.get()));
        engine.uprightOfCrankAgainstFiring().ifPresent(r -> pieces.add(direction(r, 2, -4)));
        pieces.addAll(uneven(engine));
        return Optional.of(new Assessment(
                "Crank 1× points to a mass imbalance of crank, flywheel or rotor.",
                pieces,
                false,
                engine.overFiring(1).orElse(0),
                engine.uprightOfCrankAgainstFiring().isPresent()
                        ? "Check flywheel and prop hub bolts on the crank side; set the carburettors in step first, as"
                                + " that is the cheaper test."
                        : "Measure level and upright across the shaft in one run: alike speaks for crank mass, shaped"
                                + " like firing for carburettors or a cylinder."));
    }

    /** That crank 1× is large enough to be looked at. */
    static Optional<EvidenceItem> raised(EngineFeatures engine) {
        OptionalDouble share = engine.overFiring(1);
        Optional<OrderObservation> most = engine.crank(1).detected().strongest();
        if (share.isPresent() && most.isPresent() && share.getAsDouble() >= Thresholds.CRANK_OVER_FIRING) {
            return Optional.of(running(
                    3,
                    text(
                            "crank 1× is %.0f %% of %s, %s at most %s",
                            100 * share.getAsDouble(),
                            engine.firingName(),
                            most.get().size(),
                            most.get().where())));
        }
        Optional<OrderObservation> fastest = engine.crank(1).detected().fastest();
        if (!engine.severalCylinders()
                && fastest.isPresent()
                && fastest.get().velocityMmS().getAsDouble() >= Thresholds.CRANK_MM_S) {
            return Optional.of(running(
                    5,
                    text(
                            "motor 1× is %s (%.1f mm/s peak) %s",
                            fastest.get().size(),
                            fastest.get().velocityMmS().getAsDouble(),
                            fastest.get().where())));
        }
        return Optional.empty();
    }

    /**
     * Which way crank 1× shakes, compared with firing.
     *
     * @param ratio upright over level of crank 1×, over that of firing
     * @param mass points where it isn't like firing
     * @param gas points where it is
     */
    static EvidenceItem direction(double ratio, int mass, int gas) {
        boolean isMass = ratio > NOT_AS_FIRING || ratio < 1 / NOT_AS_FIRING;
        return running(
                isMass ? mass : gas,
                text(
                        "upright over level, crank 1× is %.1f times as upright as firing: %s",
                        ratio, isMass ? "not shaped like gas torque" : "shaped like gas torque"));
    }

    /** Signs that the cylinders themselves differ. */
    private static List<EvidenceItem> uneven(EngineFeatures engine) {
        List<EvidenceItem> pieces = new ArrayList<>();
        OptionalDouble half = engine.weakOrder() < 1 ? engine.overFiring(0.5) : OptionalDouble.empty();
        OptionalDouble third = engine.overFiring(3);
        if (half.orElse(0) > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(-3, text("crank ½× is there too: %.0f %% of firing", 100 * half.getAsDouble())));
        }
        if (third.orElse(0) > Thresholds.HALF_OVER_FIRING) {
            pieces.add(running(-2, text("crank 3× is there too: %.0f %% of firing", 100 * third.getAsDouble())));
        } else if (engine.severalCylinders()) {
            pieces.add(running(1, "no other crank order between the firing orders stands out"));
        }
        return pieces;
    }
}
