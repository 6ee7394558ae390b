package evenblade.rig;

/**
 * One thing wrong with a machine.
 *
 * @param size in the unit of its kind (see {@link Kind})
 * @param place blade or cylinder number from 0, or an angle in rad, as the kind has it
 */
public record Fault(Kind kind, double size, double place) {

    /** Kinds, with the unit of the size, what place means, and the range that random sizes are drawn from. */
    public enum Kind {
        /** Propeller unbalance, kg·m; place: angle of the heavy side. */
        PROPELLER_MASS(0.0003, 0.0015),
        /** One blade's tip out of track, m, forward positive; place: blade. */
        TRACK(0.003, 0.010),
        /** One blade's pitch too high, rad; place: blade. 0.4–1.5°. */
        PITCH(0.007, 0.026),
        /** Face run-out of the flange, m full reading at 50 mm; place: angle of the high spot. */
        FLANGE_RUN_OUT(0.00005, 0.0002),
        /** One cylinder weaker by this share; place: cylinder in firing sequence. */
        WEAK_CYLINDER(0.15, 0.6),
        /** Crank or flywheel unbalance, kg·m; place: angle. */
        CRANK_MASS(0.0001, 0.0004),
        /** Every second firing stronger, the others weaker by this share (0.05: ± 5 %); place: not used. */
        CARBURETTORS(0.05, 0.2),
        /** Wheel of the drive out of true: size is modulation of the mesh (share); place 0: driven wheel, 1: driving. */
        DRIVE(0.3, 1.0),
        /** Mounts so stiff that propeller 1× meets a resonance at this share of maximum rpm; place: not used. */
        MOUNT_RESONANCE(0.45, 0.85),
        /** One mount loose and knocking once in two crank turns; size: share of {@link EngineForces#knock}; place: mount. */
        LOOSE_MOUNT(0.1, 0.5);

        final double least;
        final double most;

        Kind(double least, double most) {
            this.least = least;
            this.most = most;
        }
    }

    /** Size and place by chance within the kind's range (sizes: from memory and by judgement, no source). */
    public static Fault random(Kind kind, Machine machine, long seed) {
        Dice dice = new Dice(seed).fork(81 + kind.ordinal());
        double size = dice.logUniform(kind.least, kind.most);
        double place =
                switch (kind) {
                    case PROPELLER_MASS, FLANGE_RUN_OUT, CRANK_MASS -> dice.angle();
                    case TRACK, PITCH -> dice.between(0, machine.blades() - 1);
                    case WEAK_CYLINDER -> dice.between(0, machine.cylinders() - 1);
                    case DRIVE -> dice.between(0, 1);
                    case LOOSE_MOUNT -> dice.between(0, 3);
                    case CARBURETTORS, MOUNT_RESONANCE -> 0;
                };
        boolean negative = (kind == Kind.TRACK || kind == Kind.PITCH) && dice.chance(0.5);
        return new Fault(kind, negative ? -size : size, place);
    }
}
