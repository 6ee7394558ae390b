package evenblade.rig;

import java.util.List;

/**
 * Engine and propeller as one rigid body on rubber mounts: six freedoms, origin at the centre of gravity, axes forward (x),
 * right (y), up (z), principal inertia along them. At the angular frequency ω
 *
 * <p>(K(1 + jη) − ω²·M)·q = F, q = (displacement, rotation), F = (force, moment about the centre of gravity);
 *
 * <p>a mount at r with stiffness k adds Bᵀ·k·B, where B·q = u + θ × r is what the body does at r. Acceleration at p along n:
 * −ω²·n·(u + θ × p). Far above all resonances a force F at the centre gives F/m.
 */
final class Body {
    private static final int FREEDOMS = 6;

    private final double[] inertia;
    private final List<Mount> mounts;
    private final double[][] stiffness = new double[FREEDOMS][FREEDOMS];
    private final double[][] loss = new double[FREEDOMS][FREEDOMS];

    /**
     * A mount: place in m, stiffness along the three axes in N/m, loss factor.
     */
    record Mount(double x, double y, double z, double kx, double ky, double kz, double loss) {
        Mount times(double factor) {
            return new Mount(x, y, z, kx * factor, ky * factor, kz * factor, loss);
        }

        Mount withLoss(double other) {
            return new Mount(x, y, z, kx, ky, kz, other);
        }
    }

    Body(double massKg, double ixx, double iyy, double izz, List<Mount> mounts) {
        this.inertia = new double[] {massKg, massKg, massKg, ixx, iyy, izz};
        this.mounts = List.copyOf(mounts);
        for (Mount mount : mounts) {
            double[][] b = motionAt(mount.x, mount.y, mount.z);
            double[] k = {mount.kx, mount.ky, mount.kz};
            for (int i = 0; i < FREEDOMS; i++) {
                for (int j = 0; j < FREEDOMS; j++) {
                    for (int axis = 0; axis < 3; axis++) {
                        double part = b[axis][i] * k[axis] * b[axis][j];
                        stiffness[i][j] += part;
                        loss[i][j] += part * mount.loss;
                    }
                }
            }
        }
    }

    double massKg() {
        return inertia[0];
    }

    List<Mount> mounts() {
        return mounts;
    }

    Body on(List<Mount> others) {
        return new Body(inertia[0], inertia[3], inertia[4], inertia[5], others);
    }

    /** Rows: motion along x, y, z at a place for unit values of the six freedoms. */
    private static double[][] motionAt(double x, double y, double z) {
        return new double[][] {{1, 0, 0, 0, z, -y}, {0, 1, 0, -z, 0, x}, {0, 0, 1, y, -x, 0}};
    }

    /** Force and moment about the centre of gravity of a force at a place. */
    static Phasor[] forceAt(double[] place, Phasor fx, Phasor fy, Phasor fz) {
        Phasor[] force = {fx, fy, fz};
        double[][] b = motionAt(place[0], place[1], place[2]);
        Phasor[] six = new Phasor[FREEDOMS];
        for (int i = 0; i < FREEDOMS; i++) {
            six[i] = force[0].times(b[0][i]).plus(force[1].times(b[1][i])).plus(force[2].times(b[2][i]));
        }
        return six;
    }

    static Phasor[] moment(Phasor mx, Phasor my, Phasor mz) {
        return new Phasor[] {Phasor.ZERO, Phasor.ZERO, Phasor.ZERO, mx, my, mz};
    }

    static Phasor[] sum(Phasor[] a, Phasor[] b) {
        Phasor[] sum = new Phasor[FREEDOMS];
        for (int i = 0; i < FREEDOMS; i++) {
            sum[i] = a[i].plus(b[i]);
        }
        return sum;
    }

    /** Acceleration in m/s² at a place along a unit direction, for a force on the six freedoms at ω in rad/s. */
    Phasor acceleration(double omega, Phasor[] force, double[] place, double[] direction) {
        Phasor[] q = solve(omega, force);
        double[][] b = motionAt(place[0], place[1], place[2]);
        Phasor a = Phasor.ZERO;
        for (int axis = 0; axis < 3; axis++) {
            for (int i = 0; i < FREEDOMS; i++) {
                a = a.plus(q[i].times(-omega * omega * direction[axis] * b[axis][i]));
            }
        }
        return a;
    }

    /** Gauss with pivoting on the complex 6×6 system. */
    private Phasor[] solve(double omega, Phasor[] force) {
        Phasor[][] a = new Phasor[FREEDOMS][FREEDOMS + 1];
        for (int i = 0; i < FREEDOMS; i++) {
            for (int j = 0; j < FREEDOMS; j++) {
                double mass = i == j ? omega * omega * inertia[i] : 0;
                a[i][j] = new Phasor(stiffness[i][j] - mass, loss[i][j]);
            }
            a[i][FREEDOMS] = force[i];
        }
        for (int column = 0; column < FREEDOMS; column++) {
            int best = column;
            for (int row = column + 1; row < FREEDOMS; row++) {
                best = a[row][column].amplitude() > a[best][column].amplitude() ? row : best;
            }
            Phasor[] swap = a[column];
            a[column] = a[best];
            a[best] = swap;
            for (int row = column + 1; row < FREEDOMS; row++) {
                Phasor factor = a[row][column].over(a[column][column]);
                for (int j = column; j <= FREEDOMS; j++) {
                    a[row][j] = a[row][j].minus(factor.times(a[column][j]));
                }
            }
        }
        Phasor[] q = new Phasor[FREEDOMS];
        for (int row = FREEDOMS - 1; row >= 0; row--) {
            Phasor rest = a[row][FREEDOMS];
            for (int j = row + 1; j < FREEDOMS; j++) {
                rest = rest.minus(a[row][j].times(q[j]));
            }
            q[row] = rest.over(a[row][row]);
        }
        return q;
    }
}
