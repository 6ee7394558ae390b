package evenblade.keep.practice;

import evenblade.base.units.Length;
import evenblade.base.units.Mass;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.HubCounting;
import evenblade.machine.installation.Installation;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * The truth about an invented engine with its propeller: what the sensors only hint at.
 *
 * @param installation as the technician enters it
 * @param blades by hub position, position 1 first
 * @param runOut of the flange's face
 * @param drive engine and reduction
 * @param body on its mounts
 * @param hubWeights balance weights on the hub
 */
public record Machine(
        Installation installation,
        List<Blade> blades,
        InventedRunOut runOut,
        Drive drive,
        Body body,
        List<HubMass> hubWeights) {
    /** Speed at which strengths of drive and sound are stated, in propeller revolutions per second. */
    static final double REFERENCE_HZ = 33;

    private static final double TIP_RADIUS_M = 0.85; // invented: a common size
    private static final double BLADE_KG = 1.2; // invented
    private static final double CENTRE_OF_GRAVITY_SHARE = 0.4; // invented: blades are thick at the root
    private static final double DIAL_RADIUS_M = 0.05; // invented: a flange of 10 cm

    public Machine {
        blades = List.copyOf(blades);
        hubWeights = List.copyOf(hubWeights);
    }

    /** A machine without balance weights. */
    public Machine(Installation installation, List<Blade> blades, InventedRunOut runOut, Drive drive, Body body) {
        this(installation, blades, runOut, drive, body, List.of());
    }

    /**
     * A balance weight on the hub.
     *
     * @param kgM mass × radius
     * @param againstRotationDeg angle from hub position 1, counted against the rotation
     */
    public record HubMass(double kgM, double againstRotationDeg) {}

    /**
     * A machine of this installation with nothing wrong but the small differences that any has: blades within
     * half a gram, half a millimetre of track and 0.06° of pitch, cylinders within 2 %.
     *
     * @param seed of the small differences
     */
    public static Machine healthy(Installation installation, long seed) {
        Random random = new Random(seed);
        double massKg =
                installation.propeller().bladeMass().map(Mass::kilograms).orElse(BLADE_KG);
        double centreM = installation
                .propeller()
                .centreOfGravity()
                .map(Length::metres)
                .orElse(CENTRE_OF_GRAVITY_SHARE * tipRadiusM(installation));
        List<Blade> blades = new ArrayList<>();
        for (int b = 0; b < installation.propeller().blades(); b++) {
            blades.add(new Blade(
                    String.valueOf((char) ('A' + b)),
                    massKg + 0.00015 * random.nextGaussian(),
                    centreM,
                    0.00015 * random.nextGaussian(),
                    0.02 * random.nextGaussian()));
        }
        InventedRunOut runOut = new InventedRunOut(5e-6, DIAL_RADIUS_M, 360 * random.nextDouble());
        List<Double> cylinders = new ArrayList<>();
        for (int c = 0; c < installation.engine().cylinders(); c++) {
            cylinders.add(1 + 0.005 * random.nextGaussian());
        }
        boolean meshes = installation.reduction().teeth().isPresent();
        Drive drive = new Drive(cylinders, 10e-6, meshes ? 0.3 : 0, 0, 0);
        Body body = new Body(75, 4.7, 2.5, 0.35, 0.05, 0.10, new Body.Resonance(9, 0.08), new Body.Resonance(7, 0.08));
        return new Machine(installation, blades, runOut, drive, body);
    }

    public double tipRadiusM() {
        return tipRadiusM(installation);
    }

    /** Angle of a hub position from position 1 towards position 2, in degrees; positions count from 1. */
    public double angleDeg(int position) {
        return 360.0 * (position - 1) / blades.size();
    }

    /** How far a hub position runs ahead of position 1 as the propeller turns, in degrees. */
    double aheadDeg(int position) {
        return installation.hubCounting() == HubCounting.WITH_ROTATION ? angleDeg(position) : -angleDeg(position);
    }

    /** Where the tip at a position truly runs: the blade's own track and what the flange adds. */
    public double trackAtM(int position) {
        return blades.get(position - 1).trackM() + runOut.trackM(tipRadiusM(), angleDeg(position));
    }

    public boolean electric() {
        return installation.engine().cycle() == Engine.Cycle.ELECTRIC;
    }

    /** This hub with the blades moved: blade named first sits at position 1. */
    public Machine withBladesAt(List<String> names) {
        return withBlades(names.stream().map(this::blade).toList());
    }

    public Machine withBlades(List<Blade> others) {
        return new Machine(installation, others, runOut, drive, body, hubWeights);
    }

    /** Changes the blade at a position. */
    Machine withBlade(int position, Blade changed) {
        List<Blade> others = new ArrayList<>(blades);
        others.set(position - 1, changed);
        return withBlades(others);
    }

    public Machine withRunOut(InventedRunOut other) {
        return new Machine(installation, blades, other, drive, body, hubWeights);
    }

    public Machine withDrive(Drive other) {
        return new Machine(installation, blades, runOut, other, body, hubWeights);
    }

    public Machine withBody(Body other) {
        return new Machine(installation, blades, runOut, drive, other, hubWeights);
    }

    /** With these balance weights on, and no others. */
    public Machine withHubWeights(List<HubMass> others) {
        return new Machine(installation, blades, runOut, drive, body, others);
    }

    /** The blade of that name, wherever it sits. */
    public Blade blade(String name) {
        return blades.stream()
                .filter(blade -> blade.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no blade '" + name + "'"));
    }

    private static double tipRadiusM(Installation installation) {
        return installation.propeller().diameter().map(Length::metres).orElse(2 * TIP_RADIUS_M) / 2;
    }
}
