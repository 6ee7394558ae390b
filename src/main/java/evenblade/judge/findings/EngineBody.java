package evenblade.judge.findings;

import evenblade.base.numeric.Phasor;
import evenblade.base.units.Length;
import evenblade.machine.installation.SensorPlace;
import java.util.Optional;
import java.util.Random;

/**
 * One engine with its propeller as it could be: a rigid body of mass 1 on two pairs of mounts alike left and right; origin
 * at the centre of gravity, x ahead, y right, z up. (K(1 + jη) − ω²M)·q = F falls into two sets of three: (x, z, pitching)
 * and (y, rolling, yawing). The ranges are our own judgement of what small aero engines are (no source), wide on purpose:
 * the answer is only trusted where most of them agree.
 */
record EngineBody(double[] radii, double[][] mounts, double loss, double[] disc, double[] sensor) {
    /** Error of a place that somebody entered roughly, m. */
    private static final double ROUGHLY_M = 0.03;

    /** Up to here the mounts are soft: they stay below propeller 1× of a run. */
    private static final double SOFT_HZ = 14;

    /** The stiffest mounts: above any propeller 1× of a run (by judgement, no source). */
    private static final double STIFF_HZ = 60;

    /** A body by chance. */
    static EngineBody random(Random dice, boolean soft, Optional<SensorPlace.OnEngine> entered) {
        // Radii of gyration round the three axes, m.
        double[] radii = {between(dice, 0.12, 0.22), between(dice, 0.19, 0.31), between(dice, 0.19, 0.31)};
        // The middle of the mounts from the centre of gravity, m: about under it, or lower.
        double middleX = between(dice, -0.05, 0.05);
        double middleZ = between(dice, -0.2, 0); // as above
        // Half the distance of the mounts lengthwise and sideways, m.
        double apart = between(dice, 0.08, 0.25);
        double half = between(dice, 0.1, 0.25); // as above
        // Bounce frequency, even over its logarithm: f = √(Σk/m)/2π.
        double hz = soft
                // The softest mounts bounce at 6 Hz (by judgement, no source).
                ? 6 * Math.pow(SOFT_HZ / 6, dice.nextDouble())
                : SOFT_HZ * Math.pow(STIFF_HZ / SOFT_HZ, dice.nextDouble());
        double all = Math.pow(2 * Math.PI * hz, 2);
        // Stiffness along and across against that up and down: rubber shears more easily than it is pressed.
        double lengthwise = between(dice, 0.5, 1.3);
        double sideways = between(dice, 0.5, 1.1); // as above
        double[][] mounts = new double[2][];
        for (int i = 0; i < 2; i++) {
            // Mounts of one kind differ by some 15 %.
            double k = all / 2 * between(dice, 0.85, 1.15);
            mounts[i] =
                    new double[] {middleX + (i == 0 ? apart : -apart), half, middleZ, k * lengthwise, k * sideways, k};
        }
        // The disc ahead of and above the centre of gravity, m.
        double[] disc = {between(dice, 0.35, 0.65), 0, between(dice, 0, 0.14)};
        // The sensor: on the engine where nothing is known, m.
        double[] sensor = entered.map(place -> new double[] {
                    middleX + rough(dice, place.ahead()),
                    between(dice, -0.12, 0.12), // not entered: within the engine's width
                    middleZ + rough(dice, place.above())
                })
                .orElseGet(() ->
                        // Anywhere on the engine.
                        new double[] {between(dice, -0.15, 0.5), between(dice, -0.12, 0.12), between(dice, -0.1, 0.25)
                        });
        // Loss factor of rubber, larger in soft mounts.
        return new EngineBody(radii, mounts, between(dice, 0.03, soft ? 0.2 : 0.08), disc, sensor);
    }

    private static double rough(Random dice, Length entered) {
        return entered.metres() + ROUGHLY_M * dice.nextGaussian();
    }

    private static double between(Random dice, double low, double high) {
        return low + (high - low) * dice.nextDouble();
    }

    /**
     * Sizes of the acceleration at the sensor along, level and upright, for a pull of ω² that turns in the disc, or for a
     * couple of ω² × 1 m that turns with the propeller.
     */
    double[] shaking(double omega, boolean pull) {
        Phasor minusJ = new Phasor(0, -omega * omega);
        Phasor one = new Phasor(omega * omega, 0);
        // A pull (0, 1, −j) at the disc has the moments (−z, jx, x) about the origin; the couple is x̂ × (0, 1, −j) =
        // (0, j, 1).
        Phasor[] upright = pull
                ? new Phasor[] {Phasor.ZERO, minusJ, minusJ.times(-disc[0])}
                : new Phasor[] {Phasor.ZERO, Phasor.ZERO, minusJ.times(-1)};
        Phasor[] level = pull
                ? new Phasor[] {one, one.times(-disc[2]), one.times(disc[0])}
                : new Phasor[] {Phasor.ZERO, Phasor.ZERO, one};
        Phasor[] u = solve(stiffness(true), omega, new double[] {1, 1, radii[1] * radii[1]}, upright);
        Phasor[] v = solve(stiffness(false), omega, new double[] {1, radii[0] * radii[0], radii[2] * radii[2]}, level);
        double w = omega * omega;
        return new double[] {
            w * u[0].plus(u[2].times(sensor[2])).minus(v[2].times(sensor[1])).magnitude(),
            w * v[0].minus(v[1].times(sensor[2])).plus(v[2].times(sensor[0])).magnitude(),
            w * u[1].minus(u[2].times(sensor[0])).plus(v[1].times(sensor[1])).magnitude()
        };
    }

    /** Σ bᵀ·k·b over the mounts, b what each freedom moves there; each pair stands left and right. */
    private double[][] stiffness(boolean upright) {
        double[][] k = new double[3][3];
        for (double[] m : mounts) {
            if (upright) {
                add(k, m[3], 1, 0, m[2]);
                add(k, m[5], 0, 1, -m[0]);
            } else {
                add(k, m[4], 1, -m[2], m[0]);
                add(k, m[5], 0, m[1], 0);
                add(k, m[3], 0, 0, m[1]);
            }
        }
        return k;
    }

    private static void add(double[][] k, double stiffness, double... moves) {
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                k[i][j] += stiffness * moves[i] * moves[j];
            }
        }
    }

    /** Gauss without pivoting: the diagonal is the largest but on a resonance, where the loss keeps it from zero. */
    private Phasor[] solve(double[][] k, double omega, double[] inertia, Phasor[] force) {
        Phasor[][] a = new Phasor[3][4];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                a[i][j] = new Phasor(k[i][j] - (i == j ? omega * omega * inertia[i] : 0), loss * k[i][j]);
            }
            a[i][3] = force[i];
        }
        for (int column = 0; column < 3; column++) {
            for (int row = 0; row < 3; row++) {
                if (row != column) {
                    Phasor factor = a[row][column].over(a[column][column]);
                    for (int j = column; j < 4; j++) {
                        a[row][j] = a[row][j].minus(a[column][j].times(factor));
                    }
                }
            }
        }
        return new Phasor[] {a[0][3].over(a[0][0]), a[1][3].over(a[1][1]), a[2][3].over(a[2][2])};
    }
}
