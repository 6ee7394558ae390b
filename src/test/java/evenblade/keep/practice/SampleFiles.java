package evenblade.keep.practice;

import evenblade.base.json.JsonWriter;
import evenblade.base.units.Length;
import evenblade.base.units.Mass;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import evenblade.machine.installation.Reduction;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Makes everything in {@code samples/} but its README. Run from the project's folder, after
 * {@code mvn package}:
 *
 * <pre>java -cp target/evenblade.jar:target/test-classes evenblade.keep.practice.SampleFiles samples</pre>
 */
final class SampleFiles {
    private SampleFiles() {}

    public static void main(String[] args) throws IOException {
        write(Path.of(args.length > 0 ? args[0] : "samples"));
    }

    /** Writes all samples under a folder. */
    static void write(Path folder) throws IOException {
        writeGearedThree(Files.createDirectories(folder.resolve("geared-three-blade")));
        writeDirectTwo(Files.createDirectories(folder.resolve("direct-two-blade")));
        writeFan(Files.createDirectories(folder.resolve("electric-fan")));
    }

    /** A geared four with three blades: one heavy and out of track, then put right. */
    private static void writeGearedThree(Path folder) throws IOException {
        Installation installation = PracticeInstallation.geared();
        double ratio = installation.reduction().ratio();
        writeInstallation(folder, installation);
        PracticeRun after = PracticeRun.of(Machine.healthy(installation, 41)).wandering(0.008);
        PracticeRun before = after.withFault(Fault.MASS_IMBALANCE).withFault(Fault.BLADE_OUT_OF_TRACK);
        SpeedProfile twoDwells = SpeedProfile.startingAt(4000 / 60.0 / ratio)
                .thenDwell(12)
                .thenRampTo(4800 / 60.0 / ratio, 4)
                .thenDwell(14);
        AccelerometerWav accelerometer = AccelerometerWav.oneAxisWithMark(SensorAxis.UP);
        TruthFile.record(before.following(twoDwells).seeded(411), accelerometer, folder, "before-accelerometer");
        TruthFile.record(after.following(twoDwells).seeded(412), accelerometer, folder, "after-accelerometer");
        LaptopMicrophone microphone = LaptopMicrophone.usual();
        TruthFile.record(before.at(4800).forSeconds(9).seeded(413), microphone, folder, "before-microphone");
        TruthFile.record(after.at(4800).forSeconds(9).seeded(414), microphone, folder, "after-microphone");
        PhoneLogger phone = PhoneLogger.usual();
        TruthFile.record(before.at(4800).forSeconds(20).seeded(415), phone, folder, "before-phone");
        TruthFile.record(after.at(4800).forSeconds(20).seeded(416), phone, folder, "after-phone");
    }

    /** Two blades on the crank itself: blade pass and firing are one line. */
    private static void writeDirectTwo(Path folder) throws IOException {
        Installation installation = new Installation(
                Optional.of("Invented: single-seater 'Mossgnat', direct four, two blades"),
                new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.of(700), OptionalDouble.of(3200)),
                new Reduction(Reduction.Kind.DIRECT, 1, Optional.empty()),
                propeller(2, 1.52, 2.1, 0.3),
                List.of());
        writeInstallation(folder, installation);
        PracticeRun run = PracticeRun.of(Machine.healthy(installation, 42))
                .withFault(Fault.WEAK_CYLINDER)
                .at(2400)
                .forSeconds(25)
                .wandering(0.01)
                .seeded(421);
        TruthFile.record(
                run,
                new AccelerometerWav(2000, 24, 50, List.of(SensorAxis.ACROSS, SensorAxis.UP), Optional.empty()),
                folder,
                "run");
    }

    /** An electric fan under a phone that is too slow to see its blade pass, with mains hum. */
    private static void writeFan(Path folder) throws IOException {
        Installation installation = new Installation(
                Optional.of("Invented: hay dryer 'Thimble', five-blade fan on its motor"),
                new Engine(Engine.Cycle.ELECTRIC, 0, OptionalDouble.empty(), OptionalDouble.of(1500)),
                new Reduction(Reduction.Kind.DIRECT, 1, Optional.empty()),
                propeller(5, 0.80, 0.4, 0.16),
                List.of());
        writeInstallation(folder, installation);
        Body fan = new Body(14, 0.35, 0.2, 0.12, 0.02, 0.08, new Body.Resonance(6, 0.1), new Body.Resonance(5, 0.1));
        PracticeRun run = PracticeRun.of(Machine.healthy(installation, 43).withBody(fan))
                .withFault(Fault.MASS_IMBALANCE)
                .at(1446)
                .forSeconds(25)
                .wandering(0.001)
                .withNoise(new Noise(0.05, 0.02))
                .withHum(0.08)
                .seeded(431);
        TruthFile.record(run, new PhoneLogger(200, 2, 0.3e-3, 0.001, 0), folder, "run");
    }

    private static Installation.Propeller propeller(
            int blades, double diameterM, double bladeKg, double centreOfGravityM) {
        return new Installation.Propeller(
                blades,
                Optional.of(Length.ofMetres(diameterM)),
                Optional.empty(),
                Optional.of(new Mass(bladeKg)),
                Optional.of(Length.ofMetres(centreOfGravityM)));
    }

    private static void writeInstallation(Path folder, Installation installation) throws IOException {
        Files.writeString(
                folder.resolve("installation.json"),
                JsonWriter.write(InstallationFile.written(installation)),
                StandardCharsets.UTF_8);
    }
}
